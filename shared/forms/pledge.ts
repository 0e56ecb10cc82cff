import { z } from 'zod'
import { Id, line, optionalLine, plainNumber } from './fields'

/** What a household can promise to a day. */
export const PLEDGE_KINDS = ['produce', 'jars', 'money', 'hours', 'home-task'] as const
export type PledgeKind = (typeof PLEDGE_KINDS)[number]

/** Whether a text from outside names a kind of promise. */
export const isPledgeKind = (text: string): text is PledgeKind => PLEDGE_KINDS.some((kind) => kind === text)

/** A quantity with at most three decimals, above zero. */
const Quantity = plainNumber('How much?').pipe(
  z
    .number('How much?')
    .positive('How much? More than nothing.')
    .max(100_000, 'How much? At most 100,000.')
    .refine((amount) => Math.abs(amount * 1000 - Math.round(amount * 1000)) < 1e-6, 'At most three decimals.'),
)

/** Money for one unit. */
const Credit = plainNumber('How much credit?').pipe(z.number().min(0, 'Not below zero.').max(10_000, 'At most 10,000.'))

/** What the promise form sends. */
export const AddPledge = z.strictObject({
  dayId: Id,
  householdId: Id,
  personId: Id.optional(),
  kind: z.enum(PLEDGE_KINDS, 'Choose what is promised.'),
  item: line(80, 'Say what it is.'),
  quantity: Quantity,
  unit: line(20, 'Say the unit, such as lb, jars or h.'),
  /** Money per unit agreed as credit for a gift in kind, in the group's currency. */
  creditPerUnit: Credit.optional(),
  pool: line(40, 'Name the pool.').default('common'),
  note: optionalLine(200),
})
export type AddPledge = z.infer<typeof AddPledge>

/** What the take-back form sends. */
export const RemovePledge = z.strictObject({ pledgeId: Id })
export type RemovePledge = z.infer<typeof RemovePledge>
