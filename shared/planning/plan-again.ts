import type { DayProblem } from '@/shared/planning/day-problem'
import { planOnce } from '@/shared/planning/plan-once'
import { splitDemand } from '@/shared/planning/split-demand'

/** Many changes are planned again for one answer: each may try fewer fillings than a plan by itself, and the fewer the larger the day is. */
const MOST_FILLINGS_PER_JOB = 400
const FILLINGS_FOR_JOBS_SQUARED = 40_000
const LEAST_FILLINGS_PER_JOB = 10

/** What was answered for a problem that is still in use: a way out is first sought, then measured. */
const answers = new WeakMap<DayProblem, ReturnType<typeof planOnce>>()

/** The day planned as one of many: with less searching than by itself, so a day that just fits may be called not fitting, never the other way. */
export function plannedAgain(problem: DayProblem): ReturnType<typeof planOnce> {
  const known = answers.get(problem)
  if (known) return known
  const split = splitDemand(problem)
  const jobs = split.ok ? Math.max(1, split.value.jobs.length) : 1
  const fillings = Math.ceil(FILLINGS_FOR_JOBS_SQUARED / jobs ** 2)
  const answer = planOnce(problem, Math.max(LEAST_FILLINGS_PER_JOB, Math.min(MOST_FILLINGS_PER_JOB, fillings)))
  answers.set(problem, answer)
  return answer
}
