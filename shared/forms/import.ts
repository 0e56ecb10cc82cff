import { z } from 'zod'
import { IMPORT_KINDS, MOST_CHARACTERS } from '@/shared/imports/import-kinds'
import { Id, line } from './fields'
import { orEmpty } from './or-empty'

/** A file as it is read: what it holds, and for deliveries the day. */
export const ReadImport = z
  .strictObject({
    kind: z.enum(IMPORT_KINDS, 'What does the file hold?'),
    dayId: orEmpty(Id),
    name: line(120, 'Choose a file.'),
    text: z
      .string('Choose a file.')
      .min(1, 'The file is empty.')
      .max(MOST_CHARACTERS, 'The file is too long: at most 4 million characters.'),
  })
  .refine(({ kind, dayId }) => kind !== 'deliveries' || dayId !== undefined, { path: ['dayId'], message: 'For which day?' })
export type ReadImport = z.infer<typeof ReadImport>

/** What the enter-it button sends. */
export const EnterImport = z.strictObject({ importId: Id })
export type EnterImport = z.infer<typeof EnterImport>
