import type { DayPlan, PlannedTask, PlanTaskKind, TaskActual } from '@/shared/planning/day-plan'
import { forecastLoads, type LoadForecast } from '@/shared/planning/forecast-loads'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** A task with the times that now hold for it. */
export type DueTask = { readonly task: PlannedTask; readonly start: KitchenTime; readonly end: KitchenTime; readonly lateMinutes: number }

/** What a phone shows in place of the chart: three lines. Null where there is nothing. */
export type NowNextAfter = { readonly now: DueTask | null; readonly next: DueTask | null; readonly after: DueTask | null }

/** Kinds of task that are minding a canner. */
const MINDING: ReadonlySet<PlanTaskKind> = new Set(['come-up', 'process', 'rest'])

/**
 * The task a person is at, the next one and the one after; for everybody together when no person is given.
 *
 * Of several tasks at once, work by hand comes before minding, then the one that ends first. A load that is logged as empty is over, and
 * work that depends on a late load moves with it. Watching a canner counts as a person's task only while they do nothing by hand.
 */
export function nowNextAfter(plan: DayPlan, actuals: readonly TaskActual[], personId: string | null, now: KitchenTime): NowNextAfter {
  const due = dueTasks(plan, actuals, now)
    .filter(({ task }) => (personId === null ? task.peopleIds.length > 0 : task.peopleIds.includes(personId)))
    .filter(({ end }) => end > now)
  const running = due
    .filter(({ start }) => start <= now)
    .sort((a, b) => rank(a) - rank(b) || a.end - b.end || a.task.id.localeCompare(b.task.id))
  const coming = due
    .filter(({ start, task }) => start > now && !(personId !== null && task.kind !== 'process' && MINDING.has(task.kind)))
    .sort((a, b) => a.start - b.start || rank(a) - rank(b) || a.task.id.localeCompare(b.task.id))
  return { now: running[0] ?? null, next: coming[0] ?? null, after: coming[1] ?? null }
}

/** Every task of the plan with its present times, in the plan's order; tasks of loads that are done are left out. */
export function dueTasks(plan: DayPlan, actuals: readonly TaskActual[], now: KitchenTime): DueTask[] {
  const forecasts = forecastLoads(plan, actuals, now)
  const ofLoad = new Map(forecasts.map((forecast) => [forecast.load.id, forecast]))
  const operators = new Map(actuals.flatMap(({ loadCode, operatorId }) => (operatorId ? [[loadCode, operatorId] as const] : [])))
  const ofBatch = new Map(forecasts.flatMap((forecast) => forecast.load.batchParts.map((part) => [part.batchId, forecast] as const)))
  return plan.tasks.flatMap((task) => {
    const load = task.loadId ? ofLoad.get(task.loadId) : undefined
    if (load) return load.state === 'done' ? [] : [dueInLoad(mindedBy(task, load, operators.get(load.load.code)), load)]
    return [dueInBatch(task, task.batchId ? ofBatch.get(task.batchId) : undefined, now)]
  })
}

/** Minding is the work of whoever minds the canner now: somebody else may have loaded it, or taken it over. */
function mindedBy(task: PlannedTask, { load }: LoadForecast, operatorId: string | undefined): PlannedTask {
  if (operatorId === undefined || operatorId === load.operatorId || !MINDING.has(task.kind)) return task
  return { ...task, peopleIds: task.peopleIds.map((id) => (id === load.operatorId ? operatorId : id)) }
}

function dueInLoad(task: PlannedTask, forecast: LoadForecast): DueTask {
  const { loadAt, heatAt, boilAt, processEndAt, restEndAt, emptyAt, load } = forecast
  const spans: Partial<Record<PlanTaskKind, readonly [KitchenTime, KitchenTime]>> = {
    'jar-heat': [loadAt - (load.loadAt - load.jarBoilAt), loadAt],
    load: [loadAt, heatAt],
    'come-up': [heatAt, boilAt],
    process: [boilAt, processEndAt],
    rest: [processEndAt, restEndAt],
    unload: [restEndAt, emptyAt],
  }
  const [start, end] = spans[task.kind] ?? [task.start, task.end]
  return { task, start, end, lateMinutes: start - task.start }
}

function dueInBatch(task: PlannedTask, forecast: LoadForecast | undefined, now: KitchenTime): DueTask {
  const late = forecast?.state === 'to-come' && task.start > now && task.kind !== 'label' ? Math.max(0, forecast.lateMinutes) : 0
  return { task, start: task.start + late, end: task.end + late, lateMinutes: late }
}

const rank = ({ task }: DueTask): number => (task.attention === 'hands-on' ? 0 : 1)
