import { parentPort, workerData } from 'node:worker_threads'
import { searchByNames } from '@/shared/day/plan-by-names'
import type { SearchSaid } from '@/shared/forms/plan-search'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { PlainRefusal } from '@/shared/planning/plan-once'
import { sayPlanRefusal } from '@/shared/wording/say-plan'
import { notFoundInTime } from '@/shared/wording/say-search'

/** What the worker is started with. */
export type SearchOrder = {
  readonly problem: DayProblem
  readonly seed: number
  readonly milliseconds: number
  /** Orders of loads that may be tried; as many as the time allows when not said. */
  readonly mostSteps?: number
}

/** What the worker tells while it searches and when it ends. */
export type SearchNews =
  | { readonly kind: 'begun'; readonly lowerBound: number }
  | { readonly kind: 'step'; readonly steps: number }
  | { readonly kind: 'better'; readonly steps: number; readonly plan: DayPlan }
  | { readonly kind: 'ended'; readonly steps: number; readonly plan: DayPlan | null; readonly said: SearchSaid | null }

/** Time ends this search, not the count of fillings that ends one on a page. */
const FILLINGS_TRIED_PER_JOB = 1_000_000

const TOLD_EVERY_MS = 300

const order: SearchOrder = workerData
const tell = (news: SearchNews) => parentPort?.postMessage(news)
search()

/** Searches until the time is spent, the bound is met or no exchange helps, and tells of every better plan. */
function search(): void {
  const startedAt = performance.now()
  let steps = 0
  let toldAt = startedAt
  let isOverTime = false
  const goOn = () => {
    steps += 1
    const now = performance.now()
    if (now - toldAt >= TOLD_EVERY_MS) {
      toldAt = now
      tell({ kind: 'step', steps })
    }
    isOverTime = now - startedAt >= order.milliseconds
    return !isOverTime && steps <= (order.mostSteps ?? Number.POSITIVE_INFINITY)
  }
  const answer = searchByNames(order.problem, FILLINGS_TRIED_PER_JOB, {
    seed: order.seed,
    begun: (lowerBound) => tell({ kind: 'begun', lowerBound }),
    better: (plan) => tell({ kind: 'better', steps, plan }),
    goOn,
  })
  tell(
    answer.ok
      ? { kind: 'ended', steps, plan: answer.value, said: null }
      : { kind: 'ended', steps, plan: null, said: say(answer.problem, isOverTime) },
  )
}

/** A search that ran out of time has not shown that the day does not fit. */
function say(problem: PlainRefusal, isOverTime: boolean): SearchSaid {
  const { what, why, instead } = sayPlanRefusal(order.problem, { ...problem, waysOut: [] })
  return isOverTime ? notFoundInTime(Math.round(order.milliseconds / 1000), why ?? '') : { what, why, instead }
}
