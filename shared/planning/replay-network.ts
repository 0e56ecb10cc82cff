import type { DayPlan, PlannedBatch, PlannedLoad, PlannedTask } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPreparation } from '@/shared/planning/day-problem'
import { kettleWorkOf } from '@/shared/planning/kettle-works'
import { WASHED_JARS_STAY_HOT_MINUTES } from '@/shared/planning/place-batch'
import { type Arc, type Draft, draftSteps, type Step, type StepKind, taskOf } from '@/shared/planning/replay-steps'
import { tableWashMinutes, washedOff } from '@/shared/planning/table-wash'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** A wait that must not be stretched: from the end of one step to the start of another. */
export type WatchedWait = {
  readonly kind: 'cooked-to-filling' | 'filled-to-loaded' | 'washed-to-filling'
  readonly batchId: string
  readonly from: number
  readonly to: number
  readonly limit: number
}

export type ReplayNetwork = {
  /** In an order in which every step comes after all that it waits for. */
  readonly steps: readonly Step[]
  readonly waits: readonly WatchedWait[]
  /** Until when each person is there, with the steps that they work at. */
  readonly people: readonly { readonly personId: string; readonly until: KitchenTime; readonly steps: readonly number[] }[]
}

/**
 * The plan as steps that wait for one another: food goes on from stage to stage; kettles, burners, tables, canners and people take what
 * comes next in the order of the plan. Labels and cleaning are left out, for nothing waits for them.
 */
export function replayNetwork(problem: DayProblem, plan: DayPlan): ReplayNetwork {
  const preparationOf = (id: string) => problem.preparations.find((entry) => entry.id === id)
  const drafts = draftSteps(problem, plan)
  const index = new Map(drafts.map((step, place) => [`${step.kind} ${step.of}`, place]))
  const at = (kind: StepKind, of: string) => index.get(`${kind} ${of}`) ?? -1
  const waits = plan.batches.flatMap((batch) => linkBatch(drafts, at, plan, batch, preparationOf(batch.preparationId)))
  for (const load of plan.loads) linkLoad(drafts, at, plan, load)
  linkEquipment(drafts, at, problem, plan)
  const people = problem.people.map((person) => linkPerson(drafts, at, plan, person.id, person.until))
  return { steps: drafts, waits, people: people.filter(({ steps }) => steps.length > 0) }
}

const endOf = (step: number): Arc => ({ step, moment: 'end', lag: 0 })

type At = (kind: StepKind, of: string) => number

function follow(drafts: Draft[], step: number, before: number, lag = 0): void {
  if (step >= 0 && before >= 0) drafts[step]?.after.push({ step: before, moment: 'end', lag })
}

function linkBatch(drafts: Draft[], at: At, plan: DayPlan, batch: PlannedBatch, preparation: PlanPreparation | undefined): WatchedWait[] {
  if (!preparation) return []
  const { id } = batch
  const [prep, wash, pot, cook, fill] = [at('prep', id), at('wash', id), at('jar-boil', id), at('cook', id), at('fill', id)]
  follow(drafts, preparation.prepBefore === 'cook' ? cook : fill, prep)
  follow(drafts, pot < 0 ? fill : pot, wash)
  follow(drafts, fill, pot)
  follow(drafts, fill, cook)
  const loads = plan.loads.filter((load) => load.batchParts.some((part) => part.batchId === id))
  for (const load of loads) follow(drafts, at('heat', load.id), fill)
  for (const load of loads) follow(drafts, fill, at('jar-boil', load.id))
  const [first] = [...loads].sort((a, b) => a.loadAt - b.loadAt)
  const limit = preparation.filledToLoadedLimitMinutes
  if (first) for (const step of [wash, pot, cook, fill]) pullFrom(drafts, at, plan, { load: first, limit, fillEnd: batch.fillEnd }, step)
  const watched: WatchedWait[] = [
    { kind: 'cooked-to-filling', batchId: id, from: cook, to: fill, limit: preparation.cookedToFillingLimitMinutes },
    ...loads.map((load) => ({
      ...{ kind: 'filled-to-loaded' as const, batchId: id, from: fill, to: at('heat', load.id) },
      limit: preparation.filledToLoadedLimitMinutes,
    })),
  ]
  if (wash >= 0 && pot < 0)
    watched.push({ kind: 'washed-to-filling', batchId: id, from: wash, to: fill, limit: WASHED_JARS_STAY_HOT_MINUTES })
  return watched
}

/**
 * The kettle follows the canner: where the load before is seen to be late, a batch is put off by what its filled jars could not wait.
 *
 * Half of the allowed wait is kept back while the load before has not boiled yet, for it may get later still.
 */
function pullFrom(drafts: Draft[], at: At, plan: DayPlan, { load, limit, fillEnd }: Pulled, index: number): void {
  const step = drafts[index]
  if (!step) return
  const queue = plan.loads.filter((other) => other.cannerId === load.cannerId && other.loadAt < load.loadAt)
  const seen = queue.filter((other) => other.loadAt < step.plannedStart).sort((a, b) => b.loadAt - a.loadAt)[0]
  const heat = seen ? at('heat', seen.id) : -1
  if (!seen || heat < 0) return
  const taken = queue.filter((other) => other.loadAt > seen.loadAt).reduce((sum, other) => sum + other.emptyAt - other.jarBoilAt, 0)
  const unused = Math.max(0, load.jarBoilAt - seen.emptyAt - taken)
  const isBoiling = seen.boilAt < step.plannedStart
  const wait = Math.max(0, (isBoiling ? limit : limit / 2) - (load.loadAt - fillEnd))
  const plannedAt = isBoiling ? seen.boilAt : seen.loadAt
  step.pull = { arc: { step: heat, moment: isBoiling ? 'boil' : 'start', lag: 0 }, plannedAt, slack: unused + wait }
}

