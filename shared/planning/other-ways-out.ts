import { JAR_MILLILITRES } from '@/shared/kitchen/jar-sizes'
import type { Method } from '@/shared/kitchen/methods'
import type { WayOut } from '@/shared/planning/day-plan'
import type { DayProblem, PlanAlternative, PlanCanner, PlanPerson, PlanPreparation } from '@/shared/planning/day-problem'
import { spareByCanner } from '@/shared/planning/canner-spare'
import { operatorHoursStop } from '@/shared/planning/operator-hours'
import { cycleMinutes } from '@/shared/planning/place-job'
import { jarsToPlan, splitDemand } from '@/shared/planning/split-demand'

/** A change with the day that it makes, not planned yet. */
export type ChangedDay = { readonly change: WayOut['change']; readonly problem: DayProblem }

/**
 * Acid food moved to pressure canners that would stand idle, load by load, as long as whole pressure cycles fit into their idle minutes.
 *
 * Only where a published pressure process for that food, pack and jar is held for the canner's gauge. The last of the list moves the most.
 */
export function movedToPressure(problem: DayProblem): ChangedDay[][] {
  return problem.preparations
    .filter((preparation) => preparation.method !== 'pressure' && jarsToPlan(preparation) > 0)
    .map((preparation) => {
      const ways = (preparation.alternatives ?? []).filter((way) => way.method === 'pressure' && way.jarSize === preparation.jarSize)
      return movesOf(problem, preparation, roomFor(problem, ways))
    })
    .filter((moves) => moves.length > 0)
}

type Room = { readonly canner: PlanCanner; readonly way: PlanAlternative; readonly loads: number }

/** The way with most room for it: the canners of its gauge, and how many whole loads their idle minutes take. */
function roomFor(problem: DayProblem, ways: readonly PlanAlternative[]): Room[] {
  const spare = spareByCanner(problem, 'pressure')
  return ways
    .flatMap((way) =>
      problem.canners
        .filter(
          ({ usable, method, gauge, capacity }) =>
            usable && method === 'pressure' && gauge === way.gauge && (capacity[way.jarSize] ?? 0) > 0,
        )
        .map((canner) => ({ canner, way, loads: Math.floor((spare.get(canner.id) ?? 0) / cycleMinutes(way)) })),
    )
    .filter(({ loads }) => loads > 0)
    .sort((a, b) => b.loads - a.loads || a.canner.id.localeCompare(b.canner.id))
}

function movesOf(problem: DayProblem, preparation: PlanPreparation, rooms: readonly Room[]): ChangedDay[] {
  const [first] = rooms
  if (!first) return []
  const open = rooms.filter(({ way }) => way === first.way)
  const onlyCannerIds = open.map(({ canner }) => canner.id)
  const room = open.reduce((sum, { loads }) => sum + loads, 0)
  const perLoad =
    Math.max(1, Math.floor((first.canner.capacity[preparation.jarSize] ?? 0) / first.way.batchYield.high)) * first.way.batchYield.typical
  const most = Math.min(room, Math.floor(jarsToPlan(preparation) / perLoad))
  return Array.from({ length: most }, (_, index) => {
    const loads = index + 1
    const jars = loads * perLoad
    const change = { kind: 'move-to-pressure' as const, preparationId: preparation.id, loads, jars, cannerIds: onlyCannerIds }
    return { change, problem: withMoved(problem, preparation, { ...first.way, onlyCannerIds }, jars) }
  })
}

/** The preparation with so many jars fewer, and beside it the same food put up the other way. */
function withMoved(
  problem: DayProblem,
  preparation: PlanPreparation,
  way: PlanAlternative & { readonly onlyCannerIds: readonly string[] },
  jars: number,
): DayProblem {
  const spare = { kind: 'jars', jars: 0 } as const
  const { gauge: _, ...asPlanned } = way
  const moved: PlanPreparation = {
    ...preparation,
    ...asPlanned,
    id: `${preparation.id} under pressure`,
    jarsWanted: jars,
    spare,
    leadSteps: preparation.leadSteps,
  }
  const left: PlanPreparation = { ...preparation, jarsWanted: Math.max(0, jarsToPlan(preparation) - jars), spare }
  return { ...problem, preparations: [...problem.preparations.map((entry) => (entry === preparation ? left : entry)), moved] }
}

/** The same food in other jars that the recipe takes, as many as hold as much. */
export function otherJars(problem: DayProblem): ChangedDay[] {
  return problem.preparations.flatMap((preparation) =>
    (preparation.alternatives ?? [])
      .filter((way) => jarsToPlan(preparation) > 0 && way.method === preparation.method && way.jarSize !== preparation.jarSize)
      .map((way) => {
        const jars = Math.ceil((jarsToPlan(preparation) * JAR_MILLILITRES[preparation.jarSize]) / JAR_MILLILITRES[way.jarSize] - 1e-9)
        const change = { kind: 'other-jars' as const, preparationId: preparation.id, jarSize: way.jarSize, jars }
        const { gauge: _, ...asPlanned } = way
        const changed: PlanPreparation = { ...preparation, ...asPlanned, jarsWanted: jars, spare: { kind: 'jars', jars: 0 } }
        return {
          change,
          problem: { ...problem, preparations: problem.preparations.map((entry) => (entry === preparation ? changed : entry)) },
        }
      }),
  )
}

/** More people than this who mind one method's canners are not proposed. */
const MOST_MORE_OPERATORS = 5

/**
 * For each skill that canners ask for, one more person who minds them and does nothing else; where counting alone says that one is too few, the fewest who
 * are enough by counting and, as a second step, one more than that.
 */
export function moreOperators(problem: DayProblem): ChangedDay[][] {
  const split = splitDemand(problem)
  const jobs = split.ok ? split.value.jobs : []
  const step = (method: Method, skill: string, people: number): ChangedDay => ({
    change: { kind: 'one-more-operator', method, ...(people > 1 ? { people } : {}) },
    problem: { ...problem, people: [...problem.people, ...operatorsMore(problem, skill, people)] },
  })
  return problem.minding
    .filter(({ method }) => problem.preparations.some((entry) => entry.method === method && jarsToPlan(entry) > 0))
    .filter(({ skill }, index, all) => all.findIndex((entry) => entry.skill === skill) === index)
    .map(({ method, skill }) => {
      const steps = Array.from({ length: MOST_MORE_OPERATORS }, (_, index) => step(method, skill, index + 1))
      const enough = steps.findIndex((each) => operatorHoursStop(each.problem, jobs) === null)
      return enough < 1 ? steps.slice(0, 1) : steps.slice(enough, enough + 2)
    })
}

const operatorsMore = (problem: DayProblem, skill: string, people: number): PlanPerson[] =>
  Array.from({ length: people }, (_, index) => ({
    ...{ id: index === 0 ? 'one-more-operator' : `one-more-operator-${index + 1}`, name: 'One more operator', householdId: null },
    ...{ skills: [skill], ageClass: 'adult' as const, limits: [], allergies: [] },
    languages: [...new Set(problem.people.flatMap((person) => person.languages))],
    ...{ from: problem.window.peopleArriveAt, until: problem.window.hardEnd },
  }))
