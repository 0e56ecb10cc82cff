import type { WayOut } from '@/shared/planning/day-plan'
import type { DayProblem, PlanBurner, PlanCanner, PlanPerson, PlanPreparation } from '@/shared/planning/day-problem'
import { METHODS } from '@/shared/kitchen/methods'
import { cannerMinutesOfMethod } from '@/shared/planning/finish-bound'
import { type ChangedDay, movedToPressure, moreOperators, otherJars } from '@/shared/planning/other-ways-out'
import { plannedAgain } from '@/shared/planning/plan-again'
import { NO_JAR_BOILING_FROM_MINUTES } from '@/shared/planning/refuse-day'
import { withShorterShifts } from '@/shared/planning/shorter-shifts'
import { jarsToPlan, splitDemand } from '@/shared/planning/split-demand'

type Change = WayOut['change']
type Candidate = { readonly change: Change; readonly problem: DayProblem; readonly cost: number }

/** Ranks of what a change costs the group; a jar lost comes after everything that can be borrowed or begun sooner. */
const COST = {
  method: 0,
  pot: 1,
  shifts: 1.2,
  move: 1.5,
  otherJars: 1.8,
  time: 2,
  person: 3,
  burner: 4,
  canner: 5,
  cannerAndBurner: 6,
  jar: 10,
} as const

const FEWER_STEPS = [1, 2, 3, 4, 6, 8, 12] as const

const EARLIER_STEPS_MINUTES = [15, 30, 45, 60, 90] as const

/**
 * Changes that might make a day fit, each planned again from the start.
 *
 * Where none is enough alone and shifts overfill the room as well, each is tried once more together with shorter shifts. A day whose batches fit
 * into no kettle has nothing to count: of its ways out only those that help are told.
 *
 * Fitting ones come first, and of these the one that costs least: first what costs nothing, then time, a thing or a person, then jars. A longer
 * process time is offered only up to the 10 minutes at which jars need no boiling; none is ever offered shorter than published.
 */
export function findWaysOut(problem: DayProblem): WayOut[] {
  const alone = candidates(problem).map(measure)
  const told = splitDemand(problem).ok ? alone : alone.filter(({ way }) => way.fits)
  return [...told, ...(alone.some(({ way }) => way.fits) ? [] : withShortShiftsBesides(problem))]
    .sort((a, b) => Number(b.way.fits) - Number(a.way.fits) || a.cost - b.cost || (a.way.finishAt ?? 0) - (b.way.finishAt ?? 0))
    .map(({ way }) => way)
}

function withShortShiftsBesides(problem: DayProblem): Measured[] {
  const cut = withShorterShifts(problem)
  if (!cut) return []
  const both = candidates(cut.problem).map(measure)
  return both.filter(({ way }) => way.fits).map(({ way, cost }) => ({ way: { ...way, besides: cut.shifts }, cost: cost + COST.shifts }))
}

type Measured = { readonly way: WayOut; readonly cost: number }

function measure({ change, problem, cost }: Candidate): Measured {
  const planned = plannedAgain(problem)
  if (!planned.ok) {
    const cannerMinutesByMethod = minutesByMethod(problem)
    const cannerMinutes = sumOf(cannerMinutesByMethod)
    return { way: { change, fits: false, stoppedBy: planned.problem, finishAt: null, cannerMinutes, cannerMinutesByMethod }, cost }
  }
  const { finishAt, cannerMinutes, cannerMinutesByMethod } = planned.value
  return { way: { change, fits: true, finishAt, cannerMinutes, cannerMinutesByMethod }, cost }
}

/** Needed and available canner minutes over all methods of a day, planned or not; zeros when the demand cannot be split. */
export const cannerMinutesOfDay = (problem: DayProblem): WayOut['cannerMinutes'] => sumOf(minutesByMethod(problem))

/** The same method by method: what one has too many of does not help another. */
export function minutesByMethod(problem: DayProblem): WayOut['cannerMinutesByMethod'] {
  const split = splitDemand(problem)
  const jobs = split.ok ? split.value.jobs : []
  return METHODS.map((method) => cannerMinutesOfMethod(problem, jobs, method)).filter(({ needed }) => needed > 0)
}

function sumOf(all: WayOut['cannerMinutesByMethod']): WayOut['cannerMinutes'] {
  const sum = (pick: 'needed' | 'available' | 'slack') => all.reduce((total, entry) => total + entry[pick], 0)
  return { needed: sum('needed'), available: sum('available'), slack: sum('slack') }
}

