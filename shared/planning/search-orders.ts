import { rewind } from '@/shared/planning/day-calendar'
import { firstThings, isUrgent } from '@/shared/planning/first-things'
import { hasFixedMinute } from '@/shared/planning/locks'
import { ORDER_RULES, swapTwo } from '@/shared/planning/order-rules'
import type { PlacedJob } from '@/shared/planning/place-job'
import type { FillRule, PlacingContext } from '@/shared/planning/placing-context'
import { CROWD_RULES, isLargeDay, searchLargeDay } from '@/shared/planning/search-large-day'
import type { SplitJob } from '@/shared/planning/split-demand'
import {
  MANNERS,
  type Manner,
  type OrderSearch,
  placeNext,
  startContext,
  timeInOrder,
  type Timetable,
  timetableOf,
} from '@/shared/planning/time-in-order'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Timetables tried after the rules of thumb, shared out over the size of the day. */
const TRIES = 240
const TRIES_FOR_JOBS = 4_000

/** Loads placed while looking for a timetable that meets the bound. */
const PLACEMENTS_AT_BOUND = 150

/** Loads placed while looking for one that ends in time at all. */
const PLACEMENTS_IN_TIME = 3000

/**
 * The best timetable found over orders of loads, or null.
 *
 * A large day is searched in its own way. Any other: first a depth-first search for a timetable that ends at the bound, then one timetable for each rule of thumb, then, where none of them
 * fits, a depth-first search for any that ends in time, then exchanges of two loads. Steps are counted, never timed: the same day always gives the same timetable.
 *
 * @param bound - no timetable ends earlier; reaching it ends the search
 */
export function searchOrders(search: OrderSearch, bound: KitchenTime): Timetable | null {
  if (isLargeDay(search)) return searchLargeDay(search, bound)
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

/**
 * Timetables that keep the minutes and people of the plan that stands as far as a finish by `emptyBy` lets them, one for each manner.
 *
 * @param order - the jobs in the order of that plan
 */
export const keepingTimetables = (search: OrderSearch, order: readonly SplitJob[], emptyBy: KitchenTime): Timetable[] =>
  MANNERS.flatMap((manner) => timeInOrder(search, order, { ...manner, keepsMinutes: true }, emptyBy, 'as planned') ?? [])

/** The first of these, in manners that spare hands as on a large day; null where none ends by then. */
export function firstKeeping(search: OrderSearch, emptyBy: KitchenTime): Timetable | null {
  for (const manner of MANNERS) {
    const found = timeInOrder(search, search.jobs, { ...manner, crowd: CROWD_RULES[0], keepsMinutes: true }, emptyBy, 'as planned')
    if (found) return found
  }
  return null
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
