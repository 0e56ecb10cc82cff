import type { DayPlan, TaskActual } from '@/shared/planning/day-plan'
import { forecastFinish, forecastLoads } from '@/shared/planning/forecast-loads'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Something that happened since the plan was made and that it does not know of. */
export type PlanNews =
  | { readonly kind: 'restart'; readonly loadCode: string; readonly cannerId: string; readonly at: KitchenTime }
  | { readonly kind: 'given-up'; readonly loadCode: string; readonly at: KitchenTime }
  | { readonly kind: 'late'; readonly loadCode: string; readonly minutes: number }

/** How far the day is from its plan. */
export type PlanStanding = {
  /** Minutes by which the last canner will be empty later than planned if nobody plans anew; never below 0. */
  readonly behindMinutes: number
  readonly news: readonly PlanNews[]
}

/** A load's clock as far as the standing of the plan needs it. */
export type StandingLoad = TaskActual & {
  readonly state: 'planned' | 'running' | 'done' | 'failed'
  readonly lostAt: KitchenTime | null
}

/** A load that is this many minutes after its planned minute is worth a word (our own bound). */
const LATE_MINUTES = 3

/**
 * Compares the plan that stands with what was logged.
 *
 * @param madeAt - the kitchen minute of the plan; what was logged before it is in it. Null: planned before the day began
 */
export function planStanding(plan: DayPlan, loads: readonly StandingLoad[], madeAt: KitchenTime | null, now: KitchenTime): PlanStanding {
  const since = madeAt ?? Number.NEGATIVE_INFINITY
  const going = loads.filter(({ state }) => state !== 'failed')
  const forecasts = forecastLoads(plan, going, now)
  const behindMinutes = Math.max(0, forecastFinish(plan, forecasts) - plan.finishAt)
  const restarts = going.flatMap(({ loadCode, cannerId, lostAt, boilAt, state }): PlanNews[] => {
    if (lostAt === null || state !== 'running') return []
    const at = boilAt ?? lostAt
    return at > since ? [{ kind: 'restart', loadCode, cannerId, at }] : []
  })
  const givenUp = loads.flatMap(({ loadCode, state, emptyAt }): PlanNews[] =>
    state === 'failed' && emptyAt !== null && emptyAt > since ? [{ kind: 'given-up', loadCode, at: emptyAt }] : [],
  )
  const late = forecasts
    .filter(({ state, lateMinutes }) => state !== 'done' && lateMinutes >= LATE_MINUTES)
    .sort((a, b) => a.loadAt - b.loadAt)
    .slice(0, 1)
    .map(({ load, lateMinutes }): PlanNews => ({ kind: 'late', loadCode: load.code, minutes: lateMinutes }))
  const news = [...restarts, ...givenUp]
  return { behindMinutes, news: news.length > 0 ? news : late }
}
