import type { DayProblem } from '@/shared/planning/day-problem'

/**
 * Whether the day is still the one that its plan was made for: hours, kitchen, equipment, people and processes.
 *
 * How many jars are planned is left aside: it may have been chosen while planning. The order of keys does not matter, so a problem that was
 * stored in between compares like a fresh one.
 */
export const isStillTheSame = (planned: DayProblem, now: DayProblem): boolean => facts(planned) === facts(now)

function facts(problem: DayProblem): string {
  const canners = problem.canners.map(({ usable: _, whyNot: __, ...canner }) => canner)
  const preparations = problem.preparations.map(({ jarsWanted: _, spare: __, ...preparation }) => preparation)
  return JSON.stringify({ ...problem, canners, preparations }, inKeyOrder)
}

const inKeyOrder = (_: string, value: unknown): unknown =>
  value !== null && typeof value === 'object' && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
    : value
