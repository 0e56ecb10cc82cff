import type { DayProblem } from '@/shared/planning/day-problem'
import { plannedAgain } from '@/shared/planning/plan-again'
import { randomFrom, shuffle } from '@/shared/scheduling/random'

/** The share of people that a group plans to miss: between the 10 and 20 % usual for people who hold shares (common practice). */
export const USUAL_ABSENCE = 0.15

/** Draws of absent people that are planned where more than one is missing. */
const DRAWS = 8

/** Whether the day still fits when people stay away. */
export type AbsenceMargin = {
  /** How many adults stay away at once. */
  readonly away: number
  /** Ways to lose so many that were planned: each adult in turn where one stays away, else draws by lot. */
  readonly tried: number
  /** Of these, how many still fit. */
  readonly fits: number
  /** Without whom it did not fit, where one stays away; the people of every draw that failed, where more do. */
  readonly missed: readonly string[]
}

/**
 * Plans the day with fewer adults and says how often it still fits.
 *
 * @param share - of the adults, rounded to whole people and at least one
 * @param seed - for the draws; the same seed gives the same answer on every machine
 */
export function absenceMargin(problem: DayProblem, seed: number, share = USUAL_ABSENCE): AbsenceMargin {
  const adults = problem.people.filter(({ ageClass }) => ageClass === 'adult').map(({ id }) => id)
  const away = Math.min(adults.length, Math.max(1, Math.round(adults.length * share)))
  const random = randomFrom(seed)
  const groups = away === 1 ? adults.map((id) => [id]) : Array.from({ length: DRAWS }, () => shuffle(random, [...adults]).slice(0, away))
  const failed = groups.filter((group) => !plannedAgain(withoutPeople(problem, group)).ok)
  const missed = adults.filter(
    (id) => failed.length > 0 && (away === 1 ? failed.some(([only]) => only === id) : failed.every((group) => group.includes(id))),
  )
  return { away, tried: groups.length, fits: groups.length - failed.length, missed }
}

const withoutPeople = (problem: DayProblem, ids: readonly string[]): DayProblem => ({
  ...problem,
  people: problem.people.filter(({ id }) => !ids.includes(id)),
})
