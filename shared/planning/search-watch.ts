import type { DayPlan } from '@/shared/planning/day-plan'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/**
 * Follows one search from outside and lets it go on for longer than a page may take.
 *
 * A search with a watch tries orders of loads until `goOn` says no, the bound is met, or no exchange of two loads ends the day earlier.
 */
export type SearchWatch = {
  /** Where the exchanges begin: another seed walks another way. A whole number from 0 on. */
  readonly seed: number
  /** Told of the bound that no timetable can beat, once, before the first step. */
  readonly begun: (bound: KitchenTime) => void
  /** Told of each plan that ends earlier than the one before, whole and fit to be used. */
  readonly better: (plan: DayPlan) => void
  /** Asked before each step, which is one order of loads timed from end to end; no ends the search with the best so far. */
  readonly goOn: () => boolean
}
