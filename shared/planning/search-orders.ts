import { emptyCalendar, freeFrom, rewind } from '@/shared/planning/day-calendar'
import type { DayProblem, PlanCanner, PlanPreparation } from '@/shared/planning/day-problem'
import { setUpKitchen } from '@/shared/planning/kitchen-set-up'
import { hasFixedMinute } from '@/shared/planning/locks'
import { ORDER_RULES, swapTwo } from '@/shared/planning/order-rules'
import { firstThings, isUrgent, takeUnderWay } from '@/shared/planning/first-things'
import { cannerMinutesOf, type PlacedJob, placeJob } from '@/shared/planning/place-job'
import type { Blocked, Effort, FillRule, OperatorRule, PlacingContext } from '@/shared/planning/placing-context'
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

/** Timetables tried after the rules of thumb, shared out over the size of the day. */
const TRIES = 240
const TRIES_FOR_JOBS = 4_000

/** Loads placed while looking for a timetable that meets the bound. */
const PLACEMENTS_AT_BOUND = 150

/** Loads placed while looking for one that ends in time at all. */
const PLACEMENTS_IN_TIME = 3000

type Manner = {
  readonly operators: OperatorRule
  readonly fill: FillRule
  readonly fills?: ReadonlyMap<SplitJob, FillRule>
  readonly keepsMinutes?: boolean
}

const MANNERS: readonly [Manner, ...Manner[]] = [
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

/**
 * The best timetable found over orders of loads, or null.
 *
 * First a depth-first search for a timetable that ends at the bound, then one timetable for each rule of thumb, then, where none of them
 * fits, a depth-first search for any that ends in time, then exchanges of two loads. Steps are counted, never timed: the same day always gives the same timetable.
 *
 * @param bound - no timetable ends earlier; reaching it ends the search
 */
export function searchOrders(search: OrderSearch, bound: KitchenTime): Timetable | null {
  for (const manner of MANNERS) {
    const met = meetBound(search, bound, manner)
    if (met) return shortenWaits(search, met, manner)
  }
  let best: Timetable | null = null
  let order: readonly SplitJob[] = search.jobs
  let bestManner: Manner = MANNERS[0]
  let sinceBetter = 0
  let isStopped = false
  const attempt = (candidate: readonly SplitJob[], rule: string, manner: Manner) => {
    isStopped ||= search.watch?.goOn() === false
    if (isStopped) return
    sinceBetter++
    const limit: KitchenTime = best ? best.finishAt - 1 : search.problem.window.cannersEmptyBy
    const timetable = timeInOrder(search, candidate, manner, limit, rule)
    if (!timetable) return
    best = timetable
    order = candidate
    bestManner = manner
    sinceBetter = 0
    search.watch?.better(timetable)
  }
  for (const [rule, arrange] of Object.entries(ORDER_RULES)) {
    for (const manner of MANNERS) attempt(arrange(search.problem, search.jobs), rule, manner)
  }
  if (!best && !isStopped) {
    const rescued = endInTime(search)
    if (rescued) {
      ;({ timetable: best, manner: bestManner, order } = rescued)
      search.watch?.better(best)
    }
  }
  const tries = Math.min(TRIES, Math.ceil(TRIES_FOR_JOBS / Math.max(1, search.jobs.length)))
  const pairs = search.jobs.length ** 2 * MANNERS.length
  const isAtBound = () => best !== null && best.finishAt <= bound
  const goesOn = (step: number) => (search.watch ? !isStopped && !isAtBound() && sinceBetter < pairs : step < tries)
  for (let step = 0; goesOn(step); step++) {
    const manner = MANNERS[step % MANNERS.length]
    if (manner) attempt(swapTwo(order, step + (search.watch?.seed ?? 0)), 'exchange', manner)
  }
  return best && shortenWaits(search, best, bestManner)
}

/** Where no rule of thumb fits all loads in: the same depth-first search, for any timetable that ends in time. */
function endInTime(spent: OrderSearch): { timetable: Timetable; manner: Manner; order: readonly SplitJob[] } | null {
  const search = { ...spent, effort: { left: spent.effortInTime } }
  for (const manner of MANNERS) {
    const timetable = meetBound(search, search.problem.window.cannersEmptyBy, manner, PLACEMENTS_IN_TIME)
    if (timetable) return { timetable, manner, order: timetable.jobs.map((placed) => placed.job) }
  }
  return null
}

/** Fills each batch nearer to its load where the finish stays the same: hot jars should not stand about, and a late cook has room. */
function shortenWaits(search: OrderSearch, met: Timetable, manner: Manner): Timetable {
  let best = met
  let rules: ReadonlyMap<SplitJob, FillRule> = new Map()
  const order = met.jobs.map((placed) => placed.job)
  for (const job of order) {
    for (const rule of NEARER[manner.fill]) {
      const candidate = new Map([...rules, [job, rule]])
      const timetable = timeInOrder(search, order, { ...manner, fills: candidate }, met.finishAt, met.rule)
      if (!timetable) continue
      best = timetable
      rules = candidate
      break
    }
  }
  return best
}

const NEARER: Readonly<Record<FillRule, readonly FillRule[]>> = {
  ahead: ['just-in-time', 'in-between'],
  'in-between': ['just-in-time'],
  'just-in-time': [],
}

function startContext(search: OrderSearch, { operators, fill, fills = new Map(), keepsMinutes = false }: Manner): PlacingContext {
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
    blocked,
    effort,
    reserved: new Map(),
    underWay,
    keepsMinutes,
  }
  if (underWay) takeUnderWay(context, underWay)
  return context
}

