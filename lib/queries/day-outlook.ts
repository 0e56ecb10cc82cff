import 'server-only'
import { readDayProblem } from '@/lib/queries/day-problem'
import { readSavedPlan, type StoredPlan } from '@/lib/queries/saved-plan'
import { plannedForPage } from '@/lib/services/day/remembered-plans'
import { isStillTheSame } from '@/shared/day/plan-age'
import { type DayState, dayLife } from '@/shared/lifecycle/day-states'
import type { DayPlan, PlanRefusal } from '@/shared/planning/day-plan'
import { kettleWorks } from '@/shared/planning/kettle-works'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { Result } from '@/shared/result/result'

/** How a day stands: the plan it has, or the one it would have if it were planned now. */
export interface DayOutlook {
  /** What `outcome` was planned for. */
  readonly problem: DayProblem
  /** Null for a day that is too large to be planned for a page: it is searched apart. */
  readonly outcome: Result<DayPlan, PlanRefusal> | null
  /** The saved plan, where there is one. */
  readonly stored: StoredPlan | null
  /** The day has changed since it was planned: hours, equipment, people or a process. */
  readonly isOutdated: boolean
  /** Nobody has asked yet, so the whole offer was planned. */
  readonly isOfOffer: boolean
}

/**
 * The outlook of a day; null when the group has no such day or nothing is on offer yet. A fixed number of statements.
 *
 * Before it is planned, the claims are planned as they stand; while there are none, the offer is.
 */
export async function dayOutlook(
  groupId: string,
  dayId: string,
  state: DayState,
  offers: ReadonlyMap<string, number>,
): Promise<DayOutlook | null> {
  const isPlanned = !dayLife.mayMove(state, 'claiming') && state !== 'claiming' && state !== 'cancelled'
  const [read, stored] = await Promise.all([readDayProblem(groupId, dayId), isPlanned ? readSavedPlan(groupId, dayId) : null])
  if (!read) return null
  if (stored) {
    const isOutdated = state === 'planned' && !isStillTheSame(stored.problem, read.problem)
    return { problem: stored.problem, outcome: { ok: true, value: stored.plan }, stored, isOutdated, isOfOffer: false }
  }
  const wanted = kettleWorks(read.problem).reduce((sum, { jarsWanted }) => sum + jarsWanted, 0)
  const problem = wanted > 0 ? read.problem : withOffers(read.problem, offers)
  if (kettleWorks(problem).every(({ jarsWanted }) => jarsWanted === 0)) return null
  return { problem, outcome: await plannedForPage(problem), stored: null, isOutdated: false, isOfOffer: wanted === 0 }
}

const withOffers = (problem: DayProblem, offers: ReadonlyMap<string, number>): DayProblem => ({
  ...problem,
  preparations: problem.preparations.map((each) => ({ ...each, jarsWanted: offers.get(each.id) ?? 0 })),
  ...(problem.chilled && { chilled: problem.chilled.map((each) => ({ ...each, jarsWanted: offers.get(each.id) ?? 0 })) }),
})
