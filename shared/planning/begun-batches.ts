import type { DayPlan, PlannedBatch, PlannedTask } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPreparation } from '@/shared/planning/day-problem'
import type { BatchSoFar, DaySoFar } from '@/shared/planning/day-so-far'
import { type Booked, type PlacedBatch, WASHED_JARS_STAY_HOT_MINUTES } from '@/shared/planning/place-batch'
import type { BatchUnderWay, BoilingJars } from '@/shared/planning/under-way'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** A batch of the plan with the work on it that has begun. */
export type BegunBatch = {
  readonly batch: PlannedBatch
  readonly preparation: PlanPreparation
  readonly fact: BatchSoFar | null
  /** Null when nothing of it has begun. */
  readonly begun: BatchUnderWay | null
}

/** Looks at each batch of the plan that stands: what of it has begun by now, with its real times, and with whom. */
export function begunBatches(problem: DayProblem, plan: DayPlan, soFar: DaySoFar): BegunBatch[] {
  return plan.batches.flatMap((batch) => {
    const preparation = problem.preparations.find(({ id }) => id === batch.preparationId)
    const fact = soFar.batches.find(({ batchId }) => batchId === batch.id) ?? null
    return preparation ? [{ batch, preparation, fact, begun: begunOf(problem, plan, soFar, batch, preparation, fact) }] : []
  })
}

/** Work of a batch that has no entry on the floor: it has begun when its planned minute is past, somebody of it is there to its end, and its produce is. */
export function isBegunTask(problem: DayProblem, soFar: DaySoFar, task: PlannedTask, preparationId: string): boolean {
  const late = soFar.setbacks.some((each) => each.kind === 'produce-late' && each.preparationId === preparationId && each.at > task.start)
  return task.start < soFar.now && !(late && task.kind === 'prep') && staying(problem, task).length > 0
}

/** Those of a task's people who are there until its end. */
export const staying = ({ people }: DayProblem, { start, end, peopleIds }: Pick<PlannedTask, 'start' | 'end' | 'peopleIds'>): string[] =>
  peopleIds.filter((id) => people.some((person) => person.id === id && person.from <= start && person.until >= end))

function begunOf(
  problem: DayProblem,
  plan: DayPlan,
  soFar: DaySoFar,
  batch: PlannedBatch,
  preparation: PlanPreparation,
  fact: BatchSoFar | null,
): BatchUnderWay | null {
  const tasks = new Map(plan.tasks.filter((task) => task.batchId === batch.id).map((task) => [task.kind, task]))
  const booked = (kind: 'prep' | 'wash'): Booked | null => {
    const task = tasks.get(kind)
    if (!task || !isBegunTask(problem, soFar, task, preparation.id)) return null
    return { start: task.start, end: task.end, peopleIds: task.end > soFar.now ? staying(problem, task) : task.peopleIds }
  }
  const boiling = boilingJars(plan, soFar, batch, preparation)
  const [prep, wash] = [booked('prep'), booked('wash')]
  if (!fact || fact.state === 'planned' || fact.startedAt === null) {
    return prep || wash || boiling ? { stage: 'prepared', prep, wash: stillHot(wash, soFar.now), boiling } : null
  }
  if (fact.state === 'abandoned') return null
  const placed = inKettle(problem, soFar, batch, fact, preparation, tasks)
  if (!placed) return null
  const filling = fillingOf(soFar, preparation, batch, fact, placed, tasks.get('fill') ?? null)
  if (!filling) return { stage: 'cooking', placed, prep, wash: stillHot(wash, soFar.now), boiling }
  const since = fact.waiting?.since ?? filling.fillEnd
  return {
    stage: 'filled',
    placed: { ...placed, ...filling, ...doneBefore(placed.cookStart, tasks) },
    loadBy: fact.waiting?.loadBy ?? since + preparation.filledToLoadedLimitMinutes,
  }
}

/** Washing that is too long ago is not counted: the jars are washed hot once more. */
const stillHot = (wash: Booked | null, now: KitchenTime): Booked | null =>
  wash && wash.end + WASHED_JARS_STAY_HOT_MINUTES >= now ? wash : null