function candidates(problem: DayProblem): Candidate[] {
  return [
    ...jarTreatments(problem),
    ...oneMoreCanner(problem),
    ...earlierStart(problem),
    ...shorterShifts(problem),
    ...oneMoreBurner(problem),
    ...oneMorePerson(problem),
    ...withCost(moreOperators(problem).flatMap(leastThatFits), COST.person),
    ...withCost(movedToPressure(problem).flatMap(leastThatFits), COST.move),
    ...withCost(otherJars(problem), COST.otherJars),
    ...fewerBatches(problem),
    ...droppedPreparations(problem),
  ]
}

const withCost = (changed: readonly ChangedDay[], cost: number): Candidate[] => changed.map((entry) => ({ ...entry, cost }))

/** Of steps that go further and further, the first that fits; the last, measured, when none does. */
function leastThatFits<Step extends { readonly problem: DayProblem }>(steps: readonly Step[]): Step[] {
  const found = steps.find((step) => plannedAgain(step.problem).ok) ?? steps.at(-1)
  return found ? [found] : []
}

const withPreparations = (problem: DayProblem, change: (preparation: PlanPreparation) => PlanPreparation): DayProblem => ({
  ...problem,
  preparations: problem.preparations.map(change),
})

function jarTreatments(problem: DayProblem): Candidate[] {
  const boiled = problem.preparations.filter((entry) => entry.jarTreatment !== 'washed-hot' || entry.process.sterilise)
  if (boiled.length === 0) return []
  const preparationIds = boiled.map((entry) => entry.id)
  const washed = withPreparations(problem, (entry) => (preparationIds.includes(entry.id) ? washedHot(entry) : entry))
  const short = boiled.filter((entry) => entry.process.minutes < NO_JAR_BOILING_FROM_MINUTES).map((entry) => entry.id)
  const inPot = withPreparations(problem, (entry) => (preparationIds.includes(entry.id) ? boiledInPot(entry) : entry))
  const ways: Candidate[] = [
    { change: { kind: 'jars-washed-hot', preparationIds, minutes: NO_JAR_BOILING_FROM_MINUTES }, problem: washed, cost: COST.method },
  ]
  if (short.length > 0 && problem.kettles.some((kettle) => kettle.use === 'jars'))
    ways.push({ change: { kind: 'jars-boiled-in-pot', preparationIds: short }, problem: inPot, cost: COST.pot })
  return ways
}

/** Jars processed long enough are washed hot; the others boil in a pot, so that the canners stay free. */
const boiledInPot = (preparation: PlanPreparation): PlanPreparation =>
  preparation.process.minutes < NO_JAR_BOILING_FROM_MINUTES ? { ...preparation, jarTreatment: 'boiled-in-pot' } : washedHot(preparation)

function washedHot(preparation: PlanPreparation): PlanPreparation {
  const { process } = preparation
  const minutes = Math.max(process.minutes, NO_JAR_BOILING_FROM_MINUTES)
  const chosenBecause =
    minutes > process.publishedMinutes ? 'Jars processed 10 minutes or more need no boiling before they are filled.' : process.chosenBecause
  return { ...preparation, jarTreatment: 'washed-hot', process: { ...process, minutes, sterilise: false, chosenBecause } }
}

/** One more of the canners that are there, or one that may not be used now; where no burner is left for it, with one of its own. */
function oneMoreCanner(problem: DayProblem): Candidate[] {
  return METHODS.flatMap((method) => {
    if (!problem.preparations.some((entry) => entry.method === method && jarsToPlan(entry) > 0)) return []
    const idle = problem.canners.find((canner) => canner.method === method && !canner.usable)
    const like = problem.canners.find((canner) => canner.method === method && canner.usable)
    const canners = withOneMore(problem.canners, idle, like)
    if (!canners) return []
    const alone: Candidate = { change: { kind: 'one-more-canner', method }, problem: { ...problem, canners }, cost: COST.canner }
    const burners = [...problem.burners, EXTRA_BURNER]
    const change = { kind: 'one-more-canner', method, withBurner: true } as const
    const both: Candidate = { change, problem: { ...problem, canners, burners }, cost: COST.cannerAndBurner }
    return plannedAgain(alone.problem).ok ? [alone] : [alone, both]
  })
}

/** The canners with one more of that kind: one that stands unused, else another like one in use; null when there is neither. */
export function withOneMore(
  canners: readonly PlanCanner[],
  idle: PlanCanner | undefined,
  like: PlanCanner | undefined,
): readonly PlanCanner[] | null {
  if (idle) return canners.map((canner) => (canner === idle ? { ...canner, usable: true, whyNot: null } : canner))
  return like ? [...canners, { ...like, id: `${like.id} and one more`, label: 'One more canner' }] : null
}

