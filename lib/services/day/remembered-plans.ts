import 'server-only'
import { askPlanner } from '@/lib/planner/ask-planner'
import { PlanningBrokeOff } from '@/lib/planner/planning-broke-off'
import { applyPlanChange, type PlanChange } from '@/shared/day/apply-plan-change'
import { daySize, isSearchedApart, MOST_BATCHES } from '@/shared/day/day-size'
import { REPLAY_SEED } from '@/shared/day/plan-questions'
import type { Slip } from '@/shared/day/slips'
import type { AbsenceMargin } from '@/shared/planning/absence-margin'
import type { DayPlan, PlanRefusal, WayOut } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { type LastStart, lastStarts } from '@/shared/planning/last-start'
import type { PlainRefusal } from '@/shared/planning/plan-once'
import { refusalBeforePlanning } from '@/shared/planning/refuse-day'
import type { PlanReplay } from '@/shared/planning/replay-plan'
import { type Result, refuse } from '@/shared/result/result'

/** The plan of a problem or the limit that stops it. Whoever saw a day on a page does not wait again when it is saved. */
export const plannedOnce = (problem: DayProblem): Promise<Result<DayPlan, PlainRefusal>> => askPlanner('once', problem)

/** The same with the ways out of a refusal. */
export async function plannedDay(problem: DayProblem): Promise<Result<DayPlan, PlanRefusal>> {
  const once = await plannedOnce(problem)
  return once.ok ? once : askPlanner('with-ways-out', problem)
}

/**
 * The same for a page, which somebody waits for: null for a day too large to be planned meanwhile, and where the planner broke off. What
 * counting alone shows not to fit is refused for a large day too; its ways out are asked for apart.
 */
export async function plannedForPage(problem: DayProblem): Promise<Result<DayPlan, PlanRefusal> | null> {
  if (!isSearchedApart(problem)) return orNull(plannedDay(problem))
  const early = daySize(problem).batches > MOST_BATCHES ? null : refusalBeforePlanning(problem)
  return early && refuse({ ...early, waysOut: [] })
}

/** The ways out of a large day that counting alone refuses, each planned; null where that takes too long. */
export async function plannedWaysOut(problem: DayProblem): Promise<readonly WayOut[] | null> {
  const planned = await orNull(askPlanner('with-ways-out', problem))
  return planned && !planned.ok ? planned.problem.waysOut : null
}

/** What a page does without where the planner broke off. */
export const orNull = <Answer>(asked: Promise<Answer>): Promise<Answer | null> =>
  asked.catch((error: unknown) => {
    if (error instanceof PlanningBrokeOff) return null
    throw error
  })

/** What happens to a plan if something slips; null where the planner broke off. */
export const plannedSlips = (problem: DayProblem, plan: DayPlan): Promise<Slip[] | null> => orNull(askPlanner('slips', { problem, plan }))

/** What a day becomes by a change; a surer plan takes many plans and may break off, everything else is read off at once. */
export async function changedOnce(problem: DayProblem, change: PlanChange): Promise<ReturnType<typeof applyPlanChange>> {
  return change.kind === 'surer' ? askPlanner('change', { problem, change }) : applyPlanChange(problem, change)
}

/** The plan played a thousand times, a large one seldomer; null where the planner broke off. */
export const plannedReplay = (problem: DayProblem, plan: DayPlan): Promise<PlanReplay | null> =>
  orNull(askPlanner('replay', { problem, plan }))

/** Whether the day still fits when people stay away; null where the planner broke off. */
export const plannedAbsence = (problem: DayProblem): Promise<AbsenceMargin | null> => orNull(askPlanner('absence', problem))

/** In so many of ten days the last kettle's canner is empty in time. */
const SURE_ENOUGH = 0.9

/** After when no kettle is put on, for each preparation: drawn, not planned, so it is worked out here. */
export const plannedLastStarts = (problem: DayProblem): LastStart[] => lastStarts(problem, SURE_ENOUGH, REPLAY_SEED)
