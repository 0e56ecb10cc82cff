import 'server-only'
import type { StoredPlan } from '@/lib/queries/saved-plan'
import { askPlanner } from '@/lib/planner/ask-planner'
import { plannedOnce } from '@/lib/services/day/remembered-plans'
import { isStillTheSame } from '@/shared/day/plan-age'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem, PlanLock } from '@/shared/planning/day-problem'
import { nothingSoFar } from '@/shared/planning/day-so-far'
import type { Replan } from '@/shared/planning/replan-day'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'
import { sayPlanRefusal } from '@/shared/wording/say-plan'
import { sayLocked } from '@/shared/wording/say-replan'

/** Locks that are left out one by one of the plan that stands, to find which of them binds; of more than these all are named. */
const MOST_TRIED = 6

/**
 * A plan of the whole day that keeps what was fixed by hand: the plan that stands with as little moved as can be, else one from the start.
 * Refused with the locks that bind where the day without them would fit. Several plans, each of them remembered.
 */
export async function plannedWithLocks(problem: DayProblem, stored: StoredPlan | null): Promise<Result<DayPlan, Refusal>> {
  const { locks = [], ...free } = problem
  if (locks.length === 0) return plannedAnew(problem)
  const standing = stored && isSameDay(stored.problem, problem) ? stored.plan : null
  const kept = standing && (await keptPlan(problem, standing))
  if (kept) return ok(kept)
  const anew = await plannedOnce(problem)
  if (anew.ok) return anew
  const without = await plannedOnce(free)
  if (!without.ok) return plannedAnew(free)
  const binding: PlanLock[] = []
  if (standing && locks.length <= MOST_TRIED) {
    for (const lock of locks)
      if (await keptPlan({ ...problem, locks: locks.filter((other) => other !== lock) }, standing)) binding.push(lock)
  }
  return refuse(sayLocked(problem, stored?.plan ?? without.value, binding.length > 0 ? binding : locks))
}

async function plannedAnew(problem: DayProblem): Promise<Result<DayPlan, Refusal>> {
  const planned = await plannedOnce(problem)
  return planned.ok ? planned : refuse(sayPlanRefusal(problem, { ...planned.problem, waysOut: [] }))
}

const isSameDay = (planned: DayProblem, now: DayProblem): boolean =>
  isStillTheSame(planned, now) && wantedOf(planned) === wantedOf(now) && (now.chilled ?? []).length === 0

const wantedOf = ({ preparations }: DayProblem): string =>
  JSON.stringify(preparations.map(({ id, jarsWanted, spare }) => [id, jarsWanted, spare]))

/** The plan that stands, moved as little as the locks ask; null when something would be left out of it. */
async function keptPlan(problem: DayProblem, plan: DayPlan): Promise<DayPlan | null> {
  const again = await askPlanner('keeping-locks', { problem, plan, soFar: nothingSoFar(problem.window.accessAt) })
  return again && isWhole(again) ? again.plan : null
}

const isWhole = ({ dropped, brokenWaits }: Replan): boolean => dropped.length === 0 && brokenWaits.length === 0
