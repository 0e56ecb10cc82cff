import type { DayPlan, PlannedBatch, PlannedLoad, PlannedTask } from '@/shared/planning/day-plan'
import type { DayProblem, MinuteRange, PlanPreparation } from '@/shared/planning/day-problem'
import { rangesOf } from '@/shared/planning/stage-ranges'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** What a step of a replay is; 'heat' is a load from the first jar in to the end of its rest. */
export type StepKind = 'jar-boil' | 'prep' | 'wash' | 'cook' | 'fill' | 'heat' | 'unload'

/** A length that is drawn anew in every replay: so many times what is drawn, after so many fixed minutes and before others. */
export type DrawnLength = { readonly range: MinuteRange; readonly times: number }

/** "Not before `minutes` after that moment of step `step`." */
export type Arc = { readonly step: number; readonly moment: 'start' | 'boil' | 'end'; readonly lag: number }

/** One thing that is done in a replay. A 'heat' step runs from the first jar lifted in to the end of the rest. */
export type Step = {
  readonly kind: StepKind
  readonly of: string
  readonly plannedStart: KitchenTime
  readonly plannedEnd: KitchenTime
  /** Nobody begins it sooner. */
  readonly release: KitchenTime
  readonly fixedMinutes: number
  readonly drawn: DrawnLength | null
  /** Of a 'heat' step: fixed minutes before the boil, besides the drawn come-up. */
  readonly beforeBoil: number
  readonly after: readonly Arc[]
  /** Put off by as much as this moment of the canner is late, less the slack that the plan has between. */
  readonly pull: { readonly arc: Arc; readonly plannedAt: KitchenTime; readonly slack: number } | null
}

/** A step whose predecessors are still being gathered. */
export type Draft = { -readonly [Key in keyof Step]: Step[Key] } & { after: Arc[] }

const RANK: Readonly<Record<StepKind, number>> = { unload: 0, 'jar-boil': 1, prep: 2, wash: 3, cook: 4, fill: 5, heat: 6 }

/** Every step of a plan, by planned start; they wait for nothing yet. */
export function draftSteps(problem: DayProblem, plan: DayPlan): Draft[] {
  const preparationOf = (id: string) => problem.preparations.find((entry) => entry.id === id)
  return [
    ...plan.batches.flatMap((batch) => batchSteps(plan, batch, preparationOf(batch.preparationId))),
    ...plan.loads.flatMap((load) => loadSteps(plan, load, preparationOf(load.preparationId))),
  ].sort((a, b) => a.plannedStart - b.plannedStart || RANK[a.kind] - RANK[b.kind] || (a.of < b.of ? -1 : 1))
}

/** The batch's task of that kind, if the plan has one. */
export const taskOf = (plan: DayPlan, kind: PlannedTask['kind'], batchId: string) =>
  plan.tasks.find((task) => task.kind === kind && task.batchId === batchId)

function draft(kind: StepKind, of: string, start: KitchenTime, end: KitchenTime, more: Partial<Draft> = {}): Draft {
  const times = { plannedStart: start, plannedEnd: end, release: start, fixedMinutes: end - start }
  return { kind, of, ...times, drawn: null, beforeBoil: 0, after: [], pull: null, ...more }
}

function batchSteps(plan: DayPlan, batch: PlannedBatch, preparation: PlanPreparation | undefined): Draft[] {
  if (!preparation) return []
  const ranges = rangesOf(preparation)
  const spread = (range: MinuteRange, planned: number, figure: number): Partial<Draft> =>
    figure > 0 ? { fixedMinutes: 0, drawn: { range, times: planned / figure } } : {}
  const { id, cookStart, cookEnd, fillStart, fillEnd } = batch
  const prep = taskOf(plan, 'prep', id)
  const wash = taskOf(plan, 'wash', id)
  const pot = taskOf(plan, 'jar-heat', id)
  return [
    ...(prep ? [draft('prep', id, prep.start, prep.end, spread(ranges.prep, prep.end - prep.start, preparation.prep.workMinutes))] : []),
    ...(wash ? [draft('wash', id, wash.start, wash.end)] : []),
    ...(pot ? [draft('jar-boil', id, pot.start, pot.start + preparation.jarBoilMinutes)] : []),
    draft('cook', id, cookStart, cookEnd, spread(ranges.kettle, cookEnd - cookStart, preparation.kettleMinutes)),
    draft('fill', id, fillStart, fillEnd),
  ]
}

function loadSteps(plan: DayPlan, load: PlannedLoad, preparation: PlanPreparation | undefined): Draft[] {
  if (!preparation) return []
  const { comeUp } = rangesOf(preparation)
  const isFirst = !plan.loads.some((other) => other.cannerId === load.cannerId && other.loadAt < load.loadAt)
  const { id, jarBoilAt, loadAt, boilAt, restEndAt, emptyAt } = load
  const planned = preparation.cycle.comeUpMinutes
  const heated: Partial<Draft> = {
    // The water is hot just in time for a canner's first load; later loads may go in as soon as canner and jars are ready.
    release: isFirst ? loadAt : Number.NEGATIVE_INFINITY,
    fixedMinutes: restEndAt - loadAt - planned,
    drawn: { range: comeUp, times: 1 },
    beforeBoil: boilAt - loadAt - planned,
  }
  const boiled = jarBoilAt < loadAt ? [draft('jar-boil', id, jarBoilAt, jarBoilAt + preparation.jarBoilMinutes)] : []
  const out = draft('unload', id, restEndAt, emptyAt, { release: Number.NEGATIVE_INFINITY })
  return [...boiled, draft('heat', id, loadAt, restEndAt, heated), out]
}
