import 'server-only'
import type { StoredPlan } from '@/lib/queries/saved-plan'
import { plannedOnce, remembered } from '@/lib/services/day/remembered-plans'
import { isStillTheSame } from '@/shared/day/plan-age'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { nothingSoFar } from '@/shared/planning/day-so-far'
import { type Replan, replanKeepingLocks } from '@/shared/planning/replan-day'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'
import { sayPlanRefusal } from '@/shared/wording/say-plan'
import { sayLocked } from '@/shared/wording/say-replan'

/** Locks that are left out one by one of the plan that stands, to find which of them binds; of more than these all are named. */
const MOST_TRIED = 6

/**
 * A plan of the whole day that keeps what was fixed by hand: the plan that stands with as little moved as can be, else one from the start.
 * Refused with the locks that bind where the day without them would fit. Several plans, so the answer is remembered.
 */
export function plannedWithLocks(problem: DayProblem, stored: StoredPlan | null): Result<DayPlan, Refusal> {
  if ((problem.locks ?? []).length === 0) return plannedAnew(problem)
  const from = stored && { problem: stored.problem, plan: stored.plan }
  return remembered('locks', { problem, from }, () => planWithLocks(problem, from))
}

function planWithLocks(problem: DayProblem, stored: Pick<StoredPlan, 'problem' | 'plan'> | null): Result<DayPlan, Refusal> {
  const { locks = [], ...free } = problem
  const standing = stored && isSameDay(stored.problem, problem) ? stored.plan : null
  const kept = standing && keptPlan(problem, standing)
  if (kept) return ok(kept)
  const anew = plannedOnce(problem)
  if (anew.ok) return anew
  const without = plannedOnce(free)
  if (!without.ok) return plannedAnew(free)
  const tried = standing && locks.length <= MOST_TRIED ? locks : []
  const binding = tried.filter((lock) => standing && keptPlan({ ...problem, locks: locks.filter((other) => other !== lock) }, standing))
  return refuse(sayLocked(problem, stored?.plan ?? without.value, binding.length > 0 ? binding : locks))
}

function plannedAnew(problem: DayProblem): Result<DayPlan, Refusal> {
  const planned = plannedOnce(problem)
  return planned.ok ? planned : refuse(sayPlanRefusal(problem, { ...planned.problem, waysOut: [] }))
}

const isSameDay = (planned: DayProblem, now: DayProblem): boolean =>
  isStillTheSame(planned, now) && wantedOf(planned) === wantedOf(now) && (now.chilled ?? []).length === 0

const wantedOf = ({ preparations }: DayProblem): string =>
  JSON.stringify(preparations.map(({ id, jarsWanted, spare }) => [id, jarsWanted, spare]))

/** The plan that stands, moved as little as the locks ask; null when something would be left out of it. */
function keptPlan(problem: DayProblem, plan: DayPlan): DayPlan | null {
  const again = replanKeepingLocks(problem, plan, nothingSoFar(problem.window.accessAt))
  return again && isWhole(again) ? again.plan : null
}

const isWhole = ({ dropped, brokenWaits }: Replan): boolean => dropped.length === 0 && brokenWaits.length === 0
