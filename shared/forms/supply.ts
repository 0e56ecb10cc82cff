import { z } from 'zod'
import { MOUTHS, SUPPLY_KINDS } from '@/shared/kitchen/equipment'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { CalendarDate, Id, line, optionalLine, whole } from './fields'

const MOST = 100_000

const counted = {
  count: whole(0, MOST, 'How many?'),
  boughtOn: CalendarDate.nullable().default(null),
  householdId: Id.nullable().default(null),
  /** Of the jars: those with a nick or a crack in the rim. */
  chipped: whole(0, MOST, 'How many are chipped?').default(0),
  isShopJar: z.enum(['yes', 'no']).default('no'),
  note: optionalLine(120),
}

/** What the new-stock form sends. */
export const AddSupply = z
  .strictObject({
    kind: z.enum(SUPPLY_KINDS, 'Jars, bands or lids?'),
    jarSize: z.enum(JAR_SIZES, 'Choose a size.').nullable().default(null),
    mouth: z.enum(MOUTHS, 'Regular or wide mouth?').default('regular'),
    lotCode: line(40, 'Give this purchase a short name, so that it can be called back.'),
    ...counted,
  })
  .refine(({ kind, jarSize }) => (kind === 'jar') === (jarSize !== null), {
    path: ['jarSize'],
    message: 'Jars have a size; bands and lids only have a mouth.',
  })
  .refine(({ chipped, count }) => chipped === 0 || chipped <= count, { path: ['chipped'], message: 'Not more than there are.' })
  .refine(({ kind, chipped, isShopJar }) => kind === 'jar' || (chipped === 0 && isShopJar === 'no'), {
    path: ['chipped'],
    message: 'Only jars are chipped or come from a shop.',
  })
export type AddSupply = z.infer<typeof AddSupply>

/** What the change-stock form sends. `version` is what was on the screen: a newer one means that somebody else was quicker. */
export const ChangeSupply = z
  .strictObject({ supplyId: Id, version: whole(1, 1_000_000, 'Load the page again.'), ...counted })
  .refine(({ chipped, count }) => chipped === 0 || chipped <= count, { path: ['chipped'], message: 'Not more than there are.' })
export type ChangeSupply = z.infer<typeof ChangeSupply>
