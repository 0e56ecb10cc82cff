import { z } from 'zod'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { CalendarDate, Id, line, optionalLine, whole } from './fields'

/** What the share-out form sends. */
export const AwardJars = z.strictObject({ dayId: Id })
export type AwardJars = z.infer<typeof AwardJars>

/** What the hand-over form sends. */
export const HandOver = z.strictObject({ dayId: Id, householdId: Id })
export type HandOver = z.infer<typeof HandOver>

/** Everything that is counted by hand before a day is closed, `returned-pint` and so on; a size that was not used may be left out. */
const counted = (name: string, ask: string) =>
  Object.fromEntries(JAR_SIZES.map((size) => [`${name}-${size}`, whole(0, 100_000, ask).optional()])) as {
    [Key in `${string}-${(typeof JAR_SIZES)[number]}`]: z.ZodOptional<ReturnType<typeof whole>>
  }

/** What the close-out form sends. */
export const CloseDay = z.strictObject({
  dayId: Id,
  ...counted('brought', 'How many empty jars were brought?'),
  ...counted('bought', 'How many empty jars were bought or in stock?'),
  ...counted('returned', 'How many empty jars went back?'),
  ...counted('brokenEmpty', 'How many broke empty?'),
  lidsAtStart: whole(0, 100_000, 'How many lids were there at the start?'),
  lidsSpoiled: whole(0, 100_000, 'How many lids were spoiled?').default(0),
  lidsLeft: whole(0, 100_000, 'How many lids are left?'),
  bandsAtStart: whole(0, 100_000, 'How many bands were there at the start?'),
  bandsReturned: whole(0, 100_000, 'How many bands went back?'),
  bandsDiscarded: whole(0, 100_000, 'How many bands were thrown out?').default(0),
  bandsOnJars: whole(0, 100_000, 'How many bands are still on jars?').default(0),
  /** Names every difference; needed when the counts do not add up. */
  note: optionalLine(500),
})
export type CloseDay = z.infer<typeof CloseDay>

/** What the receipt form sends. `cost` is in the group's currency, "18.00". */
export const AddPurchase = z.strictObject({
  dayId: Id,
  item: line(80, 'Say what was bought.'),
  packs: z.coerce.number<unknown>('How many packs?').positive('More than nothing.').max(10_000, 'At most 10,000.'),
  pack: line(40, 'Say what one pack is, such as a 4 lb bag.'),
  cost: line(20, 'How much did it cost?'),
  householdId: Id,
  pool: line(40, 'Name the pool.').default('common'),
})
export type AddPurchase = z.infer<typeof AddPurchase>

/** What the take-out-the-receipt form sends. */
export const RemovePurchase = z.strictObject({ dayId: Id, purchaseId: Id })
export type RemovePurchase = z.infer<typeof RemovePurchase>

/** What the give-left-jars form sends: jars that nobody claimed, to somebody who would have more, or who came late. */
export const GiveLeftJars = z.strictObject({ dayId: Id, preparationId: Id, householdId: Id, jars: whole(1, 10_000, 'How many jars?') })
export type GiveLeftJars = z.infer<typeof GiveLeftJars>

/** What giving up waiting for a household sends. */
export const ReleaseJars = z.strictObject({ dayId: Id, householdId: Id })
export type ReleaseJars = z.infer<typeof ReleaseJars>

/** Where, until when and through whom jars are fetched that were not taken home at once. */
export const SetPickUp = z.strictObject({
  dayId: Id,
  place: line(120, 'Where do the jars stand?'),
  until: CalendarDate,
  contact: line(120, 'Whom does one ask?'),
})
export type SetPickUp = z.infer<typeof SetPickUp>

/** What the own-glass form sends. */
export const WishOwnGlass = z.strictObject({ dayId: Id, householdId: Id, wish: z.enum(['yes', 'no']) })
export type WishOwnGlass = z.infer<typeof WishOwnGlass>

/** What the whose-glass form sends: numbers of jars as they stand on their lids, "J1-02, J1-05". */
export const NameOwnGlass = z.strictObject({
  dayId: Id,
  householdId: Id,
  jars: line(1000, 'Type the numbers of the jars, such as J1-02.')
    .transform((text) => [
      ...new Set(
        text
          .toUpperCase()
          .split(/[\s,;]+/)
          .filter((name) => name !== ''),
      ),
    ])
    .pipe(
      z.array(z.string().max(20, 'Type the numbers of the jars, such as J1-02.')).min(1, 'Type the numbers of the jars, such as J1-02.'),
    ),
})
export type NameOwnGlass = z.infer<typeof NameOwnGlass>
