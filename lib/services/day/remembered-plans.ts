import 'server-only'
import { canonicalJson, sha256 } from '@/lib/commands/canonical-json'
import { applyPlanChange, type PlanChange } from '@/shared/day/apply-plan-change'
import { daySize, isSearchedApart, MOST_BATCHES } from '@/shared/day/day-size'
import { planDayByNames, planOnceByNames } from '@/shared/day/plan-by-names'
import { planSlips, type Slip } from '@/shared/day/slips'
import type { DayPlan, PlanRefusal } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { type AbsenceMargin, absenceMargin } from '@/shared/planning/absence-margin'
import { type LastStart, lastStarts } from '@/shared/planning/last-start'
import type { PlainRefusal } from '@/shared/planning/plan-once'
import { type PlanReplay, replayPlan } from '@/shared/planning/replay-plan'
import { refusalBeforePlanning } from '@/shared/planning/refuse-day'
import { type Result, refuse } from '@/shared/result/result'

/** Days whose last answers are kept. Planning is a pure function, so an answer kept is an answer given again, in this process alone. */
const MOST_KEPT = 64

const kept = new Map<string, unknown>()

/** The plan of a problem or the limit that stops it. Whoever saw a day on a page does not wait again when it is saved. */
export const plannedOnce = (problem: DayProblem): Result<DayPlan, PlainRefusal> =>
  remembered('once', problem, () => planOnceByNames(problem))

/** The same with the ways out of a refusal. */
export function plannedDay(problem: DayProblem): Result<DayPlan, PlanRefusal> {
  const once = plannedOnce(problem)
  return once.ok ? once : remembered('day', problem, () => planDayByNames(problem))
}

/**
 * The same for a page, which somebody waits for: null for a day too large to be planned meanwhile. What counting alone shows not to fit is
 * refused for a large day too, without ways out.
 */
export function plannedForPage(problem: DayProblem): Result<DayPlan, PlanRefusal> | null {
  if (!isSearchedApart(problem)) return plannedDay(problem)
  const early = daySize(problem).batches > MOST_BATCHES ? null : refusalBeforePlanning(problem)
  return early && refuse({ ...early, waysOut: [] })
}

/** What happens to a plan if something slips. */
export const plannedSlips = (problem: DayProblem, plan: DayPlan): Slip[] =>
  remembered('slips', { problem, plan }, () => planSlips(problem, plan))

/** What a day becomes by a change; a surer plan takes many plans. */
export const changedOnce = (problem: DayProblem, change: PlanChange): ReturnType<typeof applyPlanChange> =>
  remembered('change', { problem, change }, () => applyPlanChange(problem, change))

/** An answer of a pure function, worked out once for what was asked. */
export function remembered<Answer>(kind: string, asked: object, work: () => Answer): Answer {
  const key = `${kind} ${sha256(canonicalJson(asked))}`
  const known = kept.get(key)
  const answer = known === undefined ? work() : (known as Answer)
  kept.delete(key)
  kept.set(key, answer)
  const [oldest] = kept.keys()
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest)
  return answer
}

/** Whose seed every page uses, so that a plan looked at twice ends alike twice. */
const REPLAY_SEED = 1

/** Played so often in all, over the batches of a day: a thousand times for forty batches, seldomer for more. */
const PLAYED_BATCHES = 40_000
const MOST_RUNS = 1000

/** The plan played a thousand times; a large one seldomer. */
export const plannedReplay = (problem: DayProblem, plan: DayPlan): PlanReplay =>
  remembered('replay', { problem, plan }, () =>
    replayPlan(problem, plan, REPLAY_SEED, Math.ceil(Math.min(MOST_RUNS, PLAYED_BATCHES / Math.max(1, plan.batches.length)))),
  )

/** Whether the day still fits when people stay away. */
export const plannedAbsence = (problem: DayProblem): AbsenceMargin =>
  remembered('absence', problem, () => absenceMargin(problem, REPLAY_SEED))

/** In so many of ten days the last kettle's canner is empty in time. */
const SURE_ENOUGH = 0.9

/** After when no kettle is put on, for each preparation. */
export const plannedLastStarts = (problem: DayProblem): LastStart[] =>
  remembered('last-starts', problem, () => lastStarts(problem, SURE_ENOUGH, REPLAY_SEED))