type Pulled = { readonly load: PlannedLoad; readonly limit: number; readonly fillEnd: KitchenTime }

function linkLoad(drafts: Draft[], at: At, plan: DayPlan, load: PlannedLoad): void {
  follow(drafts, at('unload', load.id), at('heat', load.id))
  const before = plan.loads
    .filter((other) => other.cannerId === load.cannerId && other.loadAt < load.loadAt)
    .sort((a, b) => b.loadAt - a.loadAt)[0]
  if (!before) return
  const first = at('jar-boil', load.id)
  follow(drafts, first < 0 ? at('heat', load.id) : first, at('unload', before.id))
}

/** Kettles, burners and tables: each batch waits for the one before it in the plan. */
function linkEquipment(drafts: Draft[], at: At, problem: DayProblem, plan: DayPlan): void {
  const wash = new Map(problem.kettles.map((kettle) => [kettle.id, kettle.washMinutes]))
  const cookOf = (batch: PlannedBatch) => taskOf(plan, 'cook', batch.id)
  chain(
    plan.batches,
    (batch) => batch.kettleId,
    (batch, before) => follow(drafts, at('cook', batch.id), at('fill', before.id), wash.get(before.kettleId) ?? 0),
  )
  chain(
    plan.batches,
    (batch) => cookOf(batch)?.burnerId ?? null,
    (batch, before) => follow(drafts, at('cook', batch.id), at('fill', before.id)),
  )
  const byFill = [...plan.batches].sort((a, b) => a.fillStart - b.fillStart)
  const tableOf = (batch: PlannedBatch) => String(taskOf(plan, 'fill', batch.id)?.tableIndex ?? '')
  const workOf = ({ preparationId }: PlannedBatch) => kettleWorkOf(problem, preparationId)
  chain(byFill, tableOf, (batch, before) => {
    const [first, second] = [workOf(before), workOf(batch)]
    const isWashed = first && second && washedOff(problem, first, second).length > 0
    follow(drafts, at('fill', batch.id), at('fill', before.id), isWashed ? tableWashMinutes(problem) : 0)
  })
}

function chain(
  batches: readonly PlannedBatch[],
  of: (batch: PlannedBatch) => string | null,
  link: (batch: PlannedBatch, before: PlannedBatch) => void,
): void {
  const last = new Map<string, PlannedBatch>()
  for (const batch of batches) {
    const name = of(batch)
    if (name === null) continue
    const before = last.get(name)
    if (before) link(batch, before)
    last.set(name, batch)
  }
}

type Turn = { readonly first: number; readonly last: Arc; readonly start: KitchenTime; readonly end: KitchenTime }

/** A person takes what comes next once everything is done that ended before it in the plan; minding goes on beside what it went beside. */
function linkPerson(drafts: Draft[], at: At, plan: DayPlan, personId: string, until: KitchenTime) {
  const turns = [...turnsAtTasks(drafts, at, plan, personId), ...turnsAtCanners(drafts, at, plan, personId)]
  turns.sort((a, b) => a.start - b.start || a.end - b.end)
  for (const turn of turns) {
    const done = turns.filter((other) => other.end <= turn.start)
    const latest = Math.max(...done.map((other) => other.start))
    // Who worked at something that ended before the latest of these began has been waited for already.
    for (const other of done) if (other.end > latest) drafts[turn.first]?.after.push(other.last)
  }
  return { personId, until, steps: [...new Set(turns.map((turn) => turn.last.step))] }
}

const STEP_OF: Readonly<Partial<Record<PlannedTask['kind'], StepKind>>> = {
  prep: 'prep',
  wash: 'wash',
  cook: 'cook',
  fill: 'fill',
  load: 'heat',
  unload: 'unload',
}

function turnsAtTasks(drafts: readonly Draft[], at: At, plan: DayPlan, personId: string): Turn[] {
  return plan.tasks.flatMap((task) => {
    const kind = STEP_OF[task.kind]
    const step = kind && task.peopleIds.includes(personId) ? at(kind, task.batchId ?? task.loadId ?? '') : -1
    if (step < 0 || !drafts[step]) return []
    const lifted: Arc = { step, moment: 'start', lag: task.end - task.start }
    return [{ first: step, last: task.kind === 'load' ? lifted : endOf(step), start: task.start, end: task.end }]
  })
}

function turnsAtCanners(drafts: readonly Draft[], at: At, plan: DayPlan, personId: string): Turn[] {
  return plan.loads.flatMap((load) => {
    const boil = at('jar-boil', load.id)
    const first = boil < 0 ? at('heat', load.id) : boil
    const last = at('unload', load.id)
    if (load.operatorId !== personId || !drafts[first] || !drafts[last]) return []
    return [{ first, last: endOf(last), start: Math.min(load.jarBoilAt, load.loadAt), end: load.emptyAt }]
  })
}
