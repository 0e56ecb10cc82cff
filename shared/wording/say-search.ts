import { MOST_BATCHES } from '@/shared/day/day-size'
import { notNow, type Refusal } from '@/shared/wording/refusal'

/** A day of more batches than any kitchen has seen: a slip of the finger, or a plan that would never end. */
export const tooManyBatches = (batches: number): Refusal => ({
  code: 'too-many-batches',
  status: 422,
  what: `No plan: ${batches.toLocaleString('en-US')} batches in one day.`,
  why: `A day may have at most ${MOST_BATCHES.toLocaleString('en-US')} tested batches.`,
  instead: 'Offer fewer jars, or divide the work over several days.',
})

/** What was searched for is not what the day is now. */
export const CHANGED_SINCE: Refusal = notNow(
  'changed-since',
  'The plan was not taken: the day has changed since.',
  'Claims, hours, equipment or people are not what they were when the search began.',
  'Plan the day again.',
)

/** Somebody stopped it before anything was found. */
export const STOPPED_EARLY: Refusal = notNow(
  'stopped-early',
  'The search was stopped.',
  'It had found no timetable yet.',
  'Plan the day again and let it go on for longer, or plan fewer jars.',
)

/** The day was asked for again with other claims or another change. */
export const REPLACED: Refusal = notNow(
  'replaced',
  'This search was ended.',
  'The day was planned again in between.',
  'See the newer search.',
)

/**
 * The thread or the process that searched has gone.
 *
 * @param why - one sentence
 */
export const brokeOff = (why: string, hasPlan: boolean): Refusal =>
  notNow(
    'search-broke-off',
    'The search broke off.',
    why,
    hasPlan ? 'Take the last good plan, or plan the day again.' : 'Plan the day again.',
  )

/**
 * The planner was lost over a day that is planned at once, or took too long; nothing was saved.
 *
 * @param why - one sentence
 */
export const planningBrokeOff = (why: string): Refusal =>
  notNow('planning-broke-off', 'Not planned: the planner broke off.', why, 'Plan the day again. If that breaks off too, plan fewer jars.')

/** The time was spent and nothing was found; `limit` says what stood in the way most often. */
export const notFoundInTime = (
  seconds: number,
  limit: string,
): { readonly what: string; readonly why: string; readonly instead: string } => ({
  what: 'No timetable was found.',
  why: `The search went on for ${seconds} s. What stood in its way most often: ${limit}`,
  instead: 'Look at the ways out, or plan fewer jars.',
})

/** "not more than 12 min" between what was found and what nothing can beat. */
export function sayGap(finishAt: number, lowerBound: number): string {
  const minutes = finishAt - lowerBound
  return minutes <= 0 ? 'none: no plan can end earlier' : `at most ${minutes} min`
}

/** "122 orders of the loads in 34 s". */
export const sayTried = (steps: number, seconds: number): string =>
  `${steps.toLocaleString('en-US')} ${steps === 1 ? 'order' : 'orders'} of the loads in ${seconds} s`
