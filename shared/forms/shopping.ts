import { z } from 'zod'
import { UNITS, type UnitId } from '@/shared/units/units'
import { Id, line, optionalLine, plainNumber } from './fields'
import { orEmpty } from './or-empty'

/** The name of a line of the list, as `ingredientKey` and `containerName` make it. */
const Item = line(100, 'Say what it is.')

const Unit = z.enum(Object.keys(UNITS) as [UnitId, ...UnitId[]], 'Choose a unit.')

/** An amount of 0.0001 to 100,000. */
const amount = (ask: string) =>
  plainNumber(ask).pipe(z.number(ask).min(0.0001, `${ask} More than nothing.`).max(100_000, `${ask} At most 100,000.`))

const packFigures = {
  holds: amount('How much does one pack hold?'),
  unit: Unit,
  /** In the group's currency, "3.60"; left out when nobody knows it. */
  price: orEmpty(line(20, 'What does one pack cost?')),
}

/** What the new-pack form sends. */
export const AddPack = z.strictObject({ item: Item, label: line(40, 'Say what one pack is, such as a 4 lb bag.'), ...packFigures })
export type AddPack = z.infer<typeof AddPack>

/** What the change-the-pack form sends. */
export const EditPack = z.strictObject({ packId: Id, ...packFigures, isShort: z.enum(['yes', 'no']).default('no') })
export type EditPack = z.infer<typeof EditPack>

/** What the take-the-pack-out form sends. */
export const RemovePack = z.strictObject({ packId: Id })
export type RemovePack = z.infer<typeof RemovePack>

/** What the who-buys-it form sends; without a household nobody does yet. */
export const AssignErrand = z.strictObject({
  dayId: Id,
  item: Item,
  householdId: orEmpty(Id),
  /** "Mill Street, Thursday" */
  run: optionalLine(60),
  pool: line(40, 'Name the pool.').default('common'),
})
export type AssignErrand = z.infer<typeof AssignErrand>

/** What a tick on the list sends. `purchaseId` is made by the phone, so that a tick can be taken back before it was ever sent. */
export const BuyItem = z.strictObject({
  dayId: Id,
  item: Item,
  purchaseId: z.uuid('Load the page again.'),
  householdId: Id,
  packs: plainNumber('How many packs?').pipe(
    z.number().min(0.001, 'How many packs? More than nothing.').max(10_000, 'At most 10,000 packs.'),
  ),
  pack: line(40, 'Say what one pack is, such as a 4 lb bag.'),
  /** For all of them together. */
  cost: line(20, 'How much did it cost?'),
  /** What one pack holds; left out, it does not shorten the list. */
  holds: orEmpty(amount('How much does one pack hold?')),
  unit: orEmpty(Unit),
  /** Used where nobody has said which pool carries the line. */
  pool: line(40, 'Name the pool.').default('common'),
})
export type BuyItem = z.infer<typeof BuyItem>

/** What taking a tick back sends. */
export const PutBack = z.strictObject({ dayId: Id, purchaseId: Id })
export type PutBack = z.infer<typeof PutBack>

/** What the that-covers-it button sends. */
export const CoverItem = z.strictObject({ dayId: Id, purchaseId: Id, item: Item, covers: amount('How much does it cover?'), unit: Unit })
export type CoverItem = z.infer<typeof CoverItem>

/** What the left-over form sends. */
export const KeepLeftOver = z.strictObject({
  dayId: orEmpty(Id),
  item: Item,
  amount: amount('How much is left?'),
  unit: Unit,
  householdId: orEmpty(Id),
  note: optionalLine(120),
})
export type KeepLeftOver = z.infer<typeof KeepLeftOver>

/** What the used-up form sends. */
export const UseUpLeftOver = z.strictObject({ leftOverId: Id })
export type UseUpLeftOver = z.infer<typeof UseUpLeftOver>

/** What a phone sends of one tick or its taking back. */
export const ShoppingEvent = z.discriminatedUnion('type', [
  BuyItem.omit({ dayId: true }).extend({ type: z.literal('buy-item') }),
  PutBack.omit({ dayId: true }).extend({ type: z.literal('put-back') }),
])
export type ShoppingEvent = z.infer<typeof ShoppingEvent>
