import type { Produce } from '@/app/_drawings/produce'
import { crowdFrom, crowdRows, TALLEST_WALL } from '@/shared/drawing/crowd-rows'
import { type WallHeat, type WallRows, wallRows } from '@/shared/drawing/wall-rows'
import { type WallHours, wallX } from '@/shared/drawing/wall-scale'
import type { ChartBar, SoakLine, WallChart } from '@/shared/planning/wall-chart'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Which pattern stands for which preparation. */
export type ProduceOf = (preparationId: string) => Produce

/** A soak on its own line above the kettles, up to the first of its batches. */
export type SoakLane = { soak: SoakLine; y: number; until: KitchenTime; codes: string }

/** The frame that every part of the timetable is drawn in. */
export type WallFrame = {
  chart: WallChart
  hours: WallHours
  heat: WallHeat
  bottom: number
  soaks: readonly SoakLane[]
  xOf: (time: KitchenTime) => number
  /** Middle of a kettle's or table's bar, ground line of a canner, board of a rack. */
  yOf: (rowId: string) => number
  produceOf: ProduceOf
  /** Dashed and outlined: lies after now. A plan that has not begun is drawn whole. */
  isToCome: (toCome: boolean) => boolean
  /** Canners alone, one line each: a day whose whole chart would be too small to read on the wall. */
  isCrowded: boolean
}

/** Lays a chart's rows and hours out on the wall. */
export function wallFrame(chart: WallChart, produceOf: ProduceOf): WallFrame {
  const hours = {
    from: Math.floor(chart.from / 30) * 30,
    emptyBy: chart.emptyBy,
    closesAt: Math.max(chart.closedFrom, chart.emptyBy),
  }
  const soaking = soaksOf(chart)
  const rows = wallRows(countsOf(chart))
  const lines = linesOf(chart, rows)
  return {
    chart,
    hours,
    heat: rows.heat,
    bottom: rows.bottom,
    soaks: soaking.map((soak, lane) => soakLane(soak, rows.soaks[lane] ?? 0, batchesOf(chart, soak))),
    xOf: (time) => wallX(hours, time),
    yOf: (rowId) => lines.get(rowId) ?? 0,
    produceOf,
    isToCome: (toCome) => toCome && chart.now !== null,
    isCrowded: false,
  }
}

/** True for a day whose whole chart would be too small to read on a wall. */
export const isCrowdedWall = (chart: WallChart): boolean => wallRows(countsOf(chart)).bottom > TALLEST_WALL

/** The same for the wall: where the whole chart would be too small to read, its canners alone. */
export function frameForWall(whole: WallChart, produceOf: ProduceOf): WallFrame {
  const frame = wallFrame(whole, produceOf)
  if (!isCrowdedWall(whole)) return frame
  const from = crowdFrom(frame.hours.from, whole.now)
  const hours = { ...frame.hours, from }
  const canners = whole.rows.filter(({ kind }) => kind === 'canner')
  const { lines, full, bottom } = crowdRows(canners.length)
  const places = new Map(canners.map(({ id }, place) => [id, lines[place] ?? 0]))
  const profiles = whole.profiles.filter(({ outline, block }) => (outline.at(-1)?.at ?? block.end) > from)
  return {
    ...frame,
    chart: { ...whole, rows: canners, bars: [], falls: [], soaks: [], profiles },
    ...{ hours, bottom, soaks: [], isCrowded: true },
    heat: { ...frame.heat, full },
    xOf: (time) => wallX(hours, time),
    yOf: (rowId) => places.get(rowId) ?? 0,
  }
}

const soaksOf = (chart: WallChart) => chart.soaks.filter((soak) => batchesOf(chart, soak).length > 0)

const countsOf = (chart: WallChart) => ({
  ...{ soaks: soaksOf(chart).length, kettles: count(chart, 'kettle') },
  ...{ tables: count(chart, 'table'), canners: count(chart, 'canner') },
})

const count = (chart: WallChart, kind: WallChart['rows'][number]['kind']) => chart.rows.filter((row) => row.kind === kind).length

/** In the order in which they are cooked. */
const batchesOf = (chart: WallChart, soak: SoakLine) =>
  chart.bars.filter((bar) => bar.stage === 'cook' && soak.batchIds.includes(bar.batchId)).sort((a, b) => a.start - b.start)

function soakLane(soak: SoakLine, y: number, batches: readonly ChartBar[]): SoakLane {
  return { soak, y, until: batches[0]?.start ?? soak.end, codes: batches.map(({ code }) => code).join(' ') }
}

/** Racks follow their canner, so the canner before a rack gives its line. */
function linesOf(chart: WallChart, rows: WallRows): Map<string, number> {
  const places = { kettle: [...rows.kettles], table: [...rows.tables], canner: [...rows.canners] }
  let rackLine = 0
  return new Map(
    chart.rows.map((row) => {
      if (row.kind === 'rack') return [row.id, rackLine]
      const line = places[row.kind].shift() ?? 0
      rackLine = line + rows.rackBelow
      return [row.id, line]
    }),
  )
}