/** The least of a few steps that fits; the largest step, measured, when none does. */
function earlierStart(problem: DayProblem): Candidate[] {
  const steps = EARLIER_STEPS_MINUTES.map((minutes) => ({ minutes, problem: startedEarlier(problem, minutes) }))
  return leastThatFits(steps).map((found) => ({
    change: { kind: 'start-earlier', minutes: found.minutes },
    problem: found.problem,
    cost: COST.time,
  }))
}

/** The day with doors, arrival and first load so many minutes earlier; whoever comes at the beginning comes earlier too. */
export function startedEarlier(problem: DayProblem, minutes: number): DayProblem {
  const { window } = problem
  const moved = {
    accessAt: window.accessAt - minutes,
    peopleArriveAt: window.peopleArriveAt - minutes,
    firstLoadAt: window.firstLoadAt - minutes,
  }
  const people = problem.people.map((person) =>
    person.from <= window.peopleArriveAt ? { ...person, from: person.from - minutes } : person,
  )
  return { ...problem, window: { ...window, ...moved }, people }
}

function shorterShifts(problem: DayProblem): Candidate[] {
  const cut = withShorterShifts(problem)
  return cut ? [{ change: { kind: 'shorter-shifts', shifts: cut.shifts }, problem: cut.problem, cost: COST.shifts }] : []
}

const EXTRA_BURNER: PlanBurner = {
  id: 'one-more-burner',
  label: 'One more burner',
  kind: 'outdoor-gas',
  btuPerHour: 12_000,
  watts: null,
  circuit: null,
}

const oneMoreBurner = (problem: DayProblem): Candidate[] => [
  { change: { kind: 'one-more-burner' }, problem: { ...problem, burners: [...problem.burners, EXTRA_BURNER] }, cost: COST.burner },
]

function oneMorePerson(problem: DayProblem): Candidate[] {
  const wanted = problem.preparations.filter((entry) => jarsToPlan(entry) > 0)
  const stages = wanted.flatMap((entry) => [entry.prep, entry.cook, entry.fill, entry.wash].flatMap((work) => work.skills))
  const operates = problem.minding
    .filter((entry) => wanted.some((preparation) => preparation.method === entry.method))
    .map((entry) => entry.skill)
  const skills = [...new Set([...operates, ...stages])]
  const extra: PlanPerson = {
    id: 'one-more-person',
    name: 'One more person',
    householdId: null,
    skills,
    ageClass: 'adult',
    limits: [],
    allergies: [],
    languages: [...new Set(problem.people.flatMap((person) => person.languages))],
    from: problem.window.peopleArriveAt,
    until: problem.window.hardEnd,
  }
  return [{ change: { kind: 'one-more-person', skills }, problem: { ...problem, people: [...problem.people, extra] }, cost: COST.person }]
}

/** For each preparation, the fewest batches of a few steps that make the day fit when taken away, while at least one is left. */
function fewerBatches(problem: DayProblem): Candidate[] {
  return problem.preparations.flatMap((preparation) => {
    const typical = preparation.batchYield.typical
    const most = Math.ceil(jarsToPlan(preparation) / typical) - 1
    const fewer = FEWER_STEPS.filter((batches) => batches <= most).map((batches) => withFewer(problem, preparation, batches))
    const found = fewer.find((candidate) => plannedAgain(candidate.problem).ok)
    return found ? [found] : []
  })
}

function withFewer(problem: DayProblem, preparation: PlanPreparation, batches: number): Candidate {
  const typical = preparation.batchYield.typical
  const left = (Math.ceil(jarsToPlan(preparation) / typical) - batches) * typical
  const jars = Math.max(0, preparation.jarsWanted - left)
  const reduced = withPreparations(problem, (entry) =>
    entry.id === preparation.id ? { ...entry, jarsWanted: left, spare: { kind: 'jars', jars: 0 } } : entry,
  )
  return { change: { kind: 'fewer-batches', preparationId: preparation.id, batches, jars }, problem: reduced, cost: COST.jar + jars }
}

function droppedPreparations(problem: DayProblem): Candidate[] {
  const wanted = problem.preparations.filter((entry) => jarsToPlan(entry) > 0)
  if (wanted.length < 2) return []
  return wanted.map((preparation) => ({
    change: { kind: 'drop-preparation', preparationId: preparation.id },
    problem: { ...problem, preparations: problem.preparations.filter((entry) => entry.id !== preparation.id) },
    cost: COST.jar + preparation.jarsWanted + 1,
  }))
}
