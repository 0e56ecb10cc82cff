import { applyPlanChange, type PlanChange } from '@/shared/day/apply-plan-change'
import { planDayByNames, planOnceByNames } from '@/shared/day/plan-by-names'
import { planSlips } from '@/shared/day/slips'
import { absenceMargin } from '@/shared/planning/absence-margin'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { DaySoFar } from '@/shared/planning/day-so-far'
import { replanDay, replanKeepingLocks } from '@/shared/planning/replan-day'
import { replayPlan } from '@/shared/planning/replay-plan'

type Planned = { readonly problem: DayProblem; readonly plan: DayPlan }
type Running = Planned & { readonly soFar: DaySoFar }

/** Whose seed every page uses, so that a plan looked at twice ends alike twice. */
export const REPLAY_SEED = 1

/** Played so often in all, over the batches of a day: a thousand times for forty batches, seldomer for more. */
const PLAYED_BATCHES = 40_000
const MOST_RUNS = 1000

/**
 * Everything that takes planning to answer. Pure functions of plain data, so a thread of its own may answer them and an answer may be kept:
 * the same question always has the same answer.
 */
export const PLAN_QUESTIONS = {
  /** The plan of a day, or the limit that stops it. */
  once: (problem: DayProblem) => planOnceByNames(problem),
  /** The same with ways out, each of which is planned. */
  'with-ways-out': (problem: DayProblem) => planDayByNames(problem),
  /** The rest of a running day. */
  again: ({ problem, plan, soFar }: Running) => replanDay(problem, plan, soFar),
  /** The same, or null where no plan keeps every lock. */
  'keeping-locks': ({ problem, plan, soFar }: Running) => replanKeepingLocks(problem, plan, soFar),
  /** What happens to a plan if something slips. */
  slips: ({ problem, plan }: Planned) => planSlips(problem, plan),
  /** What a day becomes by a change; a surer plan takes many plans. */
  change: ({ problem, change }: { readonly problem: DayProblem; readonly change: PlanChange }) => applyPlanChange(problem, change),
  /** The plan played a thousand times; a large one seldomer. */
  replay: ({ problem, plan }: Planned) =>
    replayPlan(problem, plan, REPLAY_SEED, Math.ceil(Math.min(MOST_RUNS, PLAYED_BATCHES / Math.max(1, plan.batches.length)))),
  /** Whether the day still fits when people stay away. */
  absence: (problem: DayProblem) => absenceMargin(problem, REPLAY_SEED),
}

export type PlanQuestion = keyof typeof PLAN_QUESTIONS
export type Asked<Kind extends PlanQuestion> = Parameters<(typeof PLAN_QUESTIONS)[Kind]>[0]
export type Answered<Kind extends PlanQuestion> = ReturnType<(typeof PLAN_QUESTIONS)[Kind]>

/** Answers a question where it is asked. */
export const answerPlanQuestion = <Kind extends PlanQuestion>(kind: Kind, asked: Asked<Kind>): Answered<Kind> =>
  (PLAN_QUESTIONS[kind] as (asked: Asked<Kind>) => Answered<Kind>)(asked)
