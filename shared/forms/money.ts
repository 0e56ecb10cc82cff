import { z } from 'zod'
import { Id, line, optionalLine, plainNumber, whole } from './fields'
import { orEmpty } from './or-empty'

/** A party of the reckoning: a household, or the equipment fund. */
const Party = Id

/** What the paid-and-received buttons send. `amount` is in minor units, as the reckoning names it. */
export const MarkPayment = z
  .strictObject({
    dayId: Id,
    fromId: Party,
    toId: Party,
    amount: whole(1, 2_000_000_000, 'How much was paid?'),
    side: z.enum(['paid', 'received'], 'Paid or received?'),
    note: optionalLine(120),
  })
  .refine(({ fromId, toId }) => fromId !== toId, { path: ['toId'], message: 'Nobody pays themselves.' })
export type MarkPayment = z.infer<typeof MarkPayment>

/** What taking a mark back sends. */
export const UndoMark = z.strictObject({ dayId: Id, markId: Id, note: optionalLine(120) })
export type UndoMark = z.infer<typeof UndoMark>

/** What the new-equipment form sends. */
export const AddEquipment = z.strictObject({
  name: line(60, 'Say what it is.'),
  /** In the group's currency. */
  price: line(20, 'What did it cost?'),
  years: whole(1, 100, 'How many years does it last?'),
  daysAYear: whole(1, 366, 'On how many days a year is it used?'),
  householdId: Id,
})
export type AddEquipment = z.infer<typeof AddEquipment>

/** What the used-today form sends. */
export const ChargeEquipment = z.strictObject({ dayId: Id, equipmentId: Id, pool: line(40, 'Name the pool.').default('common') })
export type ChargeEquipment = z.infer<typeof ChargeEquipment>

/** What taking equipment off a day sends. */
export const UnchargeEquipment = z.strictObject({ dayId: Id, equipmentId: Id })
export type UnchargeEquipment = z.infer<typeof UnchargeEquipment>

/** What the hours form sends. 0 hours are hours too: somebody counted. */
export const CountHours = z.strictObject({
  dayId: Id,
  householdId: Id,
  hours: plainNumber('How many hours?').pipe(z.number().min(0, 'Not below zero.').max(1000, 'At most 1,000.')),
})
export type CountHours = z.infer<typeof CountHours>

/** How hours count in the money of a day. */
export const LABOUR_RULES = ['none', 'surcharge', 'credit'] as const

/** What the money-rule form sends. */
export const SetMoneyRule = z.strictObject({
  dayId: Id,
  labourRule: z.enum(LABOUR_RULES, 'Choose how hours count.'),
  leastHours: plainNumber('How many hours?').pipe(z.number().min(0, 'Not below zero.').max(100, 'At most 100.')).default(4),
  percent: whole(0, 100, 'How many percent?').default(25),
  /** What an hour is worth, in the group's currency. */
  rate: orEmpty(line(20, 'What is an hour worth?')),
})
export type SetMoneyRule = z.infer<typeof SetMoneyRule>