function timeInOrder(
  search: OrderSearch,
  order: readonly SplitJob[],
  manner: Manner,
  emptyBy: KitchenTime,
  rule: string,
): Timetable | null {
  const context = startContext(search, manner)
  const jobs = firstThings(search, order)
  const placed: PlacedJob[] = []
  for (const [index, job] of jobs.entries()) {
    const timed = placeNext(context, jobs.slice(index), job, emptyBy)
    if (!timed) return null
    placed.push(timed)
  }
  return timetableOf(context, placed, rule)
}

const timetableOf = (context: PlacingContext, jobs: readonly PlacedJob[], rule: string): Timetable => ({
  context,
  jobs,
  finishAt: Math.max(
    context.underWay?.finishAt ?? context.problem.window.firstLoadAt,
    ...jobs.flatMap((job) => job.loads.map((load) => load.emptyAt)),
  ),
  rule,
})

/**
 * Timetables that keep the minutes and people of the plan that stands as far as a finish by `emptyBy` lets them, one for each manner.
 *
 * @param order - the jobs in the order of that plan
 */
export const keepingTimetables = (search: OrderSearch, order: readonly SplitJob[], emptyBy: KitchenTime): Timetable[] =>
  MANNERS.flatMap((manner) => timeInOrder(search, order, { ...manner, keepsMinutes: true }, emptyBy, 'as planned') ?? [])

function placeNext(context: PlacingContext, left: readonly SplitJob[], job: SplitJob, emptyBy: KitchenTime): PlacedJob | null {
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

function meetBound(search: OrderSearch, bound: KitchenTime, manner: Manner, placements = PLACEMENTS_AT_BOUND): Timetable | null {
  const context = startContext(search, manner)
  const budget = { placements }
  const placed = goDeeper(context, search.jobs, bound, budget)
  return placed && timetableOf(context, placed, 'no idle canner')
}

/** Tries each preparation that still has loads as the next one, the one with most loads left first; null when none leads to the end. */
function goDeeper(
  context: PlacingContext,
  left: readonly SplitJob[],
  emptyBy: KitchenTime,
  budget: { placements: number },
): PlacedJob[] | null {
  if (left.length === 0) return []
  for (const job of nextChoices(context, left)) {
    if (budget.placements-- <= 0) return null
    const mark = context.calendar.trail.length
    const placed = placeNext(context, left, job, emptyBy)
    const rest =
      placed &&
      goDeeper(
        context,
        left.filter((other) => other !== job),
        emptyBy,
        budget,
      )
    if (placed && rest) return [placed, ...rest]
    rewind(context.calendar, mark)
  }
  return null
}

function nextChoices(context: PlacingContext, left: readonly SplitJob[]): SplitJob[] {
  const [first] = firstThings(context, left)
  if (first && (isUrgent(context, first) || hasFixedMinute(context.problem, first))) return [first]
  const counts = new Map<string, SplitJob[]>()
  for (const job of left) counts.set(job.preparationId, [...(counts.get(job.preparationId) ?? []), job])
  return [...counts.values()].sort((a, b) => b.length - a.length).flatMap((group) => group.slice(0, 1))
}
