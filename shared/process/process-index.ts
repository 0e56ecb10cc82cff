import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { type Gauge, type Method, PACKS, type Pack } from '@/shared/kitchen/methods'
import { bandsInUse } from './bands-in-use'
import { FOODS } from './food-names'
import type { Band, PublishedRow, Schedule } from './published-row'
import { PUBLISHED_ROWS } from './published-rows'
import { type PrintedPlace, readyProcess } from './ready-process'
import type { ScheduledProcess } from './scheduled-process'

/** A canner as the tables tell them apart: the method, and for pressure the gauge. */
export type CannerKind = Exclude<Method, 'pressure'> | Gauge

/** One band made ready to answer, as if at its lowest foot; null where the table prints "not recommended" or the steam rule forbids it. */
export type ReadyBand = {
  readonly band: Band
  readonly process: ScheduledProcess | null
}

/** All bands of one printed line for one pack and one jar, lowest first and without gaps. */
export type ReadyLine = { readonly row: PublishedRow; readonly option: number | null; readonly bands: readonly ReadyBand[] }

/** The lines printed for one food, canner, pack and jar: one, or one for each pressure option. */
export type ReadyLines = readonly [ReadyLine, ...ReadyLine[]]

type FoodLines = { readonly [C in CannerKind]?: { readonly [P in Pack]?: { readonly [J in JarSize]?: ReadyLines } } }

/** What the published rule lets a smaller jar use. Sources: Kansas State University Extension, You Asked It (2019), Choose the right jar; Michigan State University Extension (2018) for half-pints. */
const NEXT_LISTED: Partial<Record<JarSize, JarSize>> = { 'half-pint': 'pint', '12-oz': 'pint', 'pint-and-half': 'quart' }

/** The printed lines for a food, canner, pack and jar; several where a table prints several pressures, undefined where there is none. */
export const linesOf = (foodId: string, canner: CannerKind, pack: Pack, jar: JarSize): ReadyLines | undefined =>
  linesOfFood(foodId)[canner]?.[pack]?.[jar]

/** The packs that are printed for a food in a canner, in the order hot, raw; with a jar, those printed for that jar. */
export const packsFor = (foodId: string, canner: CannerKind, jar?: JarSize): Pack[] =>
  PACKS.filter((pack) => (jar === undefined ? JAR_SIZES : [jar]).some((size) => linesOf(foodId, canner, pack, size) !== undefined))

/** The largest jar printed for a food in a canner, in any pack. */
export const largestJarFor = (foodId: string, canner: CannerKind): JarSize =>
  JAR_SIZES.reduce((largest, jar) => (packsFor(foodId, canner, jar).length > 0 ? jar : largest))

/** The lines of a food are made ready when it is first asked about: a browser that asks for one food need not build them all. */
function linesOfFood(foodId: string): FoodLines {
  const known = LINES.get(foodId)
  if (known !== undefined) return known
  const lines = buildLines(PUBLISHED_ROWS.filter((row) => row.foodId === foodId))
  if (FOODS.has(foodId)) LINES.set(foodId, lines)
  return lines
}

/** Every line that was asked about, by food. */
const LINES = new Map<string, FoodLines>()

/** Steam first takes the boiling-water rows under the general rule; a row printed for steam then takes their place. */
const buildLines = (rows: readonly PublishedRow[]): FoodLines => ({
  ...Object.fromEntries(
    rows.filter(({ method }) => method === 'boiling-water').map((row) => ['atmospheric-steam', linesOfRow(row, 'atmospheric-steam')]),
  ),
  ...Object.fromEntries(rows.map((row) => [row.gauge ?? row.method, linesOfRow(row, row.method)])),
})

function linesOfRow(row: PublishedRow, method: Method): NonNullable<FoodLines[CannerKind]> {
  const ofCanner: { [P in Pack]?: { [J in JarSize]?: ReadyLines } } = {}
  for (const pack of PACKS) {
    for (const jar of JAR_SIZES) {
      const [first, ...others] = schedulesFor(row, pack, jar).map((printed) => readyLine({ row, method, pack, jar, ...printed }))
      if (first !== undefined) ofCanner[pack] = { ...ofCanner[pack], [jar]: [first, ...others] }
    }
  }
  return ofCanner
}

/** The schedules printed for this jar, else those of the next listed size that guidance lets it use. */
function schedulesFor(row: PublishedRow, pack: Pack, jar: JarSize): { schedule: Schedule; jarRow: JarSize }[] {
  const printed = row.schedules.filter((each) => each.packs.includes(pack))
  const at = (size: JarSize) => printed.filter((each) => each.jars.includes(size)).map((schedule) => ({ schedule, jarRow: size }))
  const own = at(jar)
  const next = NEXT_LISTED[jar]
  return own.length > 0 || next === undefined ? own : at(next)
}

function readyLine(place: PrintedPlace): ReadyLine {
  const { row, schedule } = place
  const bands = bandsInUse(row, schedule).map((used) => ({ band: used.band, process: readyProcess(place, used) }))
  return { row, option: schedule.option ?? null, bands }
}
