import type { DayPlan, PlannedTask, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPerson, KettleWork, StageWork } from '@/shared/planning/day-problem'
import { kettleWorkOf } from '@/shared/planning/kettle-works'
import { mayDo } from '@/shared/planning/who-may'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Work of a plan that needs people, with those who are named for it. */
export type StaffDemand = {
  readonly taskId: string | null
  readonly kind: PlanTaskKind
  /** The first of the skills that are enough; for work that asks for none, the work's own name. */
  readonly skill: string
  readonly skills: readonly string[]
  readonly preparationId: string | null
  readonly batchId: string | null
  readonly loadId: string | null
  readonly start: KitchenTime
  readonly end: KitchenTime
  readonly wanted: number
  /** How many such demands one person can serve at once. */
  readonly perPerson: number
  readonly namedIds: readonly string[]
  /** May this person do it, whatever the hour? */
  readonly may: (person: PlanPerson) => boolean
}

/** The rows that ask for no skill: lifting jars at a canner, cleaning up. */
export const LIFTING = 'lifting'
export const CLEANING = 'clean-up'

/** Everything in a plan that needs hands or eyes, in order of time. A canner is minded from its first minute to its last. */
export function staffDemands(problem: DayProblem, plan: DayPlan): StaffDemand[] {
  const byTask = plan.tasks.flatMap((task) => taskDemand(problem, plan, task) ?? [])
  return [...byTask, ...mindingDemands(problem, plan), ...unplannedWork(problem, plan)].sort((a, b) => a.start - b.start || a.end - b.end)
}

/** When a person can be given work: after the briefing of their arrival, until they leave. */
export function hoursOf({ window }: DayProblem, person: PlanPerson): { readonly from: KitchenTime; readonly until: KitchenTime } {
  return { from: Math.max(person.from, window.peopleArriveAt) + window.briefingMinutes, until: Math.min(person.until, window.hardEnd) }
}

/** Is this person there for all of it, and may they do it? */
export function isThereFor(problem: DayProblem, demand: StaffDemand, person: PlanPerson): boolean {
  const hours = hoursOf(problem, person)
  return demand.may(person) && hours.from <= demand.start && demand.end <= hours.until
}

type Stage = 'prep' | 'cook' | 'fill' | 'wash' | 'label'
const STAGE_OF: Readonly<Partial<Record<PlanTaskKind, Stage>>> = {
  prep: 'prep',
  cook: 'cook',
  hold: 'cook',
  fill: 'fill',
  wash: 'wash',
  label: 'label',
}

function taskDemand(problem: DayProblem, plan: DayPlan, task: PlannedTask): StaffDemand | null {
  if (task.end <= task.start) return null
  const preparation = preparationOf(problem, plan, task)
  const stage = STAGE_OF[task.kind]
  if (stage && preparation) return demandOf(problem, task, preparation, preparation[stage])
  if (task.kind === 'load' || task.kind === 'unload') return demandOf(problem, task, preparation, null, LIFTING)
  return task.kind === 'clean-up' ? demandOf(problem, task, null, null, CLEANING) : null
}

function demandOf(
  problem: DayProblem,
  task: PlannedTask,
  preparation: KettleWork | null,
  work: StageWork | null,
  name: string = task.kind,
): StaffDemand {
  const skills = work?.skills ?? []
  const team = work ? leastTeam(task, work) : 1
  const stillThere = new Set(problem.people.map(({ id }) => id))
  return {
    ...{ taskId: task.id, kind: task.kind, skill: skills[0] ?? name, skills, preparationId: preparation?.id ?? null },
    ...{ batchId: task.batchId, loadId: task.loadId, start: task.start, end: task.end, wanted: team, perPerson: 1 },
    // Whoever stays cleans up: those who are gone leave no gap as long as somebody does.
    namedIds: task.kind === 'clean-up' ? task.peopleIds.filter((id) => stillThere.has(id)) : task.peopleIds,
    may: (person) => mayDo(person, task.kind, skills, preparation),
  }
}

/** The whole team, for a smaller one would need longer. */
const leastTeam = (task: PlannedTask, work: StageWork): number => Math.max(work.peopleMin, task.peopleIds.length)

function mindingDemands(problem: DayProblem, plan: DayPlan): StaffDemand[] {
  return plan.loads.map((load) => {
    const preparation = problem.preparations.find(({ id }) => id === load.preparationId) ?? null
    const minding = problem.minding.find(({ method }) => method === load.method)
    const skills = minding ? [minding.skill] : []
    return {
      ...{ taskId: `process/${load.id}`, kind: 'process', skill: skills[0] ?? 'process', skills, preparationId: load.preparationId },
      ...{ batchId: null, loadId: load.id, start: Math.min(load.jarBoilAt, load.loadAt), end: load.emptyAt },
      ...{ wanted: 1, perPerson: Math.max(1, minding?.cannersAtOnce ?? 1), namedIds: [load.operatorId] },
      may: (person) => mayDo(person, 'process', skills, preparation),
    }
  })
}

/** Labels for which the plan found no minute: shown from when their batch cooks. */
function unplannedWork(problem: DayProblem, plan: DayPlan): StaffDemand[] {
  return plan.shortages.flatMap((shortage) => {
    if (shortage.kind !== 'hands' || shortage.batchId === null) return []
    const batch = plan.batches.find(({ id }) => id === shortage.batchId)
    const preparation = kettleWorkOf(problem, batch?.preparationId)
    if (!batch || !preparation || shortage.stage === 'clean-up') return []
    const { stage } = shortage
    const { skills } = preparation[stage]
    return [
      {
        ...{ taskId: null, kind: stage, skill: skills[0] ?? stage, skills, preparationId: preparation.id, batchId: batch.id, loadId: null },
        ...{ start: batch.cookStart, end: batch.cookStart + shortage.minutes, wanted: 1, perPerson: 1, namedIds: [] },
        may: (person: PlanPerson) => mayDo(person, stage, skills, preparation),
      },
    ]
  })
}

function preparationOf(problem: DayProblem, plan: DayPlan, { batchId, loadId }: PlannedTask): KettleWork | null {
  const id =
    plan.batches.find((batch) => batch.id === batchId)?.preparationId ?? plan.loads.find((load) => load.id === loadId)?.preparationId
  return kettleWorkOf(problem, id) ?? null
}
