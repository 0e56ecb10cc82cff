import type { DayPlan, PlannedBatch, TaskActual } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { forecastFinish, forecastLoads, type LoadForecast } from '@/shared/planning/forecast-loads'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** A row of the chart, in the order food moves: kettles, fill tables, each canner with its rack under it. */
export type ChartRow = {
  readonly kind: 'kettle' | 'table' | 'canner' | 'rack'
  readonly id: string
  readonly label: string
  readonly person: string | null
}

/** Filled left of now, outlined right of it; what runs is filled up to now. */
export type Progress = 'done' | 'running' | 'to-come'

/** A kettle batch in its kettle or on its fill table. */
export type ChartBar = {
  readonly rowId: string
  readonly batchId: string
  readonly code: string
  readonly preparationId: string
  readonly stage: 'cook' | 'fill'
  readonly start: KitchenTime
  readonly end: KitchenTime
  readonly progress: Progress
}

/** A corner of a heat outline: a minute of the day, and a height from 0 (cold) over 1 (full boil or full pressure). */
export type HeatPoint = { readonly at: KitchenTime; readonly level: number }

/** The heat of one load: its outline, the process block in it, and what is written on them. */
export type HeatProfile = {
  readonly rowId: string
  readonly loadId: string
  readonly code: string
  /** 'D1', or 'J1 J2' where batches share the load. */
  readonly label: string
  readonly preparationId: string
  readonly outline: readonly HeatPoint[]
  readonly block: { readonly start: KitchenTime; readonly end: KitchenTime; readonly minutes: number }
  /** Pressure only: the flat shelf on which three steam strokes stand. */
  readonly vent: { readonly start: KitchenTime; readonly end: KitchenTime } | null
  readonly jars: number
  readonly progress: Progress
  /** Whole minutes to the end of the process, while it runs; null otherwise. */
  readonly minutesLeft: number | null
}

/** The batch's own line where it leaves one row and falls to the next. */
export type ChartFall = {
  readonly batchId: string
  readonly preparationId: string
  readonly from: { readonly rowId: string; readonly at: KitchenTime }
  readonly to: { readonly rowId: string; readonly at: KitchenTime }
  readonly toCome: boolean
  /** Filled jars that wait for their canner: the latest minute, and whether it is passed; null on other falls. */
  readonly wait: { readonly stopAt: KitchenTime; readonly late: boolean } | null
}

/** Minutes lost before a load, hollow and brass, between its planned and its real start. */
export type LateChip = {
  readonly rowId: string
  readonly loadId: string
  readonly from: KitchenTime
  readonly to: KitchenTime
  readonly label: string
}

/** A soak since the evening before: a long thin level line with the household's name. */
export type SoakLine = {
  readonly preparationId: string
  readonly batchIds: readonly string[]
  readonly household: string
  readonly start: KitchenTime
  readonly end: KitchenTime
}

/** All that a wall chart shows, in minutes of the day and rows: no lengths, no colours. */
export type WallChart = {
  readonly from: KitchenTime
  readonly to: KitchenTime
  readonly now: KitchenTime | null
  readonly rows: readonly ChartRow[]
  readonly bars: readonly ChartBar[]
  readonly profiles: readonly HeatProfile[]
  readonly falls: readonly ChartFall[]
  readonly soaks: readonly SoakLine[]
  readonly chips: readonly LateChip[]
  /** Brass dots from the last load to the double line; null when nothing is to spare. */
  readonly slack: { readonly rowId: string; readonly from: KitchenTime; readonly to: KitchenTime } | null
  /** The double line: canners must be empty. */
  readonly emptyBy: KitchenTime
  readonly cleanUp: { readonly from: KitchenTime; readonly to: KitchenTime }
  readonly closedFrom: KitchenTime
  /** Loads under which the bar of the critical chain lies, in order of time, cut at each hand-over. */
  readonly criticalChain: readonly {
    readonly rowId: string
    readonly loadId: string
    readonly from: KitchenTime
    readonly to: KitchenTime
  }[]
  readonly finishAt: KitchenTime
  /** Minutes between the finish and the double line; negative when over. */
  readonly spareMinutes: number
  /** Minutes by which the finish is later than planned. */
  readonly lateMinutes: number
}

