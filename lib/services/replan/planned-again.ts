import 'server-only'
import type { ReplanInput } from '@/lib/queries/replan-input'
import { remembered } from '@/lib/services/day/remembered-plans'
import { MOST_JOBS_AT_ONCE } from '@/shared/day/day-size'
import { jobsLeft } from '@/shared/planning/jobs-left'
import { type Replan, replanDay } from '@/shared/planning/replan-day'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'
import { sayLocked, tooMuchLeft } from '@/shared/wording/say-replan'

/**
 * The one place from which a running day is planned anew. Remembered, so that a preview that is used is not planned again under the day's lock.
 *
 * Refused where no plan keeps what was fixed, and where more is still to be loaded than can be planned while somebody waits.
 */
export function plannedAgain({ problem, plan, soFar }: ReplanInput): Result<Replan, Refusal> {
  const { jobs } = jobsLeft(problem, plan, soFar)
  if (jobs.length > MOST_JOBS_AT_ONCE) return refuse(tooMuchLeft(jobs.reduce((sum, { job }) => sum + job.loads.length, 0)))
  const planned = remembered('again', { problem, plan, soFar }, () => replanDay(problem, plan, soFar))
  return planned.ok ? ok(planned.value) : refuse(sayLocked(problem, plan, planned.problem.locks))
}
