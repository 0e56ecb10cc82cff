import type { DayProblem } from '@/shared/planning/day-problem'
import { cannerMinutesOf } from '@/shared/planning/place-job'
import type { SplitJob } from '@/shared/planning/split-demand'

type Arrange = (problem: DayProblem, jobs: readonly SplitJob[]) => readonly SplitJob[]

/** Rules of thumb for the order in which loads are given their time; each gives one timetable. Ties keep the order of the split. */
export const ORDER_RULES: Readonly<Record<string, Arrange>> = {
  'take turns': (_, jobs) => takeTurns(byPreparation(jobs)),
  'most left first': (problem, jobs) => mostLeftFirst(problem, byPreparation(jobs)),
  'longest first': (problem, jobs) => byMinutes(problem, jobs, -1),
  'shortest first': (problem, jobs) => byMinutes(problem, jobs, 1),
  'quick start, then longest': (problem, jobs) => quickStart(byMinutes(problem, jobs, 1), byMinutes(problem, jobs, -1)),
  'as listed': (_, jobs) => jobs,
}

/**
 * The order with two unlike loads exchanged; `step` counts through far and near pairs in a fixed, well mixed order.
 *
 * @param step - 0, 1, 2, …; the same step and order always give the same answer
 */
export function swapTwo(order: readonly SplitJob[], step: number): readonly SplitJob[] {
  const size = order.length
  if (size < 2) return order
  const first = (step * 7 + Math.floor(step / size) * 3) % size
  for (let shift = 0; shift < size; shift++) {
    const second = (first + 1 + ((step + shift) % (size - 1))) % size
    const [a, b] = [order[first], order[second]]
    if (a && b && a.preparationId !== b.preparationId) return order.map((job, index) => (index === first ? b : index === second ? a : job))
  }
  return order
}

function byPreparation(jobs: readonly SplitJob[]): SplitJob[][] {
  const groups = new Map<string, SplitJob[]>()
  for (const job of jobs) groups.set(job.preparationId, [...(groups.get(job.preparationId) ?? []), job])
  return [...groups.values()]
}

function takeTurns(groups: readonly SplitJob[][]): SplitJob[] {
  const longest = Math.max(0, ...groups.map((group) => group.length))
  return Array.from({ length: longest }, (_, turn) => groups.flatMap((group) => group.slice(turn, turn + 1))).flat()
}

function mostLeftFirst(problem: DayProblem, groups: readonly SplitJob[][]): SplitJob[] {
  const left = groups.map((group) => ({ group, next: 0, minutes: minutesOf(problem, group[0]) }))
  const order: SplitJob[] = []
  const weight = (entry: (typeof left)[number]) => (entry.group.length - entry.next) * entry.minutes
  for (;;) {
    const open = left.filter((entry) => entry.next < entry.group.length)
    const most = open.reduce<(typeof left)[number] | null>((best, entry) => (best && weight(best) >= weight(entry) ? best : entry), null)
    const job = most?.group[most.next]
    if (!most || !job) return order
    order.push(job)
    most.next++
  }
}

const byMinutes = (problem: DayProblem, jobs: readonly SplitJob[], sign: 1 | -1): SplitJob[] =>
  [...jobs].sort((a, b) => sign * (minutesOf(problem, a) - minutesOf(problem, b)))

const quickStart = (quick: readonly SplitJob[], slow: readonly SplitJob[]): SplitJob[] => {
  const first = quick.slice(0, 1)
  return [...first, ...slow.filter((job) => !first.includes(job))]
}

function minutesOf(problem: DayProblem, job: SplitJob | undefined): number {
  const preparation = problem.preparations.find((entry) => entry.id === job?.preparationId)
  return preparation ? cannerMinutesOf(preparation) : 0
}