const LOW = 0.12
const HALF = 0.35
const SHELF = 2 / 3

/**
 * Lays a day out for the wall: what stands in which row from when to when.
 *
 * Before the day `now` is null and everything is drawn as planned. On the day the past is as it was logged and the rest as it now must go.
 */
export function wallChart(
  problem: DayProblem,
  plan: DayPlan,
  actuals: readonly TaskActual[] = [],
  now: KitchenTime | null = null,
): WallChart {
  const forecasts = forecastLoads(plan, actuals, now)
  const finishAt = forecastFinish(plan, forecasts)
  const { window } = problem
  const shiftOf = batchShifts(plan, forecasts, now)
  const batches = plan.batches.map((batch) => shifted(batch, shiftOf.get(batch.id) ?? 0, now))
  const tableOf = (batch: PlannedBatch) =>
    tableRow(plan.tasks.find((task) => task.kind === 'fill' && task.batchId === batch.id)?.tableIndex ?? 0)
  const chain = criticalChain(plan, forecasts)
  return {
    from: Math.min(window.firstLoadAt, ...batches.map((batch) => batch.cookStart)),
    to: Math.max(window.hardEnd, finishAt),
    now,
    rows: rowsOf(problem, plan, forecasts),
    bars: batches.flatMap((batch) => barsOf(batch, tableOf(batch), now)),
    profiles: forecasts.map((forecast) => profileOf(plan, forecast, now)),
    falls: [...batches.map((batch) => kettleFall(batch, tableOf(batch), now)), ...cannerFalls(problem, batches, tableOf, forecasts, now)],
    soaks: soaksOf(problem, plan),
    chips: forecasts.flatMap(chipOf),
    slack: slackOf(chain.at(-1)?.rowId ?? '', finishAt, window.cannersEmptyBy),
    emptyBy: window.cannersEmptyBy,
    cleanUp: { from: window.cannersEmptyBy, to: window.hardEnd },
    closedFrom: window.hardEnd,
    criticalChain: chain,
    finishAt,
    spareMinutes: window.cannersEmptyBy - finishAt,
    lateMinutes: finishAt - plan.finishAt,
  }
}

const tableRow = (index: number) => `fill-table-${index + 1}`
const rackRow = (cannerId: string) => `rack of ${cannerId}`

function progressOf(start: KitchenTime, end: KitchenTime, now: KitchenTime | null): Progress {
  if (now === null || start >= now) return 'to-come'
  return end <= now ? 'done' : 'running'
}

/** How much later each batch's work must be because its load is; work that has begun is not moved. */
function batchShifts(plan: DayPlan, forecasts: readonly LoadForecast[], now: KitchenTime | null): Map<string, number> {
  const shifts = new Map<string, number>()
  for (const { load, lateMinutes } of forecasts) {
    for (const { batchId } of load.batchParts) {
      const batch = plan.batches.find((entry) => entry.id === batchId)
      const hasBegun = batch && now !== null && batch.cookStart < now
      if (!hasBegun && lateMinutes > 0) shifts.set(batchId, Math.max(lateMinutes, shifts.get(batchId) ?? 0))
    }
  }
  return shifts
}

function shifted(batch: PlannedBatch, by: number, now: KitchenTime | null): PlannedBatch {
  const late = now === null ? by : Math.max(by, 0)
  return {
    ...batch,
    cookStart: batch.cookStart + late,
    cookEnd: batch.cookEnd + late,
    fillStart: batch.fillStart + late,
    fillEnd: batch.fillEnd + late,
  }
}