function boilingJars(plan: DayPlan, { now, loads }: DaySoFar, batch: PlannedBatch, preparation: PlanPreparation): BoilingJars | null {
  if (preparation.jarTreatment !== 'boiled-in-canner') return null
  const load = plan.loads.find(({ batchParts }) => batchParts.some((part) => part.batchId === batch.id))
  const isToCome = load && !loads.some(({ loadId, state }) => loadId === load.id && state !== 'planned')
  return isToCome && load.jarBoilAt < now && load.jarBoilAt < load.loadAt ? { cannerId: load.cannerId, from: load.jarBoilAt } : null
}

type InKettle = Extract<BatchUnderWay, { stage: 'cooking' }>['placed']

function inKettle(
  problem: DayProblem,
  soFar: DaySoFar,
  batch: PlannedBatch,
  fact: BatchSoFar,
  preparation: PlanPreparation,
  tasks: ReadonlyMap<string, PlannedTask>,
): InKettle | null {
  const kettle = problem.kettles.find(({ id }) => id === (fact.kettleId ?? batch.kettleId))
  const cook = tasks.get('cook')
  const burner = problem.burners.find(({ id }) => id === cook?.burnerId)
  if (!kettle || !burner || !cook) return null
  const cookStart = fact.startedAt ?? cook.start
  const done = cookStart + preparation.kettleMinutes
  // A filling that is noted ends the cooking; until then a kettle that is overdue cooks on.
  const filled = fact.fillStartedAt ?? fact.filledAt
  const cookEnd = filled === null ? Math.max(done, soFar.now) : Math.max(cookStart, Math.min(done, filled))
  const jarHeat = tasks.get('jar-heat')
  const pot = problem.kettles.find(({ id }) => id === jarHeat?.kettleId)
  const ring = problem.burners.find(({ id }) => id === jarHeat?.burnerId)
  return {
    batch: { id: batch.id, preparationId: batch.preparationId, multiple: batch.multiple, jars: jarsOf(batch, fact) },
    ...{ kettle, burner, cookStart, cookEnd },
    cook: { start: cookStart, end: cookEnd, peopleIds: cook.peopleIds },
    jarPot: jarHeat && pot && ring ? { kettle: pot, burner: ring, start: Math.min(jarHeat.start, cookEnd) } : null,
  }
}

/** A batch that is filled was prepared and its jars were washed, as far as anybody knows when it was planned. */
function doneBefore(cookStart: KitchenTime, tasks: ReadonlyMap<string, PlannedTask>): Pick<PlacedBatch, 'prep' | 'wash'> {
  const at = (kind: 'prep' | 'wash'): Booked => {
    const task = tasks.get(kind)
    return task ? { start: task.start, end: task.end, peopleIds: task.peopleIds } : { start: cookStart, end: cookStart, peopleIds: [] }
  }
  return { prep: at('prep'), wash: at('wash') }
}

const jarsOf = (batch: PlannedBatch, { jarsFilled }: BatchSoFar) =>
  jarsFilled === null ? batch.jars : { low: jarsFilled, typical: jarsFilled, high: jarsFilled }

/** The filling that is over or under way; null while the batch is in the kettle. */
function fillingOf(
  { now }: DaySoFar,
  preparation: PlanPreparation,
  batch: PlannedBatch,
  fact: BatchSoFar,
  { cookEnd }: InKettle,
  planned: PlannedTask | null,
): Pick<PlacedBatch, 'fillStart' | 'fillEnd' | 'fill' | 'tableIndex'> | null {
  const length = planned ? planned.end - planned.start : preparation.fill.workMinutes * batch.multiple
  const { filledAt, fillStartedAt } = fact
  if (filledAt === null && (fillStartedAt === null || fillStartedAt >= now)) return null
  const fillEnd = filledAt ?? Math.max(now, (fillStartedAt ?? now) + length)
  const fillStart = Math.min(fillEnd, Math.max(cookEnd, fillStartedAt ?? fillEnd - length))
  return {
    ...{ fillStart, fillEnd },
    fill: { start: fillStart, end: fillEnd, peopleIds: planned?.peopleIds ?? [] },
    tableIndex: planned?.tableIndex ?? 0,
  }
}
