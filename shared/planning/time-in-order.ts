import { emptyCalendar, freeFrom } from '@/shared/planning/day-calendar'
import type { DayProblem, PlanCanner, PlanPreparation } from '@/shared/planning/day-problem'
import { firstThings, takeUnderWay } from '@/shared/planning/first-things'
import { setUpKitchen } from '@/shared/planning/kitchen-set-up'
import { hasFixedMinute } from '@/shared/planning/locks'
import { cannerMinutesOf, type PlacedJob, placeJob } from '@/shared/planning/place-job'
import type { Blocked, CrowdRule, Effort, FillRule, OperatorRule, PlacingContext } from '@/shared/planning/placing-context'
import type { SearchWatch } from '@/shared/planning/search-watch'
import type { SplitJob } from '@/shared/planning/split-demand'
import type { UnderWay } from '@/shared/planning/under-way'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** A whole timetable with its context, before tasks are written out. */
export type Timetable = {
  readonly context: PlacingContext
  readonly jobs: readonly PlacedJob[]
  readonly finishAt: KitchenTime
  readonly rule: string
}

/** How one timetable is made: who minds canners, when is filled. */
export type Manner = {
  readonly operators: OperatorRule
  readonly fill: FillRule
  readonly fills?: ReadonlyMap<SplitJob, FillRule>
  readonly keepsMinutes?: boolean
  readonly crowd?: CrowdRule
}

/** The manners that are tried, in turn. */
export const MANNERS: readonly [Manner, ...Manner[]] = [
  { operators: 'keep-a-canner', fill: 'ahead' },
  { operators: 'one-minds-all', fill: 'ahead' },
  { operators: 'keep-a-canner', fill: 'in-between' },
  { operators: 'one-minds-all', fill: 'in-between' },
  { operators: 'keep-a-canner', fill: 'just-in-time' },
  { operators: 'one-minds-all', fill: 'just-in-time' },
]

/** One search: the day, the canners in use, and where failures are counted. */
export type OrderSearch = {
  readonly problem: DayProblem
  readonly jobs: readonly SplitJob[]
  readonly canners: readonly PlanCanner[]
  readonly blocked: Blocked
  readonly effort: Effort
  /** Fillings that may be tried beyond `effort` where nothing was found with it. */
  readonly effortInTime: number
  /** A day that has begun: what it holds is taken before anything is placed. */
  readonly underWay?: UnderWay
  /** Only where the search may go on for minutes. */
  readonly watch?: OrderWatch
}

/** The part of a watch that orders of loads need. */
export type OrderWatch = Pick<SearchWatch, 'seed' | 'goOn'> & { readonly better: (timetable: Timetable) => void }

/** An empty calendar for a search, with what work under way holds already taken. */
export function startContext(
  search: OrderSearch,
  { operators, fill, fills = new Map(), keepsMinutes = false, crowd }: Manner,
): PlacingContext {
  const { problem, canners, blocked, effort, underWay = null } = search
  const context: PlacingContext = {
    problem,
    setUp: underWay?.setUp ?? setUpKitchen(problem, canners),
    calendar: emptyCalendar(),
    operatorRule: operators,
    fillRule: fill,
    fillRules: fills,
    lastOperator: new Map(underWay?.lastOperator),
    able: new Map(),
    scarcity: new Map(),
    crowd: crowd ?? null,
    blocked,
    effort,
    reserved: new Map(),
    underWay,
    keepsMinutes,
  }
  if (underWay) takeUnderWay(context, underWay)
  return context
}

/** A timetable of the jobs in this order, or null where one of them fits nowhere. */
export function timeInOrder(
  search: OrderSearch,
  order: readonly SplitJob[],
  manner: Manner,
  emptyBy: KitchenTime,
  rule: string,
): Timetable | null {
  const timed = timeUntilStuck(search, order, manner, emptyBy, rule)
  return 'stuck' in timed ? null : timed
}

/** The same, or the job that fits nowhere after those before it. */
export function timeUntilStuck(
  search: OrderSearch,
  order: readonly SplitJob[],
  manner: Manner,
  emptyBy: KitchenTime,
  rule: string,
): Timetable | { readonly stuck: SplitJob } {
  const context = startContext(search, manner)
  const jobs = firstThings(search, order)
  const placed: PlacedJob[] = []
  for (const [index, job] of jobs.entries()) {
    const timed = placeNext(context, jobs.slice(index), job, emptyBy)
    if (!timed) return { stuck: job }
    placed.push(timed)
  }
  return timetableOf(context, placed, rule)
}

/** What was placed, as a timetable. */
export const timetableOf = (context: PlacingContext, jobs: readonly PlacedJob[], rule: string): Timetable => ({
  context,
  jobs,
  finishAt: Math.max(
    context.underWay?.finishAt ?? context.problem.window.firstLoadAt,
    ...jobs.flatMap((job) => job.loads.map((load) => load.emptyAt)),
  ),
  rule,
})

/**
 * Places one job so that those left can still end by `emptyBy`.
 *
 * @param left - the jobs not placed yet, with this one
 */
export function placeNext(context: PlacingContext, left: readonly SplitJob[], job: SplitJob, emptyBy: KitchenTime): PlacedJob | null {
  const preparation = context.problem.preparations.find((entry) => entry.id === job.preparationId)
  return preparation ? placeJob(context, job, preparation, emptyBy, idleLeft(context, left, preparation, emptyBy)) : null
}

/** Canner minutes that may still go unused, over all canners of the method, if the loads left are to end by `emptyBy`. */
function idleLeft(context: PlacingContext, left: readonly SplitJob[], { method }: PlanPreparation, emptyBy: KitchenTime): number {
  const { problem, setUp, calendar } = context
  // Minutes before a load that a lock or an outage put ahead of its turn would count as idle ones: then idleness bounds nothing.
  if (context.reserved.size > 0 || left.some((job) => hasFixedMinute(problem, job))) return Number.POSITIVE_INFINITY
  const open = setUp.places
    .filter(({ canner }) => canner.method === method)
    .reduce((sum, { canner, readyAt }) => sum + Math.max(0, emptyBy - freeFrom(calendar, canner.id, readyAt)), 0)
  const needed = left.reduce((sum, job) => {
    const preparation = problem.preparations.find((entry) => entry.id === job.preparationId)
    return preparation?.method === method ? sum + job.loads.length * cannerMinutesOf(preparation) : sum
  }, 0)
  return open - needed
}