function rowsOf(problem: DayProblem, plan: DayPlan, forecasts: readonly LoadForecast[]): ChartRow[] {
  const usedKettles = problem.kettles.filter((kettle) => plan.tasks.some((task) => task.kettleId === kettle.id))
  const usedCanners = problem.canners.filter((canner) => forecasts.some((forecast) => forecast.cannerId === canner.id))
  const nameOf = (id: string) => problem.people.find((person) => person.id === id)?.name ?? null
  const operator = (cannerId: string) =>
    mostOften(forecasts.filter((entry) => entry.cannerId === cannerId).map((entry) => entry.load.operatorId))
  const row = (kind: ChartRow['kind'], id: string, label: string, person: string | null = null): ChartRow => ({ kind, id, label, person })
  return [
    ...usedKettles.map((kettle) => row('kettle', kettle.id, kettle.label)),
    ...Array.from({ length: problem.fillTables }, (_, index) =>
      row('table', tableRow(index), problem.fillTables === 1 ? 'Fill table' : `Fill table ${index + 1}`),
    ),
    ...usedCanners.flatMap((canner) => [
      row('canner', canner.id, canner.label, nameOf(operator(canner.id))),
      row('rack', rackRow(canner.id), 'Rack'),
    ]),
  ]
}

function mostOften(ids: readonly string[]): string {
  const counts = new Map<string, number>()
  for (const id of ids) counts.set(id, (counts.get(id) ?? 0) + 1)
  return [...counts].sort((a, b) => b[1] - a[1] || a[0].localeCompare(b[0]))[0]?.[0] ?? ''
}

function barsOf(batch: PlannedBatch, table: string, now: KitchenTime | null): ChartBar[] {
  const { id, code, preparationId } = batch
  const bar = (rowId: string, stage: ChartBar['stage'], start: KitchenTime, end: KitchenTime): ChartBar => ({
    ...{ rowId, batchId: id, code, preparationId, stage, start, end },
    progress: progressOf(start, end, now),
  })
  return [bar(batch.kettleId, 'cook', batch.cookStart, batch.cookEnd), bar(table, 'fill', batch.fillStart, batch.fillEnd)]
}

/**
 * The outline of a load's heat, as points from its first minute to its last, all at least 0 and at most 1.
 *
 * Boiling water: low step, slope, full block, half step, low step. Pressure: the slope has a flat shelf at two thirds while it vents, and
 * the cool-down is the same slope falling.
 */
export function heatOutlineOf(
  forecast: Pick<LoadForecast, 'load' | 'loadAt' | 'heatAt' | 'boilAt' | 'processEndAt' | 'restEndAt' | 'emptyAt'>,
): HeatPoint[] {
  const { load, loadAt, heatAt, boilAt, processEndAt, restEndAt, emptyAt } = forecast
  const vent = ventOf(forecast)
  const rise = vent ? [point(vent.start, SHELF), point(vent.end, SHELF)] : []
  const fall =
    load.method === 'pressure' ? [point(restEndAt, LOW)] : [point(processEndAt, HALF), point(restEndAt, HALF), point(restEndAt, LOW)]
  return [
    point(loadAt, 0),
    point(loadAt, LOW),
    point(heatAt, LOW),
    ...rise,
    point(boilAt, 1),
    point(processEndAt, 1),
    ...fall,
    point(emptyAt, LOW),
    point(emptyAt, 0),
  ]
}

const point = (at: KitchenTime, level: number): HeatPoint => ({ at, level })

/** The venting keeps its length before the pressure, whatever the come-up took. */
function ventOf({ load, boilAt }: Pick<LoadForecast, 'load' | 'boilAt'>): HeatProfile['vent'] {
  if (load.ventAt === null || load.ventEndAt === null) return null
  return { start: boilAt - (load.boilAt - load.ventAt), end: boilAt - (load.boilAt - load.ventEndAt) }
}

function profileOf(plan: DayPlan, forecast: LoadForecast, now: KitchenTime | null): HeatProfile {
  const { load, cannerId, boilAt, processEndAt, loadAt, emptyAt, jars } = forecast
  const codes = load.batchParts.map((part) => plan.batches.find((batch) => batch.id === part.batchId)?.code ?? part.batchId)
  const isProcessing = now !== null && forecast.clockRuns && boilAt <= now && now < processEndAt
  return {
    ...{ rowId: cannerId, loadId: load.id, code: load.code, label: codes.join(' '), preparationId: load.preparationId, jars },
    outline: heatOutlineOf(forecast),
    block: { start: boilAt, end: processEndAt, minutes: load.processMinutes },
    vent: ventOf(forecast),
    progress:
      now === null || forecast.state === 'to-come'
        ? 'to-come'
        : progressOf(loadAt, forecast.state === 'done' ? Math.min(emptyAt, now) : emptyAt, now),
    minutesLeft: isProcessing ? processEndAt - now : null,
  }
}

