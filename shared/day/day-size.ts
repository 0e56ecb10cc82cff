import type { DayProblem } from '@/shared/planning/day-problem'
import { kettleWorks } from '@/shared/planning/kettle-works'
import { jarsToPlan, splitDemand } from '@/shared/planning/split-demand'

/** Tested batches that one day may have. A festival with forty canners has some hundreds. */
export const MOST_BATCHES = 2_000

/** Gatherings of loads that are planned while somebody waits for the page; a larger day is searched apart. */
export const MOST_JOBS_AT_ONCE = 16

/** Gatherings of loads that may be left of a running day for the rest of it to be planned anew: twice a weekend's Saturday. */
export const MOST_JOBS_AGAIN = 160

/** How large a day is to plan. */
export type DaySize = {
  /** Tested batches of its recipes, before they are gathered into kettles. */
  readonly batches: number
  /** Canner loads, and what is placed at once: batches that share a load. Zeros where the demand cannot be divided at all. */
  readonly loads: number
  readonly jobs: number
}

/** Counts what a day holds, without planning it. A day of more than `MOST_BATCHES` is not divided: its loads are not counted. */
export function daySize(problem: DayProblem): DaySize {
  const batches = kettleWorks(problem).reduce((sum, each) => sum + Math.ceil(Math.max(0, jarsToPlan(each)) / each.batchYield.typical), 0)
  const split = batches > MOST_BATCHES ? null : splitDemand(problem)
  const jobs = split?.ok ? split.value.jobs : []
  return { batches, loads: jobs.reduce((sum, job) => sum + job.loads.length, 0), jobs: jobs.length }
}

/** Is this day too large to be planned while somebody waits? */
export const isSearchedApart = (problem: DayProblem): boolean => {
  const { batches, jobs } = daySize(problem)
  return batches > MOST_BATCHES || jobs > MOST_JOBS_AT_ONCE
}
