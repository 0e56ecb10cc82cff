import { nothingBlocked } from '@/shared/planning/placing-context'
import { isUrgent } from '@/shared/planning/first-things'
import { hasFixedMinute, locksOnLoad } from '@/shared/planning/locks'
import type { JobLeft } from '@/shared/planning/jobs-left'
import { cannerMinutesOf, cycleMinutes } from '@/shared/planning/place-job'
import type { OrderSearch, Timetable } from '@/shared/planning/time-in-order'
import { keptLargeDay } from '@/shared/planning/search-large-day'
import { firstKeeping, keepingTimetables, searchOrders } from '@/shared/planning/search-orders'
import type { SplitJob } from '@/shared/planning/split-demand'
import type { StandOfDay } from '@/shared/planning/stand-of-day'
import type { AsPlanned } from '@/shared/planning/under-way'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Fillings tried for each load left; a running day has fewer loads left than it had, and the answer is wanted at once. */
const FILLINGS_TRIED_PER_JOB = 200

/** With more jobs left, an end as early as planned is good enough: what is wanted is an answer at once that moves few people. */
const FEW_JOBS = 16

/** Fillings tried for each of many jobs to lay the plan that stands down again: nearly each fits at once, or it is not to be had. */
const FILLINGS_AS_PLANNED = 12

/** Starts within so many minutes from now are near: people are on their way to them. MODEL of the planner, section 8. */
export const NEAR_MINUTES = 30

/** What a search from now comes to. */
export type SearchedAgain = {
  readonly timetable: Timetable
  /** Jars that wait, or are in the kettle, and reach no canner in time. */
  readonly cannotWait: readonly JobLeft[]
  /** Jobs not begun for which there is no time. */
  readonly noTime: readonly JobLeft[]
}

/**
 * The best timetable for what is left: jars that wait first, then everything else that fits, then least finish, fewest people moved, least
 * shift of near starts. Null when not even the loads without a lock fit.
 *
 * @param plannedFinish - when the last canner is empty in the plan that stands
 */
export function searchAgain(stand: StandOfDay, left: readonly JobLeft[], plannedFinish: KitchenTime): SearchedAgain | null {
  const order = inPlannedOrder(left, stand.underWay.asPlanned)
  const urgent = order.filter(({ job }) => isUrgent(stand, job))
  const { kept, lost } = whatCanWait(stand, urgent)
  const others = order.filter((each) => !urgent.includes(each))
  const fitting = dropUntilItFits(withoutLost(stand, lost), kept, others, plannedFinish)
  return fitting && { ...fitting, cannotWait: lost }
}

/** A kettle whose food reaches no canner is emptied and washed when its cooking ends. */
function withoutLost(stand: StandOfDay, lost: readonly JobLeft[]): StandOfDay {
  const things = lost.flatMap(({ job }) =>
    job.batches.flatMap(({ id }) => {
      const begun = stand.underWay.batches.get(id)
      if (begun?.stage !== 'cooking') return []
      const { kettle, cookEnd } = begun.placed
      return [{ id: kettle.id, start: cookEnd, end: cookEnd + kettle.washMinutes }]
    }),
  )
  return { ...stand, underWay: { ...stand.underWay, things: [...stand.underWay.things, ...things] } }
}

const inPlannedOrder = (left: readonly JobLeft[], { loads }: AsPlanned): JobLeft[] => {
  const at = ({ job }: JobLeft) => Math.min(...job.batches.map(({ id }) => loads.get(id)?.loadAt ?? Number.POSITIVE_INFINITY))
  return [...left].sort((a, b) => at(a) - at(b) || (a.loadCodes[0] ?? '').localeCompare(b.loadCodes[0] ?? ''))
}

/** Takes the waiting jobs one after the other; a job with which those taken before cannot all be in time is lost. */
function whatCanWait(stand: StandOfDay, urgent: readonly JobLeft[]): { kept: JobLeft[]; lost: JobLeft[] } {
  const kept: JobLeft[] = []
  const lost: JobLeft[] = []
  if (urgent.length > 0 && fits(stand, urgent)) return { kept: [...urgent], lost }
  for (const each of urgent) (fits(stand, [...kept, each]) ? kept : lost).push(each)
  return { kept, lost }
}

