import type { LanguageHelp, PlannedBatch, PlannedLoad, PlannedTask, PlanShortage, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPerson } from '@/shared/planning/day-problem'
import { kettleWorkOf } from '@/shared/planning/kettle-works'
import { hoursOf } from '@/shared/planning/staffing-demands'

type Plan = { readonly tasks: readonly PlannedTask[]; readonly batches: readonly PlannedBatch[]; readonly loads: readonly PlannedLoad[] }

export type LanguageCover = {
  readonly help: readonly LanguageHelp[]
  readonly gaps: readonly Extract<PlanShortage, { kind: 'language' }>[]
}

/** Stations with a crew: those at the same kind of work at the same time stand together. */
const AT_A_STATION: ReadonlySet<PlanTaskKind> = new Set(['prep', 'cook', 'fill', 'wash', 'label', 'load', 'unload'])

/**
 * Whoever shares no language with the crew at their station gets somebody who speaks with both: one language of theirs and one of the crew, or,
 * for somebody alone at a station, the language that most people there speak. The helper is in the building, on their feet or at other work,
 * and keeps the food's allergens in mind like everybody else. Where nobody can help, it is said.
 */
export function languageCover(problem: DayProblem, plan: Plan): LanguageCover {
  const help: LanguageHelp[] = []
  const alone = new Map<string, string[]>()
  const helped = new Map<string, number>()
  for (const { task, person } of [...notUnderstood(problem, plan)].sort(roomLast(problem))) {
    if (isServedWith(problem, plan, task, person, { help, alone })) continue
    const helper = helperFor(problem, plan, task, person, helped)
    if (!helper) {
      alone.set(person.id, [...(alone.get(person.id) ?? []), task.id])
      continue
    }
    helped.set(helper.id, (helped.get(helper.id) ?? 0) + 1)
    help.push({ taskId: task.id, personId: person.id, helperId: helper.id })
  }
  const gaps = problem.people.flatMap((person) => {
    const taskIds = alone.get(person.id) ?? []
    if (taskIds.length === 0 && hasCompany(problem, person)) return []
    return [{ kind: 'language' as const, personId: person.id, language: person.languages[0] ?? '', taskIds }]
  })
  return { help, gaps }
}

const share = (a: readonly string[], b: readonly string[]): boolean => a.some((language) => b.includes(language))

/** The language that most adults speak; of equals the first by name. */
export function commonLanguage({ people }: Pick<DayProblem, 'people'>): string | null {
  const counts = new Map<string, number>()
  for (const { languages } of people.filter(({ ageClass }) => ageClass === 'adult'))
    for (const language of languages) counts.set(language, (counts.get(language) ?? 0) + 1)
  return [...counts].sort((a, b) => b[1] - a[1] || a[0].localeCompare(b[0]))[0]?.[0] ?? null
}

/** The others at the same kind of work in these minutes. */
function crewOf({ people }: DayProblem, { tasks }: Plan, task: PlannedTask, person: PlanPerson): PlanPerson[] {
  const ids = tasks
    .filter((other) => other.kind === task.kind && other.start < task.end && task.start < other.end)
    .flatMap((other) => other.peopleIds)
  return people.filter(({ id }) => id !== person.id && ids.includes(id))
}

/** The languages that somebody at this work has to understand: the crew's, or the room's for somebody alone. */
function wantedLanguages(problem: DayProblem, plan: Plan, task: PlannedTask, person: PlanPerson): string[] {
  const crew = crewOf(problem, plan, task, person)
  const room = commonLanguage(problem)
  return crew.length > 0 ? crew.flatMap(({ languages }) => languages) : room === null ? [] : [room]
}

function isUnderstood(problem: DayProblem, plan: Plan, task: PlannedTask, person: PlanPerson): boolean {
  const wanted = wantedLanguages(problem, plan, task, person)
  return wanted.length === 0 || share(person.languages, wanted)
}

