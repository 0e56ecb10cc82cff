import { z } from 'zod'
import { LOCKED_TASKS } from '@/shared/planning/day-problem'
import { ClockTime, Id, optionalLine, whole } from './fields'

const onDay = { dayId: Id }
const basedOn = whole(1, 1_000_000, 'Load the page again.')

/** What "Use this plan" sends: the plan that was looked at, and the minute from which the new one was shown. */
export const ReplanDay = z.strictObject({
  ...onDay,
  basedOn,
  /** Kitchen minute of the preview; left out: now. */
  from: whole(-1440, 4320, 'Load the page again.').optional(),
  reason: optionalLine(200),
})
export type ReplanDay = z.infer<typeof ReplanDay>

/** What the undo form sends: the plan that is to go. */
export const UndoPlan = z.strictObject({ ...onDay, basedOn })
export type UndoPlan = z.infer<typeof UndoPlan>

/** A time or a thing that may be left open in a form. */
const open = <T extends z.ZodType>(schema: T) => z.preprocess((typed) => (typed === '' ? undefined : typed), schema.optional())

/** What the lock form sends: a task of one batch, and at least one thing that is to stay. */
export const LockTask = z
  .strictObject({
    ...onDay,
    preparationId: Id,
    batch: whole(1, 2_000, 'Which batch?'),
    task: z.enum(LOCKED_TASKS, 'Which task?'),
    at: open(ClockTime),
    equipmentId: open(Id),
    personId: open(Id),
  })
  .refine(({ at, equipmentId, personId }) => at !== undefined || equipmentId !== undefined || personId !== undefined, {
    path: ['at'],
    message: 'Say what is to stay: the time, the place or the person.',
  })
export type LockTask = z.infer<typeof LockTask>

/** What the unlock button sends. */
export const UnlockTask = z.strictObject({ ...onDay, lockId: Id })
export type UnlockTask = z.infer<typeof UnlockTask>

/** What can be otherwise than the plan took it to be. */
export const SETBACK_KINDS = ['canner-out', 'person-away', 'person-late', 'produce-late', 'produce-short'] as const

const note = { ...onDay, note: optionalLine(200) }

/** What the forms of "something changed" send, told apart by `kind`. Times left out are now on the kitchen's clock. */
export const NoteSetback = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('canner-out'), ...note, cannerId: Id, from: open(ClockTime), until: open(ClockTime) }),
  z.strictObject({ kind: z.literal('person-away'), ...note, personId: Id, from: open(ClockTime) }),
  z.strictObject({ kind: z.literal('person-late'), ...note, personId: Id, from: ClockTime }),
  z.strictObject({ kind: z.literal('produce-late'), ...note, preparationId: Id, from: ClockTime }),
  z.strictObject({ kind: z.literal('produce-short'), ...note, preparationId: Id, batches: whole(0, 500, 'For how many batches in all?') }),
])
export type NoteSetback = z.infer<typeof NoteSetback>

/** What "it is over" sends. */
export const ClearSetback = z.strictObject({ ...onDay, setbackId: Id })
export type ClearSetback = z.infer<typeof ClearSetback>

/** What "I have seen it" sends. */
export const SeePlanChanges = z.strictObject({ ...onDay, number: basedOn })
export type SeePlanChanges = z.infer<typeof SeePlanChanges>
