import { METHODS, type Method } from '@/shared/kitchen/methods'
import type { DayProblem } from '@/shared/planning/day-problem'
import { loadMinutesOf } from '@/shared/planning/finish-bound'
import { ORDER_RULES, swapTwo } from '@/shared/planning/order-rules'
import type { CrowdRule } from '@/shared/planning/placing-context'
import type { SplitJob } from '@/shared/planning/split-demand'
import { type Manner, type OrderSearch, type Timetable, timeUntilStuck } from '@/shared/planning/time-in-order'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** From so many jobs on, hands, burners and operators are short together, and one timetable costs as much as a whole search of an evening. */
const LARGE_DAY_JOBS = 60

/** Timetables tried for a large day until one is found. */
const MOST_TIMETABLES = 18

/** Fillings that all of them may try together, for each job. */
const MOST_FILLINGS_PER_JOB = 200

/** Rules tried for an earlier finish once a timetable is found; only exchanges go on, where somebody watches. */
const TIMETABLES_AFTER_FOUND = 3

/** More than the loads of any method take: puts a method before all others. */
const A_WHOLE_DAY_OF_MINUTES = 1e6

/** What came far and got stuck is tried again with the load that fitted nowhere placed earlier, so many times. */
const REPAIRS = 3

const MANNERS: readonly Manner[] = [
  { operators: 'one-minds-all', fill: 'just-in-time' },
  { operators: 'one-minds-all', fill: 'in-between' },
  { operators: 'one-minds-all', fill: 'ahead' },
]

/** How far ahead produce is prepared, the nearer first. */
export const CROWD_RULES: readonly CrowdRule[] = [{ prepAheadMinutes: 120 }, { prepAheadMinutes: 240 }]

const RULES = ['most left first', 'take turns', 'longest first'] as const

/** Is the day searched by `searchLargeDay`? */
export const isLargeDay = ({ jobs }: Pick<OrderSearch, 'jobs'>): boolean => jobs.length >= LARGE_DAY_JOBS

/**
 * A timetable of a day of many loads over several methods, or null where none was found.
 *
 * The method whose canners hold their operators fast goes first, then that with fewest minutes to place, so that the many loads left flow
 * round the few that cannot give way. What fits nowhere is placed earlier the next time. Steps are counted, never timed; with a watch,
 * loads are exchanged for as long as it says so.
 */
export function searchLargeDay(spent: OrderSearch, bound: KitchenTime): Timetable | null {
  const { problem, jobs, watch } = spent
  const most = watch ? spent.effortInTime : Math.min(spent.effortInTime, MOST_FILLINGS_PER_JOB * jobs.length)
  const search = { ...spent, effort: { left: most } }
  let found: Found | null = null
  let left = MOST_TIMETABLES
  const goesOn = () => search.effort.left > 0 && watch?.goOn() !== false && !(found && found.timetable.finishAt <= bound)
  const attempt = (order: readonly SplitJob[], manner: Manner, rule: string): SplitJob | null => {
    left--
    const timed = timeUntilStuck(search, order, manner, found ? found.timetable.finishAt - 1 : problem.window.cannersEmptyBy, rule)
    if ('stuck' in timed) return timed.stuck
    left = Math.min(left, TIMETABLES_AFTER_FOUND)
    found = { timetable: timed, order, manner }
    watch?.better(timed)
    return null
  }
  for (const [rule, manner] of RULES_AND_MANNERS) {
    let order = heldFastFirst(problem, ORDER_RULES[rule]?.(problem, jobs) ?? jobs)
    for (let repair = 0; repair <= REPAIRS && left > 0 && goesOn(); repair++) {
      const stuck = attempt(order, manner, rule)
      if (!stuck || found) break
      order = placedEarlier(order, stuck)
    }
  }
  for (let step = watch?.seed ?? 0, last = step + jobs.length ** 2; watch && found && step < last && goesOn(); step++) {
    const { order, manner }: Found = found
    if (attempt(swapTwo(order, step), manner, 'exchange') === null) last = step + jobs.length ** 2
  }
  return (found as Found | null)?.timetable ?? null
}

type Found = { readonly timetable: Timetable; readonly order: readonly SplitJob[]; readonly manner: Manner }

const RULES_AND_MANNERS: readonly (readonly [string, Manner])[] = CROWD_RULES.flatMap((crowd) =>
  RULES.flatMap((rule) => MANNERS.map((manner): readonly [string, Manner] => [rule, { ...manner, crowd }])),
)

/** The same order within each method; methods whose operators do nothing else first, then by their minutes, the fewest first. */
function heldFastFirst(problem: DayProblem, order: readonly SplitJob[]): readonly SplitJob[] {
  const methods = new Map(problem.preparations.map(({ id, method }) => [id, method]))
  const holds = (method: Method | undefined) => problem.minding.some((entry) => entry.method === method && entry.alongside === 'nothing')
  const weights = new Map(
    METHODS.map((method) => {
      const minutes = loadMinutesOf(problem, order, method).reduce((sum, each) => sum + each, 0)
      return [method, holds(method) ? minutes - A_WHOLE_DAY_OF_MINUTES : minutes] as const
    }),
  )
  const weight = ({ preparationId }: SplitJob) => weights.get(methods.get(preparationId) ?? 'boiling-water') ?? 0
  return [...order].sort((a, b) => weight(a) - weight(b))
}

/**
 * The first timetable found that keeps the minutes and people of the plan that stands as far as a finish by `emptyBy` lets it, or null: one
 * manner after the other, and what fits nowhere is placed earlier the next time.
 *
 * @param order - the jobs in the order of that plan
 */
export function keptLargeDay(search: OrderSearch, order: readonly SplitJob[], emptyBy: KitchenTime): Timetable | null {
  for (const manner of MANNERS) {
    let next = order
    for (let repair = 0; repair <= REPAIRS && search.effort.left > 0; repair++) {
      const timed = timeUntilStuck(search, next, { ...manner, crowd: CROWD_RULES[0], keepsMinutes: true }, emptyBy, 'as planned')
      if (!('stuck' in timed)) return timed
      next = placedEarlier(next, timed.stuck)
    }
  }
  return null
}

/** The order with one job moved to half way before its place. */
function placedEarlier(order: readonly SplitJob[], job: SplitJob): readonly SplitJob[] {
  const at = order.indexOf(job)
  const before = Math.floor(at / 2)
  return [...order.slice(0, before), job, ...order.slice(before, at), ...order.slice(at + 1)]
}
