import 'server-only'
import { canonicalJson, sha256 } from '@/lib/commands/canonical-json'
import { planDayByNames, planOnceByNames } from '@/shared/day/plan-by-names'
import { planSlips, type Slip } from '@/shared/day/slips'
import type { DayPlan, PlanRefusal } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { PlainRefusal } from '@/shared/planning/plan-once'
import type { Result } from '@/shared/result/result'

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

/** What happens to a plan if something slips. */
export const plannedSlips = (problem: DayProblem, plan: DayPlan): Slip[] =>
  remembered('slips', { problem, plan }, () => planSlips(problem, plan))

function remembered<Answer>(kind: string, asked: object, work: () => Answer): Answer {
  const key = `${kind} ${sha256(canonicalJson(asked))}`
  const known = kept.get(key)
  const answer = known === undefined ? work() : (known as Answer)
  kept.delete(key)
  kept.set(key, answer)
  const [oldest] = kept.keys()
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest)
  return answer
}