/** Leaves out as few jars as it finds: the last load that makes room enough, else the longest and so on; then takes back what still fits. */
function dropUntilItFits(
  stand: StandOfDay,
  kept: readonly JobLeft[],
  others: readonly JobLeft[],
  plannedFinish: KitchenTime,
): Pick<SearchedAgain, 'timetable' | 'noTime'> | null {
  const whole = best(stand, [...kept, ...others], plannedFinish)
  if (whole) return { timetable: whole, noTime: [] }
  // What nothing may be left out for: where that alone does not fit, no leaving out helps, and nothing is tried.
  const fixed = others.filter(({ job }) => isLocked(stand, job))
  if (fixed.length > 0 && !fits(stand, [...kept, ...fixed])) return null
  let left = others
  const dropped: JobLeft[] = []
  while (!fits(stand, [...kept, ...left])) {
    const mayGo = left.filter(({ job }) => !isLocked(stand, job)).sort((a, b) => jarsOf(a) - jarsOf(b) || left.indexOf(b) - left.indexOf(a))
    const one = mayGo.find((candidate) => fits(stand, [...kept, ...without(left, candidate)])) ?? longest(stand, mayGo)
    if (!one) return null
    dropped.push(one)
    left = without(left, one)
  }
  const noTime: JobLeft[] = []
  for (const each of dropped) {
    const more = inPlannedOrder([...left, each], stand.underWay.asPlanned)
    if (dropped.length > 1 && fits(stand, [...kept, ...more])) left = more
    else noTime.push(each)
  }
  const timetable = best(stand, [...kept, ...left], plannedFinish)
  return timetable && { timetable, noTime }
}

const without = (jobs: readonly JobLeft[], one: JobLeft) => jobs.filter((each) => each !== one)

const isLocked = ({ problem }: StandOfDay, job: SplitJob) => hasFixedMinute(problem, job) || locksOnLoad(problem, job).length > 0

const jarsOf = ({ job }: JobLeft) => job.batches.reduce((sum, batch) => sum + batch.jars.typical, 0)

/** Where no single load makes room enough, the one that takes most canner time goes, the last of them first. */
function longest({ problem }: StandOfDay, left: readonly JobLeft[]): JobLeft | undefined {
  const minutes = ({ job }: JobLeft) => {
    const preparation = problem.preparations.find(({ id }) => id === job.preparationId)
    return preparation ? cannerMinutesOf(preparation) * job.loads.length : 0
  }
  return [...left].reverse().sort((a, b) => minutes(b) - minutes(a))[0]
}

/** The search for these jobs; null where their canner minutes alone do not fit. */
function searchFor(stand: StandOfDay, order: readonly JobLeft[]): { search: OrderSearch; bound: KitchenTime } | null {
  const { problem, underWay } = stand
  const jobs = order.map(({ job }) => job)
  const emptyBy = problem.window.cannersEmptyBy
  const bound = earliestFinishFrom(stand, jobs)
  if (jobs.length > 0 && bound > Math.max(emptyBy, underWay.finishAt)) return null
  const effort = { left: FILLINGS_TRIED_PER_JOB * (jobs.length + 4) }
  const canners = underWay.setUp.places.map(({ canner }) => canner)
  const search = { problem, jobs, canners, blocked: nothingBlocked(), effort, effortInTime: effort.left, underWay }
  return { search, bound: Math.min(bound, emptyBy) }
}

/** Whether some timetable in the planned order ends in time: asked often, so it looks no further. */
function fits(stand: StandOfDay, order: readonly JobLeft[]): boolean {
  const asked = searchFor(stand, order)
  if (!asked) return false
  const few = { ...asked.search, effort: { left: Math.ceil(asked.search.effort.left / 3) } }
  return keeping(few, few.jobs, stand.problem.window.cannersEmptyBy).length > 0
}

/** Timetables that keep to the plan that stands; of many jobs the first that is found. */
function keeping(search: OrderSearch, order: readonly SplitJob[], emptyBy: KitchenTime): readonly Timetable[] {
  if (order.length <= FEW_JOBS) return keepingTimetables(search, order, emptyBy)
  return [keptLargeDay(search, order, emptyBy)].flatMap((found) => found ?? [])
}

/** Of many jobs the plan that stands, laid down again in the first manner that ends no later than it; where nothing is in the way one does. */
function asEarlyAsPlanned(search: OrderSearch, plannedFinish: KitchenTime): readonly Timetable[] {
  const few = { ...search, effort: { left: search.jobs.length * FILLINGS_AS_PLANNED } }
  return [firstKeeping(few, plannedFinish)].flatMap((found) => found ?? [])
}

