import type { DayPlan, PlanRefusal } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { planOnce } from '@/shared/planning/plan-once'
import { findWaysOut } from '@/shared/planning/ways-out'
import { ok, type Result, refuse } from '@/shared/result/result'

/**
 * Plans a session, or refuses with the limit that binds and with ways out that were each planned again.
 *
 * Pure and deterministic: the same problem gives the same plan on server, phone and in tests.
 */
export function planDay(problem: DayProblem): Result<DayPlan, PlanRefusal> {
  const planned = planOnce(problem)
  if (planned.ok) return ok(planned.value)
  const waysOut = planned.problem.limit.kind === 'bad-number' ? [] : findWaysOut(problem)
  return refuse({ ...planned.problem, waysOut })
}
