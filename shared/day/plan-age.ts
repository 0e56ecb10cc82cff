import { SavedDayProblem } from '@/shared/forms/saved-plan'
import type { DayProblem } from '@/shared/planning/day-problem'

/**
 * Whether the day is still the one that its plan was made for: hours, kitchen, equipment, people and processes.
 *
 * How many jars are planned is left aside: it may have been chosen while planning.
 */
export function isStillTheSame(planned: DayProblem, now: DayProblem): boolean {
  const facts = (problem: DayProblem) => {
    const read = SavedDayProblem.parse(JSON.parse(JSON.stringify(problem)))
    const canners = read.canners.map(({ usable: _, whyNot: __, ...canner }) => canner)
    const preparations = read.preparations.map(({ jarsWanted: _, spare: __, ...preparation }) => preparation)
    return JSON.stringify({ ...read, canners, preparations })
  }
  return facts(planned) === facts(now)
}
