import { addChilled } from '@/shared/planning/add-chilled'
import { assemblePlan } from '@/shared/planning/assemble-plan'
import type { DayPlan, PlanRefusal } from '@/shared/planning/day-plan'
import type { DayProblem, PlanCanner } from '@/shared/planning/day-problem'
import { earliestFinish } from '@/shared/planning/finish-bound'
import { type Effort, nothingBlocked } from '@/shared/planning/placing-context'
import { blockedRefusal, refusalBeforePlanning } from '@/shared/planning/refuse-day'
import { searchOrders } from '@/shared/planning/search-orders'
import type { Timetable } from '@/shared/planning/time-in-order'
import type { SearchWatch } from '@/shared/planning/search-watch'
import { splitDemand } from '@/shared/planning/split-demand'
import { type Result, refuse } from '@/shared/result/result'

/** How long one search may go on, in fillings tried for each load of the day. */
const FILLINGS_TRIED_PER_JOB = 900

/** So many times as much is tried before a day that no bound forbids is called not fitting. */
const TIMES_BEFORE_REFUSAL = 8

/** Why there is no plan, before anybody looked for a way out. */
export type PlainRefusal = Omit<PlanRefusal, 'waysOut'>

/**
 * Plans a session: splits the demand, then times every load, kettle, table, burner and person so that the last canner is empty as early
 * as can be found, books what goes into no canner around that, or says which limit stops it.
 *
 * The same problem always gives the same plan. `fillingsPerJob` bounds the search; the fewer canners are in use, the less is spent on it. Refusals carry no ways out: `planDay` finds them.
 *
 * @param watch - lets the search go on until told to stop, and tells of every better plan; give it more fillings as well
 */
export function planOnce(problem: DayProblem, fillingsPerJob = FILLINGS_TRIED_PER_JOB, watch?: SearchWatch): Result<DayPlan, PlainRefusal> {
  const early = refusalBeforePlanning(problem)
  if (early) return refuse(early)
  const split = splitDemand(problem)
  if (!split.ok) return refuse({ kind: 'does-not-fit', ...split.problem, at: null, loadCount: 0 })
  const blocked = nothingBlocked()
  const { jobs } = split.value
  const bound = earliestFinish(problem, jobs)
  watch?.begun(bound)
  const followed = watch && {
    seed: watch.seed,
    goOn: watch.goOn,
    better(found: Timetable) {
      const whole = addChilled(problem, assemblePlan(problem, found, bound))
      if (whole.ok) watch.better(whole.value)
    },
  }
  let left = fillingsPerJob * jobs.length * 2
  let unchilled: PlainRefusal | null = null
  for (const canners of jobs.length > 0 ? cannerSets(problem) : [[]]) {
    const effort: Effort = { left: Math.ceil(left / 2) }
    const effortInTime = effort.left * TIMES_BEFORE_REFUSAL
    const best = searchOrders({ problem, jobs, canners, blocked, effort, effortInTime, watch: followed }, bound)
    const whole = best && addChilled(problem, assemblePlan(problem, best, bound))
    if (whole?.ok) return whole
    unchilled ??= whole?.problem ?? null
    left -= Math.ceil(left / 2)
  }
  return refuse(unchilled ?? blockedRefusal(problem, split.value, blocked))
}

/** All usable canners first; then fewer, because a canner may be better left cold than take the last burner of the kettles. */
function cannerSets(problem: DayProblem): readonly (readonly PlanCanner[])[] {
  const wanted = new Set(problem.preparations.filter((entry) => entry.jarsWanted > 0).map((entry) => entry.method))
  const usable = problem.canners.filter((canner) => canner.usable && wanted.has(canner.method))
  return usable.map((_, index) => usable.slice(0, usable.length - index))
}
