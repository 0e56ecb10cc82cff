import type { DayProblem, PlanPerson } from '@/shared/planning/day-problem'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Whose hours are shorter than they offered, and which they are now. */
export type ShorterShift = { readonly personId: string; readonly from: KitchenTime; readonly until: KitchenTime }

/** For less than this nobody comes: they are briefed and have their hands washed before they do anything. */
const SHORTEST_SHIFT_MINUTES = 120

/**
 * The day with hours of people cut where shifts overlap, so that the room never holds more than it may; null where it never does, or where
 * somebody would be left with less than two hours.
 *
 * At each minute with too many in the room somebody who is there goes, or somebody who comes then comes when there is room again: whoever loses
 * fewest minutes. Those with no skill of a station are cut first, and those who mind canners last: a load keeps its operator to its end.
 */
export function withShorterShifts(problem: DayProblem): { readonly problem: DayProblem; readonly shifts: readonly ShorterShift[] } | null {
  const { headcountLimit } = problem.window
  if (headcountLimit === null) return null
  let people = problem.people
  for (let over = firstOver(people, headcountLimit); over; over = firstOver(people, headcountLimit)) {
    const next = cutOne(problem, people, over)
    if (!next) return null
    people = people.map((person) => (person.id === next.id ? next : person))
  }
  const shifts = people.filter((person) => !problem.people.includes(person)).map(({ id, from, until }) => ({ personId: id, from, until }))
  return shifts.length > 0 ? { problem: { ...problem, people }, shifts } : null
}

type Over = { readonly from: KitchenTime; readonly to: KitchenTime }

/** The first minutes in a row with more people in the room than it may hold. */
function firstOver(people: readonly PlanPerson[], limit: number): Over | null {
  const count = (at: KitchenTime) => people.filter(({ from, until }) => from <= at && at < until).length
  const moments = [...new Set(people.flatMap(({ from, until }) => [from, until]))].sort((a, b) => a - b)
  const from = moments.find((at) => count(at) > limit)
  return from === undefined ? null : { from, to: moments.find((at) => at > from && count(at) <= limit) ?? from }
}

/** What a minute weighs: of somebody who minds canners, of somebody with a skill of the kettles and tables, of anybody else. */
const WEIGHTS = { operator: 10, station: 3, other: 1 } as const

/** Somebody with their hours cut so that they are not there at `over.from`, at the least loss; null when nobody can go. */
function cutOne(problem: DayProblem, people: readonly PlanPerson[], over: Over): PlanPerson | null {
  const cuts = people
    .filter(({ from, until }) => from <= over.from && over.from < until)
    .flatMap((person) => [
      { person, next: { ...person, until: over.from }, lost: person.until - over.from },
      ...(person.from === over.from ? [{ person, next: { ...person, from: over.to }, lost: over.to - person.from }] : []),
    ])
    .filter(({ next }) => next.until - next.from >= SHORTEST_SHIFT_MINUTES)
  const cost = ({ person, lost }: (typeof cuts)[number]) => lost * weightOf(problem, person)
  return cuts.sort((a, b) => cost(a) - cost(b))[0]?.next ?? null
}

function weightOf({ minding, preparations }: DayProblem, { skills, ageClass }: PlanPerson): number {
  if (ageClass === 'adult' && minding.some(({ skill }) => skills.includes(skill))) return WEIGHTS.operator
  const atStations = preparations.flatMap(({ prep, cook, fill }) => [...prep.skills, ...cook.skills, ...fill.skills])
  return atStations.some((skill) => skills.includes(skill)) ? WEIGHTS.station : WEIGHTS.other
}
