import type { DayPlan, PlannedTask, PlanTaskKind, TaskActual } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { type DueTask, dueTasks } from '@/shared/planning/now-next-after'
import { type HeatPoint, type HeatProfile, type Progress, type WallChart, wallChart } from '@/shared/planning/wall-chart'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** What a row of the chart stands for. */
export const CHART_VIEWS = ['station', 'person', 'product'] as const
export type ChartView = (typeof CHART_VIEWS)[number]

/** One piece of work in a row. */
export type ChartMark = {
  readonly id: string
  /** 'hands': somebody's hands, or a kettle or table in use. 'eyes': minded. 'heat': a canner load. 'wait': filled jars that may wait until `to`. 'soak': since the evening before. */
  readonly kind: 'hands' | 'eyes' | 'heat' | 'wait' | 'soak'
  readonly from: KitchenTime
  readonly to: KitchenTime
  /** Two words at most: "fill J3". */
  readonly label: string
  /** Null for work that belongs to no product. */
  readonly preparationId: string | null
  readonly progress: Progress
  /** It lies on the chain that fixes the finish. */
  readonly isCritical: boolean
  /** Only where `kind` is 'heat'. */
  readonly heat: { readonly outline: readonly HeatPoint[]; readonly block: HeatProfile['block'] } | null
}

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

type Seen = { readonly problem: DayProblem; readonly plan: DayPlan; readonly chart: WallChart; readonly due: readonly DueTask[] }

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
    return rowOf(person.id, person.name, null, [...rest, ...minded])
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
  return problem.preparations.flatMap((preparation) =>
    plan.batches
      .filter((batch) => batch.preparationId === preparation.id)
      .sort((a, b) => a.cookStart - b.cookStart || a.code.localeCompare(b.code, 'en', { numeric: true }))
      .map((batch, index) => {
        const bars = chart.bars.filter((bar) => bar.batchId === batch.id).map((bar) => barMark(bar, chart))
        const loads = chart.profiles.filter((load) => batchesOf(plan, load.loadId).includes(batch.id)).map((load) => heatMark(load, chart))
        const waits = chart.falls.filter((fall) => fall.batchId === batch.id).flatMap((fall) => waitMark(fall, chart))
        const before = seen.due.filter(({ task }) => task.batchId === batch.id && ['prep', 'wash', 'label'].includes(task.kind))
        const soaks = chart.soaks.filter((soak) => soak.batchIds.includes(batch.id)).map((soak) => soakMark(soak, chart, batch.id))
        const marks = [...soaks, ...before.map((one) => taskMark(one, seen)), ...bars, ...waits, ...loads]
        return rowOf(batch.id, batch.code, index === 0 ? preparation.title : null, marks)
      }),
  )
}

const batchesOf = (plan: DayPlan, loadId: string) =>
  plan.loads.find(({ id }) => id === loadId)?.batchParts.map((part) => part.batchId) ?? []

function barMark(bar: WallChart['bars'][number], chart: WallChart): ChartMark {
  const { batchId, stage, start, end, code, preparationId, progress } = bar
  const label = `${stage} ${code}`
  return {
    id: `${batchId} ${stage}`,
    kind: 'hands',
    from: start,
    to: end,
    label,
    preparationId,
    progress,
    isCritical: isChained(chart, bar),
    heat: null,
  }
}

/** A kettle lies on the chain while it makes what the first load of the chain waits for. */
function isChained({ criticalChain, falls }: WallChart, { batchId }: WallChart['bars'][number]): boolean {
  const first = criticalChain[0]
  return first !== undefined && falls.some((fall) => fall.batchId === batchId && fall.to.rowId === first.rowId && fall.to.at === first.from)
}

function heatMark(load: HeatProfile, chart: WallChart): ChartMark {
  const from = load.outline[0]?.at ?? load.block.start
  const to = load.outline.at(-1)?.at ?? load.block.end
  const isCritical = chart.criticalChain.some(({ loadId }) => loadId === load.loadId)
  const { preparationId, progress, outline, block } = load
  return {
    id: load.loadId,
    kind: 'heat',
    from,
    to,
    label: `${load.label}, ${block.minutes} min`,
    preparationId,
    progress,
    isCritical,
    heat: { outline, block },
  }
}

function waitMark({ wait, from, to, batchId, preparationId, toCome }: WallChart['falls'][number], chart: WallChart): ChartMark[] {
  if (wait === null || to.at <= from.at) return []
  const label = wait.late ? `waits, limit ${wait.stopAt - from.at} min passed` : 'waits'
  const kind = 'wait' as const
  return [
    {
      id: `${batchId} waits ${to.at}`,
      kind,
      from: from.at,
      to: to.at,
      label,
      preparationId,
      progress: progressOf(toCome, to.at, chart.now),
      isCritical: wait.late,
      heat: null,
    },
  ]
}

const progressOf = (toCome: boolean, end: KitchenTime, now: KitchenTime | null): Progress =>
  toCome || now === null ? 'to-come' : end <= now ? 'done' : 'running'

function soakMark(soak: WallChart['soaks'][number], chart: WallChart, batchId: string): ChartMark {
  const { preparationId, household, start, end } = soak
  const progress = progressOf(chart.now === null || start >= chart.now, end, chart.now)
  return {
    id: `soak ${batchId}`,
    kind: 'soak',
    from: start,
    to: end,
    label: `soak, ${household}`,
    preparationId,
    progress,
    isCritical: false,
    heat: null,
  }
}

function taskMark({ task, start, end }: DueTask, { plan, chart }: Seen): ChartMark {
  const load = plan.loads.find(({ id }) => id === task.loadId)
  const batchIds = load?.batchParts.map((part) => part.batchId) ?? [task.batchId]
  const batches = plan.batches.filter(({ id }) => batchIds.includes(id))
  const codes = batches.map(({ code }) => code).join(' ')
  return {
    ...{
      id: `${task.id} ${task.kind}`,
      kind: task.attention === 'watch' ? ('eyes' as const) : ('hands' as const),
      from: start,
      to: end,
      heat: null,
    },
    label: `${SHORT[task.kind]}${codes && ` ${codes}`}`,
    preparationId: load?.preparationId ?? batches[0]?.preparationId ?? null,
    progress: progressOf(chart.now === null || start >= chart.now, end, chart.now),
    isCritical: chart.criticalChain.some(({ loadId }) => loadId === task.loadId),
  }
}

/** A task in one word or two, beside the batch's code. */
const SHORT: Readonly<Record<PlanTaskKind, string>> = {
  brief: 'briefing',
  soak: 'soak',
  preheat: 'heat water',
  prep: 'cut',
  'jar-heat': 'boil jars',
  cook: 'cook',
  hold: 'keep hot',
  fill: 'fill',
  load: 'load',
  'come-up': 'to the boil',
  process: 'mind',
  rest: 'rest',
  unload: 'lift out',
  wash: 'wash jars',
  label: 'labels',
  'clean-up': 'clean up',
}

/** Marks in order of time; what overlaps goes into the next lane that is free. */
function rowOf(id: string, label: string, note: string | null, marks: readonly ChartMark[]): ChartRow {
  const lanes: ChartMark[][] = []
  for (const mark of [...marks].sort((a, b) => a.from - b.from || a.to - b.to || a.id.localeCompare(b.id, 'en'))) {
    const free = lanes.find((lane) => (lane.at(-1)?.to ?? Number.NEGATIVE_INFINITY) <= mark.from)
    if (free) free.push(mark)
    else lanes.push([mark])
  }
  return { id, label, note, lanes }
}