function kettleFall(batch: PlannedBatch, table: string, now: KitchenTime | null): ChartFall {
  return {
    ...{ batchId: batch.id, preparationId: batch.preparationId, wait: null },
    from: { rowId: batch.kettleId, at: batch.cookEnd },
    to: { rowId: table, at: batch.fillStart },
    toCome: now === null || batch.cookEnd > now,
  }
}

function cannerFalls(
  problem: DayProblem,
  batches: readonly PlannedBatch[],
  tableOf: (batch: PlannedBatch) => string,
  forecasts: readonly LoadForecast[],
  now: KitchenTime | null,
): ChartFall[] {
  return forecasts.flatMap(({ load, cannerId, loadAt, emptyAt }) => {
    const limit = problem.preparations.find((entry) => entry.id === load.preparationId)?.filledToLoadedLimitMinutes ?? 0
    const inLoad = batches.filter((batch) => load.batchParts.some((part) => part.batchId === batch.id))
    const one = { preparationId: load.preparationId }
    const down = inLoad.map((batch): ChartFall => {
      const stopAt = batch.fillEnd + limit
      const wait = { stopAt, late: loadAt > stopAt }
      return {
        ...one,
        batchId: batch.id,
        from: { rowId: tableOf(batch), at: batch.fillEnd },
        to: { rowId: cannerId, at: loadAt },
        toCome: now === null || batch.fillEnd > now,
        wait,
      }
    })
    const out: ChartFall = {
      ...one,
      batchId: inLoad[0]?.id ?? '',
      from: { rowId: cannerId, at: emptyAt },
      to: { rowId: rackRow(cannerId), at: emptyAt },
      toCome: now === null || emptyAt > now,
      wait: null,
    }
    return [...down, out]
  })
}

function soaksOf(problem: DayProblem, plan: DayPlan): SoakLine[] {
  return plan.nightBefore.map((step) => ({
    preparationId: step.preparationId,
    batchIds: step.batchIds,
    household: problem.households.find((household) => household.id === step.householdId)?.name ?? step.householdId,
    start: step.startAt,
    end: step.endAt,
  }))
}

function chipOf({ load, state, cannerId, loadAt, lateMinutes }: LoadForecast): LateChip[] {
  if (state === 'to-come' || lateMinutes <= 0) return []
  return [{ rowId: cannerId, loadId: load.id, from: load.loadAt, to: loadAt, label: `+${lateMinutes}` }]
}

const slackOf = (rowId: string, finishAt: KitchenTime, emptyBy: KitchenTime): WallChart['slack'] =>
  finishAt < emptyBy ? { rowId, from: finishAt, to: emptyBy } : null

/** Back from the load that now ends last, along its canner, as long as each load begins where the one before it ends. */
function criticalChain(plan: DayPlan, forecasts: readonly LoadForecast[]): WallChart['criticalChain'] {
  const chain: LoadForecast[] = []
  let next = [...forecasts].sort(
    (a, b) => b.emptyAt - a.emptyAt || Number(plan.criticalLoadIds.includes(b.load.id)) - Number(plan.criticalLoadIds.includes(a.load.id)),
  )[0]
  while (next) {
    chain.unshift(next)
    const { cannerId, loadAt, load } = next
    const takenFrom = loadAt - (load.loadAt - load.jarBoilAt)
    next = forecasts.find((other) => other.cannerId === cannerId && other.emptyAt === takenFrom && !chain.includes(other))
  }
  return chain.map(({ cannerId, load, loadAt, emptyAt }) => ({ rowId: cannerId, loadId: load.id, from: loadAt, to: emptyAt }))
}
