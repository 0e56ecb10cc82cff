import { barMark, type ChartMark, heatMark, type Seen, soakMark, taskMark, waitMark } from '@/shared/day/chart-marks'
import { kettleWorks } from '@/shared/planning/kettle-works'
import type { DayPlan, PlannedTask, PlanTaskKind, TaskActual } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { type DueTask, dueTasks } from '@/shared/planning/now-next-after'
import { type WallChart, wallChart } from '@/shared/planning/wall-chart'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** What a row of the chart stands for. */
export const CHART_VIEWS = ['station', 'person', 'product'] as const
export type ChartView = (typeof CHART_VIEWS)[number]

/** One row: who or what it is, and its marks side by side in as few lanes as they need. */
export type ChartRow = {
  readonly id: string
  readonly label: string
  readonly note: string | null
  readonly lanes: readonly (readonly ChartMark[])[]
}

/** The day from one side, with the hours that are drawn over every row. */
export type RowChart = Pick<WallChart, 'from' | 'to' | 'now' | 'emptyBy' | 'closedFrom' | 'finishAt' | 'spareMinutes' | 'lateMinutes'> & {
  readonly rows: readonly ChartRow[]
}

/**
 * The timetable seen from one side: by station, by person or by product.
 *
 * Before the day everything stands as planned; on the day what was logged stands where it happened and the rest where it now must go.
 */
export function rowChart(
  problem: DayProblem,
  plan: DayPlan,
  view: ChartView,
  actuals: readonly TaskActual[] = [],
  now: KitchenTime | null = null,
): RowChart {
  const chart = wallChart(problem, plan, actuals, now)
  const due = now === null ? plan.tasks.map(asPlanned) : dueTasks(plan, actuals, now)
  const rows = { station: stationRows, person: personRows, product: productRows }[view]({ problem, plan, chart, due })
  const { from, to, emptyBy, closedFrom, finishAt, spareMinutes, lateMinutes } = chart
  const first = Math.min(from, ...rows.flatMap((row) => row.lanes.flat().map((mark) => (mark.kind === 'soak' ? from : mark.from))))
  return { from: first, to, now, emptyBy, closedFrom, finishAt, spareMinutes, lateMinutes, rows }
}

const asPlanned = (task: PlannedTask): DueTask => ({ task, start: task.start, end: task.end, lateMinutes: 0 })

function stationRows({ problem, chart, due, plan }: Seen): ChartRow[] {
  const rows = chart.rows
    .filter((row) => row.kind !== 'rack')
    .map((row) => {
      const bars = chart.bars.filter((bar) => bar.rowId === row.id).map((bar) => barMark(bar, chart))
      const loads = chart.profiles.filter((load) => load.rowId === row.id).map((load) => heatMark(load, chart))
      const boiling = due.filter(({ task }) => task.kind === 'jar-heat' && (task.cannerId === row.id || task.kettleId === row.id))
      return rowOf(row.id, row.label, row.person, [
        ...bars,
        ...loads,
        ...boiling.map((one) => taskMark(one, { problem, plan, chart, due })),
      ])
    })
  return [...rows, ...tableRows({ problem, plan, chart, due })]
}

/** Work at no equipment: cutting, washing, labels, the briefing and the cleaning. */
function tableRows(seen: Seen): ChartRow[] {
  const free = seen.due.filter(
    ({ task }) => task.cannerId === null && task.kettleId === null && task.tableIndex === null && task.peopleIds.length > 0,
  )
  return free.length === 0
    ? []
    : [
        rowOf(
          'tables',
          'Tables',
          null,
          free.map((one) => taskMark(one, seen)),
        ),
      ]
}

function personRows(seen: Seen): ChartRow[] {
  return seen.problem.people.map((person) => {
    const own = seen.due.filter(({ task }) => task.peopleIds.includes(person.id))
    const minded = mindedLoads(own).map((one) => taskMark(one, seen))
    const rest = own.filter(({ task }) => !isMinding(task)).map((one) => taskMark(one, seen))
    return rowOf(person.id, person.name, null, rest, minded)
  })
}

const MINDING: ReadonlySet<PlanTaskKind> = new Set(['come-up', 'process', 'rest'])
const isMinding = ({ kind, attention }: PlannedTask) => MINDING.has(kind) && attention === 'watch'

/** Come-up, process and rest of one load are one stretch of minding for whoever is there. */
function mindedLoads(own: readonly DueTask[]): DueTask[] {
  const stretches = new Map<string, DueTask>()
  for (const one of own) {
    if (!isMinding(one.task)) continue
    const key = one.task.loadId ?? one.task.id
    const known = stretches.get(key)
    const span = known && { start: Math.min(known.start, one.start), end: Math.max(known.end, one.end) }
    stretches.set(key, known && span ? { ...known, ...span, task: { ...known.task, kind: 'process' } } : one)
  }
  return [...stretches.values()]
}

function productRows(seen: Seen): ChartRow[] {
  const { problem, plan, chart } = seen
  return kettleWorks(problem).flatMap((preparation) =>
    plan.batches
      .filter((batch) => batch.preparationId === preparation.id)
      .sort((a, b) => a.cookStart - b.cookStart || a.code.localeCompare(b.code, 'en', { numeric: true }))
      .map((batch, index) => {
        const bars = chart.bars.filter((bar) => bar.batchId === batch.id).map((bar) => barMark(bar, chart))
        const loads = chart.profiles.filter((load) => batchesOf(plan, load.loadId).includes(batch.id)).map((load) => heatMark(load, chart))
        const waits = chart.falls.filter((fall) => fall.batchId === batch.id).flatMap((fall) => waitMark(fall, chart))
        const before = seen.due.filter(({ task }) => task.batchId === batch.id && BEFORE_FILLING.has(task.kind))
        const soaks = chart.soaks.filter((soak) => soak.batchIds.includes(batch.id)).map((soak) => soakMark(soak, chart, batch.id))
        const way = [...soaks, ...bars, ...waits, ...loads].map(besideItsBatch)
        return rowOf(
          batch.id,
          batch.code,
          index === 0 ? preparation.title : null,
          way,
          before.map((one) => besideItsBatch(taskMark(one, seen))),
        )
      }),
  )
}

const BEFORE_FILLING: ReadonlySet<PlanTaskKind> = new Set(['prep', 'wash', 'label'])

/** In its own row a batch need not be named again. */
const besideItsBatch = (mark: ChartMark): ChartMark => ({ ...mark, label: mark.alone, short: '' })

const batchesOf = (plan: DayPlan, loadId: string) =>
  plan.loads.find(({ id }) => id === loadId)?.batchParts.map((part) => part.batchId) ?? []

/** Each list fills lanes of its own, in order of time; what overlaps goes into the next lane that is free. */
function rowOf(id: string, label: string, note: string | null, ...lists: readonly (readonly ChartMark[])[]): ChartRow {
  return { id, label, note, lanes: lists.flatMap(lanesOf) }
}

function lanesOf(marks: readonly ChartMark[]): ChartMark[][] {
  const lanes: ChartMark[][] = []
  for (const mark of [...marks].sort((a, b) => a.from - b.from || a.to - b.to || a.id.localeCompare(b.id, 'en'))) {
    const free = lanes.find((lane) => (lane.at(-1)?.to ?? Number.NEGATIVE_INFINITY) <= mark.from)
    if (free) free.push(mark)
    else lanes.push([mark])
  }
  return lanes
}
