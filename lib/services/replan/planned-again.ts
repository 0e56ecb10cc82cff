import 'server-only'
import { askPlanner, isAsked } from '@/lib/planner/ask-planner'
import { PlanningBrokeOff } from '@/lib/planner/planning-broke-off'
import type { ReplanInput } from '@/lib/queries/replan-input'
import { MOST_JOBS_AGAIN } from '@/shared/day/day-size'
import { jobsLeft } from '@/shared/planning/jobs-left'
import type { Replan } from '@/shared/planning/replan-day'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'
import { notPlannedAhead, replanBrokeOff, sayLocked, tooMuchLeft } from '@/shared/wording/say-replan'

/**
 * The one place from which a running day is planned anew, beside the server's own thread. Remembered, so that a preview that is used is not
 * planned again under the day's lock.
 *
 * Refused where no plan keeps what was fixed, where more is left than any kitchen has, and where the planner broke off.
 */
export async function plannedAgain(input: ReplanInput, ask: typeof askPlanner = askPlanner): Promise<Result<Replan, Refusal>> {
  const { problem, plan, soFar } = input
  const { jobs, loads } = leftOf(input)
  if (jobs > MOST_JOBS_AGAIN) return refuse(tooMuchLeft(loads))
  try {
    const planned = await ask('again', { problem, plan, soFar })
    return planned.ok ? ok(planned.value) : refuse(sayLocked(problem, plan, planned.problem.locks))
  } catch (error) {
    if (error instanceof PlanningBrokeOff) return refuse(replanBrokeOff(error.message))
    throw error
  }
}

/**
 * The same under the day's lock, which is not held while somebody plans: where the day is not the one that was planned a moment ago,
 * somebody has entered something, and is to look at what that makes of it.
 */
export async function plannedAgainLocked(input: ReplanInput): Promise<Result<Replan, Refusal>> {
  return isPlannedAgain(input) ? plannedAgain(input) : refuse(notPlannedAhead())
}

/** Was the rest of just this day asked for a moment ago? */
export const isPlannedAgain = ({ problem, plan, soFar }: ReplanInput): boolean => isAsked('again', { problem, plan, soFar })

function leftOf({ problem, plan, soFar }: ReplanInput): { readonly jobs: number; readonly loads: number } {
  const { jobs } = jobsLeft(problem, plan, soFar)
  return { jobs: jobs.length, loads: jobs.reduce((sum, { job }) => sum + job.loads.length, 0) }
}
