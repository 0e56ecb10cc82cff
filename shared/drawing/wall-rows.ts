/** Heights of a canner's heat on the wall, measured up from its line. */
export type WallHeat = { readonly full: number; readonly step: number; readonly half: number }

/** Where the stations lie down the chart: soaks, middles of kettle and fill-table bars, ground lines of canners. */
export type WallRows = {
  readonly soaks: readonly number[]
  readonly kettles: readonly number[]
  readonly tables: readonly number[]
  readonly canners: readonly number[]
  readonly heat: WallHeat
  /** How far below a canner's line its rack stands. */
  readonly rackBelow: number
  readonly bottom: number
}

/** The highest line of the work; above it stand the hours. */
export const WALL_TOP = 226

const NATURAL = { firstKettle: 36, kettle: 54, toTables: 70, table: 54, toCanners: 162, canner: 196, underCanner: 70 }
const ROOM = 642
const SOAK = 32

/** How many of each stand on the wall; soaks since the evening before have a line each above the kettles. */
export type WallCounts = { readonly soaks?: number; readonly kettles: number; readonly tables: number; readonly canners: number }

/**
 * Puts stations down in the order food moves: soaks, kettles, fill tables, canners with their racks.
 *
 * Three kettles, one table and two canners fill a wall of 1,080 lines; more stations are pushed together, at most to seven tenths, and past that the
 * chart grows downwards. Soaks are words on a line and keep their height.
 */
export function wallRows(counts: WallCounts): WallRows {
  const natural = layOut(counts, 1)
  const kept = (counts.soaks ?? 0) * SOAK + NATURAL.underCanner
  const squeeze = Math.min(1, Math.max(0.7, (ROOM - kept) / (natural.bottom - kept - WALL_TOP)))
  return squeeze === 1 ? natural : layOut(counts, squeeze)
}

function layOut({ soaks = 0, kettles: kettleCount, tables: tableCount, canners: cannerCount }: WallCounts, by: number): WallRows {
  const at = (start: number, pitch: number, count: number) =>
    Array.from({ length: count }, (_, row) => Math.round(start + row * pitch * by))
  const top = WALL_TOP + soaks * SOAK
  const kettles = at(top + NATURAL.firstKettle * by, NATURAL.kettle, kettleCount)
  const lastKettle = kettles.at(-1) ?? top - (NATURAL.toTables - NATURAL.firstKettle) * by
  const tables = at(lastKettle + NATURAL.toTables * by, NATURAL.table, tableCount)
  const lastBar = tables.at(-1) ?? lastKettle
  const canners = at(lastBar + NATURAL.toCanners * by, NATURAL.canner, cannerCount)
  const bottom = (canners.at(-1) ?? lastBar) + NATURAL.underCanner
  return {
    soaks: Array.from({ length: soaks }, (_, lane) => WALL_TOP + (lane + 0.5) * SOAK),
    kettles,
    tables,
    canners,
    heat: { full: Math.round(84 * by), step: 10, half: Math.round(30 * by) },
    rackBelow: Math.round(58 * Math.max(by, 0.9)),
    bottom,
  }
}
