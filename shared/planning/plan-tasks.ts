import type { PlannedLoad, PlannedTask, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem, KettleWork } from '@/shared/planning/day-problem'
import type { PlacedBatch } from '@/shared/planning/place-batch'
import type { Timetable } from '@/shared/planning/time-in-order'
import type { KitchenTime } from '@/shared/time/kitchen-time'

const bare = (kind: PlanTaskKind, of: string, start: KitchenTime, end: KitchenTime, more: Partial<PlannedTask> = {}): PlannedTask => ({
  id: `${kind}/${of}`,
  kind,
  start,
  end,
  attention: 'hands-on',
  peopleIds: [],
  kettleId: null,
  burnerId: null,
  cannerId: null,
  tableIndex: null,
  batchId: null,
  loadId: null,
  ...more,
})

/** A task with its unused places empty; `of` makes its id. */
export const makeTask = bare

/** One briefing for everybody who is there when people arrive, and one for each who comes later; none for who leaves before its end. */
export function briefings({ window, people }: DayProblem): PlannedTask[] {
  const { peopleArriveAt, briefingMinutes } = window
  if (briefingMinutes === 0) return []
  const arrivals = people.map(({ id, from, until }) => ({ id, until, start: Math.max(from, peopleArriveAt) }))
  const staying = arrivals.filter(({ start, until }) => start + briefingMinutes <= until)
  const starts = [...new Set(staying.map(({ start }) => start))].sort((a, b) => a - b)
  return starts.map((start) => {
    const peopleIds = staying.filter((person) => person.start === start).map(({ id }) => id)
    return bare('brief', String(start), start, start + briefingMinutes, { peopleIds })
  })
}

/** Water heats in every canner that is used, just in time for its first load. */
export function preheatings(timetable: Timetable): PlannedTask[] {
  return timetable.context.setUp.places.flatMap(({ canner, burner }) => {
    const taken = timetable.jobs.flatMap((job) =>
      job.loads.filter((load) => load.place.canner.id === canner.id).map((load) => Math.min(load.jarBoilAt, load.loadAt)),
    )
    if (taken.length === 0 || canner.preheatMinutes === 0) return []
    const hotAt = Math.min(...taken)
    return [bare('preheat', canner.id, hotAt - canner.preheatMinutes, hotAt, { cannerId: canner.id, burnerId: burner.id })]
  })
}

/** Prep, jar washing, jar boiling in a pot, cooking, holding hot, filling. */
export function batchTasks(preparation: Pick<KettleWork, 'cook'>, placed: PlacedBatch): PlannedTask[] {
  const { batch, prep, cook, wash, fill, kettle, burner, cookStart, cookEnd, fillStart, fillEnd, jarPot, tableIndex } = placed
  const of = batch.id
  const batchId = batch.id
  const onHeat = { batchId, kettleId: kettle.id, burnerId: burner.id }
  const attention = preparation.cook.attention
  const tasks = [
    bare('cook', of, cookStart, cookEnd, { ...onHeat, attention, peopleIds: cook.peopleIds }),
    bare('fill', of, fillStart, fillEnd, { ...onHeat, tableIndex, peopleIds: fill.peopleIds }),
  ]
  if (fillStart > cookEnd) tasks.push(bare('hold', of, cookEnd, fillStart, { ...onHeat, attention, peopleIds: cook.peopleIds }))
  if (prep.end > prep.start) tasks.push(bare('prep', of, prep.start, prep.end, { batchId, peopleIds: prep.peopleIds }))
  if (wash.end > wash.start) tasks.push(bare('wash', of, wash.start, wash.end, { batchId, peopleIds: wash.peopleIds }))
  if (jarPot) tasks.push(bare('jar-heat', of, jarPot.start, fillEnd, { batchId, kettleId: jarPot.kettle.id, burnerId: jarPot.burner.id }))
  return tasks
}

/** Boiling the empty jars, loading, come-up, process, rest, lifting out: the operator minds it all. */
export function loadTasks(load: PlannedLoad, burnerId: string | null): PlannedTask[] {
  const { id, loadAt, heatAt, boilAt, processEndAt, restEndAt, emptyAt, jarBoilAt, cannerId } = load
  const hot = { loadId: id, cannerId, burnerId }
  const minded = { ...hot, attention: 'watch' as const, peopleIds: [load.operatorId] }
  const tasks = [
    bare('load', id, loadAt, heatAt, { ...hot, peopleIds: [load.loaderId] }),
    bare('come-up', id, heatAt, boilAt, minded),
    bare('process', id, boilAt, processEndAt, minded),
    bare('rest', id, processEndAt, restEndAt, { ...minded, burnerId: null }),
    bare('unload', id, restEndAt, emptyAt, { ...hot, burnerId: null, peopleIds: [load.unloaderId] }),
  ]
  return jarBoilAt < loadAt ? [bare('jar-heat', id, jarBoilAt, loadAt, minded), ...tasks] : tasks
}