/** The best timetable of these jobs by the three aims in order; null when they do not all fit. */
function best(stand: StandOfDay, order: readonly JobLeft[], plannedFinish: KitchenTime): Timetable | null {
  const asked = searchFor(stand, order)
  if (!asked) return null
  const { search, bound } = asked
  const emptyBy = stand.problem.window.cannersEmptyBy
  const asEarly = order.length > FEW_JOBS ? asEarlyAsPlanned(search, plannedFinish) : []
  const soon = asEarly.length > 0 ? asEarly : keeping(search, search.jobs, emptyBy)
  const soonest = Math.min(...soon.map(({ finishAt }) => finishAt))
  const goodEnough = Math.max(bound, stand.underWay.finishAt, order.length > FEW_JOBS ? plannedFinish : bound)
  const found = soonest <= goodEnough ? null : searchOrders({ ...search, effort: { left: search.effortInTime } }, bound)
  const finishAt = Math.min(soonest, found?.finishAt ?? Number.POSITIVE_INFINITY)
  if (!Number.isFinite(finishAt)) return null
  const sooner = found && found.finishAt < soonest ? found.jobs.map(({ job }) => job) : null
  const again = sooner ? keeping({ ...search, effort: { left: search.effortInTime } }, sooner, finishAt) : []
  const all = [...soon, ...again, ...(found ? [found] : [])].filter((timetable) => timetable.finishAt === finishAt)
  const costs = new Map(all.map((timetable) => [timetable, costOf(stand, timetable)]))
  const cost = (timetable: Timetable) => costs.get(timetable) ?? { moved: 0, shift: 0 }
  return all.sort((a, b) => cost(a).moved - cost(b).moved || cost(a).shift - cost(b).shift)[0] ?? null
}

/** No timetable for these jobs ends before this: each method's canner minutes over the canners it has, from when each is free. */
export function earliestFinishFrom({ problem, underWay }: StandOfDay, jobs: readonly SplitJob[]): KitchenTime {
  const ends = [...new Set(underWay.setUp.places.map(({ canner }) => canner.method))].map((method) => {
    const own = jobs.flatMap((job) => {
      const preparation = problem.preparations.find(({ id }) => id === job.preparationId)
      const minutes = isUrgent({ problem, underWay }, job) ? cycleMinutes : cannerMinutesOf
      return preparation?.method === method ? job.loads.map(() => minutes(preparation)) : []
    })
    const ready = underWay.setUp.places
      .filter(({ canner }) => canner.method === method)
      .map(({ canner, readyAt }) => {
        const held = underWay.things.filter(({ id }) => id === canner.id).map(({ end }) => end)
        return Math.max(readyAt, underWay.now, ...held)
      })
      .sort((a, b) => a - b)
    if (own.length === 0) return Number.NEGATIVE_INFINITY
    return Math.max(
      shareOut(
        own.reduce((sum, minutes) => sum + minutes, 0),
        ready,
      ),
      (ready[0] ?? 0) + Math.max(...own),
    )
  })
  return Math.max(underWay.finishAt, ...ends)
}

/** The minute at which canners that are free from `ready` on have given so many minutes together. */
function shareOut(minutes: number, ready: readonly KitchenTime[]): KitchenTime {
  let sum = 0
  for (const [index, at] of ready.entries()) {
    sum += at
    const end = Math.ceil((minutes + sum) / (index + 1))
    if (end <= (ready[index + 1] ?? Number.POSITIVE_INFINITY)) return end
  }
  return Number.POSITIVE_INFINITY
}

/** How many people have other work than in the plan that stands, and by how many minutes starts in the next half hour move. */
function costOf({ underWay: { asPlanned, now } }: StandOfDay, { jobs }: Timetable): { moved: number; shift: number } {
  const moved = new Set<string>()
  let shift = 0
  const compare = (before: readonly string[], after: readonly string[]) => {
    for (const id of before) if (!after.includes(id)) moved.add(id)
    for (const id of after) if (!before.includes(id)) moved.add(id)
  }
  const near = (before: KitchenTime, after: KitchenTime) => {
    if (before >= now && before <= now + NEAR_MINUTES) shift += Math.abs(after - before)
  }
  for (const { batches, loads } of jobs) {
    for (const placed of batches) {
      for (const kind of ['prep', 'cook', 'fill', 'wash'] as const) {
        const before = asPlanned.slots.get(`${kind}/${placed.batch.id}`)
        if (!before) continue
        compare(before.peopleIds, placed[kind].peopleIds)
        near(before.start, placed[kind].start)
      }
    }
    const [first] = loads
    const before = first && asPlanned.loads.get(first.parts[0]?.batchId ?? '')
    if (!first || !before) continue
    compare([before.operatorId], [first.operatorId])
    compare([before.loaderId], [first.loaderId])
    compare([before.unloaderId], [first.unloaderId])
    near(before.loadAt, first.loadAt)
  }
  return { moved: moved.size, shift }
}
