import { z } from 'zod'
import { UNSEALED_WAYS } from '@/shared/floor/unsealed-jars'
import { CalendarDate, ClockTime, Id, line, optionalLine, whole, words } from './fields'

/** A quantity with at most three decimals, above zero. */
const Quantity = z.coerce
  .number<unknown>('How much?')
  .positive('How much? More than nothing.')
  .max(100_000, 'How much? At most 100,000.')
  .refine((amount) => Math.abs(amount * 1000 - Math.round(amount * 1000)) < 1e-6, 'At most three decimals.')

/** What was sorted out: nothing when it is left out, at most three decimals. */
const Culled = z.coerce
  .number<unknown>('How much was sorted out?')
  .nonnegative('How much was sorted out? Not less than nothing.')
  .max(100_000, 'How much was sorted out? At most 100,000.')
  .refine((amount) => Math.abs(amount * 1000 - Math.round(amount * 1000)) < 1e-6, 'At most three decimals.')
  .default(0)

/** Several things chosen from a list: from a form a list or one text, from JSON a list. */
const someIds = (most: number) =>
  z
    .union([Id, z.array(Id)], 'Choose from the list.')
    .transform((chosen) => [...new Set(Array.isArray(chosen) ? chosen : [chosen])])
    .pipe(z.array(Id).max(most, `At most ${most}.`))

const onDay = { dayId: Id }
/** Left out, it is now on the kitchen's clock. */
const atTime = { ...onDay, at: ClockTime.optional() }
const Yes = z.enum(['yes', 'no'], 'Tick it or leave it.').default('no')

/** What the delivery form sends. From a promise, what it says stands unless it is typed anew. */
export const ReceiveIngredients = z.strictObject({
  ...onDay,
  pledgeId: Id.optional(),
  /** Left out: the next free code of the item, such as PL2. */
  code: z
    .string()
    .trim()
    .toUpperCase()
    .regex(/^[A-Z0-9][A-Z0-9-]{0,23}$/, 'Letters, digits and dashes, at most 24.')
    .optional(),
  item: line(80, 'Say what it is.').optional(),
  quantity: Quantity.optional(),
  unit: line(20, 'Say the unit, such as lb.').optional(),
  /** Sorted out of it, in the same unit. */
  culled: Culled,
  householdId: Id.optional(),
  source: optionalLine(120),
  condition: optionalLine(200),
  receivedOn: CalendarDate.optional(),
  allergens: words,
})
export type ReceiveIngredients = z.infer<typeof ReceiveIngredients>

/** What the start-a-batch form sends. */
export const StartBatch = z.strictObject({
  ...atTime,
  batchId: Id,
  kettleId: Id,
  lotIds: someIds(40).pipe(z.array(Id).min(1, 'Choose what goes in: every jar is traced to it.')),
})
export type StartBatch = z.infer<typeof StartBatch>

/** What the filling-begins form sends. */
export const StartFilling = z.strictObject({ ...atTime, batchId: Id })
export type StartFilling = z.infer<typeof StartFilling>

/** What the fill form sends. */
export const FillBatch = z.strictObject({
  ...atTime,
  batchId: Id,
  jars: whole(1, 200, 'How many jars?'),
  lidLotId: Id.optional(),
  /** Whose jars they are, or that they came from a shop; left out where nobody keeps them apart. */
  jarLotId: Id.optional(),
  countedAgain: Yes,
  note: optionalLine(200),
})
export type FillBatch = z.infer<typeof FillBatch>

/** What the give-up-the-batch form sends. */
export const AbandonBatch = z.strictObject({ ...atTime, batchId: Id, why: line(200, 'Say why.') })
export type AbandonBatch = z.infer<typeof AbandonBatch>

/** What the load form sends. Without `loadId` it is a load that was not planned, such as a second process. */
export const LoadCanner = z.strictObject({
  ...atTime,
  loadId: Id.optional(),
  cannerId: Id.optional(),
  operatorId: Id.optional(),
  batchIds: someIds(10).pipe(z.array(Id).min(1, 'Choose a filled batch.')),
  /** Left out: all jars of those batches that wait. */
  jars: whole(1, 200, 'How many jars?').optional(),
  note: optionalLine(200),
})
export type LoadCanner = z.infer<typeof LoadCanner>

/** What the taps at a canner send. */
export const AtLoad = z.strictObject({ ...atTime, loadId: Id })
export type AtLoad = z.infer<typeof AtLoad>

/** What the take-over form sends: who minds the canner from then on. */
export const RelieveOperator = z.strictObject({ ...atTime, loadId: Id, operatorId: Id })
export type RelieveOperator = z.infer<typeof RelieveOperator>

/** What the give-up-the-load form sends. */
export const FailLoad = z.strictObject({
  ...atTime,
  loadId: Id,
  way: z.enum(UNSEALED_WAYS, 'What becomes of the jars?'),
  why: line(200, 'Say what went wrong.'),
})
export type FailLoad = z.infer<typeof FailLoad>

/** Where a broken jar's crack begins: it tells which step to mend. */
export const BREAKS = ['base', 'side', 'star', 'unknown'] as const
export type Break = (typeof BREAKS)[number]

/** What the broken-jar form sends. */
export const NoteBrokenJar = z.strictObject({
  ...atTime,
  /** Left out: the canning day itself. */
  on: CalendarDate.optional(),
  jarId: Id,
  how: z.enum(BREAKS, 'Where does the crack begin?').default('unknown'),
  where: line(80, 'Where did it break: in which canner, on the rack?'),
})
export type NoteBrokenJar = z.infer<typeof NoteBrokenJar>

/** What the incident form sends. */
export const NoteIncident = z.strictObject({
  ...atTime,
  what: line(300, 'Say what happened.'),
  action: optionalLine(300),
})
export type NoteIncident = z.infer<typeof NoteIncident>

/** What the set-aside form sends: filled jars that never saw a canner. */
export const SetJarsAside = z.strictObject({
  ...atTime,
  batchId: Id,
  way: z.enum(['fridge', 'discard'], 'Fridge, or thrown out?'),
})
export type SetJarsAside = z.infer<typeof SetJarsAside>

/** What the seal-check form sends: every jar that waits is sealed but those that are named. */
export const CheckSeals = z.strictObject({
  ...onDay,
  at: ClockTime,
  on: CalendarDate,
  /** Only jars of this load; left out: of all loads of the day. */
  loadId: Id.optional(),
  /** Only these jars are looked at; left out: all that wait. */
  jarIds: someIds(500).optional(),
  unsealed: someIds(500).default([]),
  way: z.enum(UNSEALED_WAYS, 'What becomes of the jars that did not seal?').default('fridge'),
  /** New lids, for jars that go through a canner again. */
  lidLotId: Id.optional(),
})
export type CheckSeals = z.infer<typeof CheckSeals>

/** What the end-of-the-evening form sends. */
export const RestDay = z.strictObject({ ...atTime, giveUpTheRest: Yes })
export type RestDay = z.infer<typeof RestDay>