type AtWork = { readonly task: PlannedTask; readonly person: PlanPerson }

const notUnderstood = (problem: DayProblem, plan: Plan): AtWork[] =>
  plan.tasks
    .filter(({ kind }) => AT_A_STATION.has(kind))
    .flatMap((task) => problem.people.filter(({ id }) => task.peopleIds.includes(id)).map((person) => ({ task, person })))
    .filter(({ task, person }) => !isUnderstood(problem, plan, task, person))

/** Whoever speaks the room's language comes after those who do not: the helper of one often serves both. */
function roomLast(problem: DayProblem): (a: AtWork, b: AtWork) => number {
  const room = commonLanguage(problem)
  const speaks = ({ person }: AtWork) => (room !== null && person.languages.includes(room) ? 1 : 0)
  return (a, b) => speaks(a) - speaks(b)
}

/**
 * Of two who do not understand each other the one who speaks the room's language needs no helper of their own where the other's speaks with both
 * and stays as long, or where it is said that the other has none. The other may be understood by a third who is there for a part of the time.
 */
function isServedWith(
  problem: DayProblem,
  plan: Plan,
  task: PlannedTask,
  person: PlanPerson,
  { help, alone }: { readonly help: readonly LanguageHelp[]; readonly alone: ReadonlyMap<string, readonly string[]> },
): boolean {
  const room = commonLanguage(problem)
  if (room === null || !person.languages.includes(room)) return false
  const here = plan.tasks
    .filter((other) => other.kind === task.kind && other.start < task.end && task.start < other.end)
    .map(({ id }) => id)
  return crewOf(problem, plan, task, person).some((other) => {
    if (other.languages.includes(room)) return false
    if (alone.get(other.id)?.some((id) => here.includes(id))) return true
    return help.some(({ taskId, personId, helperId }) => {
      const helper = problem.people.find(({ id }) => id === helperId)
      return personId === other.id && here.includes(taskId) && helper !== undefined && mayHelp(problem, plan, task, person, helper)
    })
  })
}

function helperFor(
  problem: DayProblem,
  plan: Plan,
  task: PlannedTask,
  person: PlanPerson,
  helped: ReadonlyMap<string, number>,
): PlanPerson | null {
  const may = problem.people.filter((other) => mayHelp(problem, plan, task, person, other))
  const isBusy = (other: PlanPerson) =>
    plan.tasks.some(
      (each) => each.peopleIds.includes(other.id) && each.attention === 'hands-on' && each.start < task.end && task.start < each.end,
    )
  const cost = (other: PlanPerson) => (isBusy(other) ? 1000 : 0) + (helped.get(other.id) ?? 0)
  return [...may].sort((a, b) => cost(a) - cost(b))[0] ?? null
}

/** There for the whole task, speaks with this person and with the crew, and may be near the food. */
function mayHelp(problem: DayProblem, plan: Plan, task: PlannedTask, person: PlanPerson, other: PlanPerson): boolean {
  const wanted = wantedLanguages(problem, plan, task, person)
  const id =
    plan.batches.find((batch) => batch.id === task.batchId)?.preparationId ??
    plan.loads.find((load) => load.id === task.loadId)?.preparationId
  const allergens = kettleWorkOf(problem, id)?.allergens ?? []
  const hours = hoursOf(problem, other)
  const isThere = hours.from <= task.start && task.end <= hours.until && other.ageClass === 'adult' && other.id !== person.id
  return isThere && share(other.languages, person.languages) && share(other.languages, wanted) && !share(other.allergies, allergens)
}

/** Is there ever another adult in the room who shares a language? Whoever is the only one needs nobody to talk to. */
function hasCompany({ people }: DayProblem, person: PlanPerson): boolean {
  const others = people.filter((other) => other.id !== person.id && other.ageClass === 'adult')
  if (others.length === 0) return true
  return others.some((other) => share(person.languages, other.languages) && other.from < person.until && person.from < other.until)
}
