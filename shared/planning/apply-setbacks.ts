import type { DayProblem, PlanPerson } from '@/shared/planning/day-problem'
import type { DaySoFar, Setback } from '@/shared/planning/day-so-far'
import { lockedBatchId } from '@/shared/planning/locks'

/**
 * The day with people's real hours, with canners that are out for good marked so, and without locks on what has begun.
 *
 * People who left keep their place in the list with the hours they were there, so that what they did still has a name.
 */
export function applySetbacks(problem: DayProblem, soFar: DaySoFar): DayProblem {
  const begun = new Set(soFar.batches.filter(({ state }) => state !== 'planned').map(({ batchId }) => batchId))
  const outNow = soFar.setbacks.filter((each) => each.kind === 'canner-out' && each.until === null && each.from <= soFar.now)
  const inCanner = new Set(soFar.loads.filter(({ state }) => state === 'in-canner').map(({ cannerId }) => cannerId))
  return {
    ...problem,
    people: problem.people.map((person) => withHours(person, soFar.setbacks)),
    canners: problem.canners.map((canner) =>
      outNow.some((each) => each.kind === 'canner-out' && each.cannerId === canner.id) && !inCanner.has(canner.id)
        ? { ...canner, usable: false, whyNot: 'out of use on the day' }
        : canner,
    ),
    ...(problem.locks
      ? {
          locks: problem.locks.filter(
            (lock) => !begun.has(lockedBatchId(lock)) || (lock.task === 'load' && !isLoaded(soFar, lockedBatchId(lock))),
          ),
        }
      : {}),
  }
}

const isLoaded = ({ loads }: DaySoFar, batchId: string) =>
  loads.some(({ state, jars }) => state !== 'planned' && jars.some((part) => part.batchId === batchId))

function withHours(person: PlanPerson, setbacks: readonly Setback[]): PlanPerson {
  let { from, until } = person
  for (const each of setbacks) {
    if (each.kind === 'person-late' && each.personId === person.id) from = Math.max(from, each.at)
    if (each.kind === 'person-away' && each.personId === person.id) until = Math.min(until, each.from)
  }
  return { ...person, from: Math.min(from, until), until }
}
