import { z } from 'zod'
import { MOUTHS } from '@/shared/kitchen/equipment'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { MOVEMENT_KINDS } from '@/shared/supplies/jar-ledger'
import { CalendarDate, Id, optionalLine, whole } from './fields'
import { orEmpty } from './or-empty'

/** What the ledger form sends. */
export const NoteJars = z.strictObject({
  householdId: Id,
  kind: z.enum(MOVEMENT_KINDS, 'What happened with the jars?'),
  jarSize: z.enum(JAR_SIZES, 'Choose a size.'),
  mouth: z.enum(MOUTHS, 'Regular or wide mouth?').default('regular'),
  jars: whole(1, 10_000, 'How many jars?'),
  /** Today, where it is left out. */
  movedOn: orEmpty(CalendarDate),
  note: optionalLine(120),
})
export type NoteJars = z.infer<typeof NoteJars>

/** What taking an entry back sends. */
export const TakeBackJars = z.strictObject({ movementId: Id, note: optionalLine(120) })
export type TakeBackJars = z.infer<typeof TakeBackJars>
