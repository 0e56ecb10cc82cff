import { JAR_SIZES, type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import { type Gauge, type Method, PACKS, type Pack } from '@/shared/kitchen/methods'
import { HAZARDS, type HazardId } from './hazards'
import type { Band, PublishedRow, Schedule } from './published-row'
import { PUBLISHED_ROWS } from './published-rows'
import { type JarAcid, type ScheduledProcess, TABLES_AS_OF } from './scheduled-process'
import { UTAH_TIMETABLE } from './sources'
import { STERILE_BELOW_MINUTES, STERILISING_SOURCE } from './sterilising'

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

/** Longest process, elevation included, in an atmospheric steam canner. Source: University of Missouri Extension (2017), Conditions for steam canning. */
export const STEAM_LIMIT_MINUTES = 45

/** What the published rule lets a smaller jar use. Sources: Kansas State University Extension, You Asked It (2019), Choose the right jar; Michigan State University Extension (2018) for half-pints. */
const NEXT_LISTED: Partial<Record<JarSize, JarSize>> = { 'half-pint': 'pint', '12-oz': 'pint', 'pint-and-half': 'quart' }

const ALWAYS =
  'Follow the tested recipe exactly; local codes and licensed practice come first. Selling or donating home-canned food is often not allowed.'

/** The printed lines for a food, canner, pack and jar; several where a table prints several pressures, undefined where there is none. */
export const linesOf = (foodId: string, canner: CannerKind, pack: Pack, jar: JarSize): ReadyLines | undefined =>
  LINES.get(foodId)?.[canner]?.[pack]?.[jar]

/** The packs that are printed for a food in a canner, in the order hot, raw; with a jar, those printed for that jar. */
export const packsFor = (foodId: string, canner: CannerKind, jar?: JarSize): Pack[] =>
  PACKS.filter((pack) => (jar === undefined ? JAR_SIZES : [jar]).some((size) => linesOf(foodId, canner, pack, size) !== undefined))

/** The largest jar printed for a food in a canner, in one pack or in any. */
export const largestJarFor = (foodId: string, canner: CannerKind, pack: Pack | null): JarSize =>
  JAR_SIZES.reduce((largest, jar) => (packsFor(foodId, canner, jar).some((each) => pack === null || each === pack) ? jar : largest))

function buildLines(): Map<string, FoodLines> {
  const lines = new Map<string, FoodLines>()
  for (const row of PUBLISHED_ROWS) {
    addRow(lines, row, row.gauge ?? (row.method as Exclude<Method, 'pressure'>))
    if (row.method === 'boiling-water' && !hasOwnSteamRow(row)) addRow(lines, row, 'atmospheric-steam')
  }
  return lines
}

const hasOwnSteamRow = ({ foodId }: PublishedRow): boolean =>
  PUBLISHED_ROWS.some((row) => row.foodId === foodId && row.method === 'atmospheric-steam')

function addRow(lines: Map<string, FoodLines>, row: PublishedRow, canner: CannerKind): void {
  const ofFood: FoodLines = lines.get(row.foodId) ?? {}
  const ofCanner: { [P in Pack]?: { [J in JarSize]?: ReadyLines } } = {}
  lines.set(row.foodId, { ...ofFood, [canner]: ofCanner })
  for (const pack of PACKS) {
    for (const jar of JAR_SIZES) {
      const [first, ...others] = schedulesFor(row, pack, jar).map(({ schedule, jarRow }) =>
        readyLine(row, schedule, canner, pack, jar, jarRow),
      )
      if (first !== undefined) ofCanner[pack] = { ...ofCanner[pack], [jar]: [first, ...others] }
    }
  }
}

/** The schedules printed for this jar, else those of the next listed size that guidance lets it use. */
function schedulesFor(row: PublishedRow, pack: Pack, jar: JarSize): { schedule: Schedule; jarRow: JarSize }[] {
  const printed = row.schedules.filter((each) => each.packs.includes(pack))
  const at = (size: JarSize) => printed.filter((each) => each.jars.includes(size)).map((schedule) => ({ schedule, jarRow: size }))
  const own = at(jar)
  const next = NEXT_LISTED[jar]
  return own.length > 0 || next === undefined ? own : at(next)
}

function readyLine(row: PublishedRow, schedule: Schedule, canner: CannerKind, pack: Pack, jar: JarSize, jarRow: JarSize): ReadyLine {
  const option = schedule.option ?? null
  const bands = bandsInUse(row, schedule)
  return { row, option, bands: bands.map((band) => ({ band, process: readyProcess(row, schedule, canner, pack, jar, jarRow, band) })) }
}

/** The stricter reading above 8,000 ft: the longer printed time where there is one, otherwise nothing. */
function bandsInUse(row: PublishedRow, { bands, utahMinutesAbove8000 }: Schedule): Band[] {
  if (utahMinutesAbove8000 === undefined && row.closesAt8000Feet === undefined) return [...bands]
  const closed = bands.map((band) => (band.maxFeet === null ? { ...band, maxFeet: 8000 } : band))
  if (utahMinutesAbove8000 === undefined) return closed
  return [...closed, { minFeet: 8001, maxFeet: 10000, printed: '8,001-10,000 ft', minutes: utahMinutesAbove8000, psi: null }]
}

function readyProcess(
  row: PublishedRow,
  schedule: Schedule,
  canner: CannerKind,
  pack: Pack,
  jar: JarSize,
  jarRow: JarSize,
  band: Band,
): ReadyBand['process'] {
  const { minutes } = band
  const isSteam = canner === 'atmospheric-steam'
  if (minutes === null || (isSteam && minutes > STEAM_LIMIT_MINUTES)) return null

  const method = isSteam ? 'atmospheric-steam' : row.method
  const source = band.minFeet === 8001 ? UTAH_TIMETABLE : row.source
  const exception = row.headspaceExceptions?.find((each) => each.pack === pack && each.jar === jarRow)
  return {
    processId: row.id,
    rowKey: rowKey(row, schedule, method, pack, jarRow, band),
    edition: source.edition,
    tablesAsOf: TABLES_AS_OF,
    foodId: row.foodId,
    food: row.food,
    acidity: row.acidity,
    method,
    gauge: row.gauge,
    pack,
    jar,
    jarRow,
    jarNote:
      jar === jarRow ? null : `A ${jarName(jar)} goes at the ${jarName(jarRow)} time, the next size listed; the time is not shortened.`,
    option: schedule.option ?? null,
    otherOptions: otherOptions(row, schedule, pack, jarRow, band),
    minutes,
    psi: band.psi,
    needlePsi: null,
    elevationFeet: band.minFeet,
    band: band.printed,
    bandMinFeet: band.minFeet,
    bandMaxFeet: band.maxFeet,
    headspaceInches: exception?.inches ?? row.headspaceInches,
    headspaceNote: exception?.note ?? null,
    acidification: jarAcid(row, jarRow),
    sterilise: {
      required: minutes < STERILE_BELOW_MINUTES && row.sterileJarsUnder10Minutes === true,
      minutes: null,
      source: STERILISING_SOURCE,
    },
    minutesWithoutSterilising: null,
    packLimits: row.packLimits ?? null,
    source,
    cautions: cautionsFor(row, method),
    notes: [...(row.notes ?? []), ...steamNotes(row, method), ...openBandNotes(row, band)],
    disagreements: [...(row.disagreements ?? []), ...(row.closesAt8000Feet === undefined ? [] : [row.closesAt8000Feet])],
  }
}

const rowKey = (row: PublishedRow, { option }: Schedule, method: Method, pack: Pack, jarRow: JarSize, band: Band): string =>
  [row.id, method, pack, jarRow, option === undefined ? null : `option-${option}`, `${band.minFeet}-${band.maxFeet ?? 'up'}-ft`]
    .filter((part) => part !== null)
    .join('/')

function otherOptions(row: PublishedRow, schedule: Schedule, pack: Pack, jarRow: JarSize, band: Band): ScheduledProcess['otherOptions'] {
  return row.schedules.flatMap((each) => {
    if (each.option === undefined || each === schedule || !each.packs.includes(pack) || !each.jars.includes(jarRow)) return []
    const at = each.bands.find(({ minFeet }) => minFeet === band.minFeet)
    return at?.minutes != null && at.psi !== null ? [{ option: each.option, minutes: at.minutes, psi: at.psi }] : []
  })
}

/** Amounts are printed for pints and quarts; a smaller jar gets the amount of the size whose time it uses. */
function jarAcid({ acidification }: PublishedRow, jarRow: JarSize): JarAcid | null {
  if (acidification === undefined) return null
  if (acidification.kind === 'in-the-recipe') return acidification
  const size = jarRow === 'quart' ? 'quart' : 'pint'
  return {
    kind: 'add-to-each-jar',
    lemonJuiceTbsp: acidification.lemonJuiceTbsp[size],
    citricAcidTsp: acidification.citricAcidTsp[size],
    vinegarTbsp: acidification.vinegarTbsp?.[size] ?? null,
    note: acidification.note,
  }
}

function cautionsFor(row: PublishedRow, method: Method): string[] {
  const ids: HazardId[] = ['local-elevation', 'steam-burn']
  if (method === 'pressure') ids.push('air-in-canner')
  if (row.acidification?.kind === 'add-to-each-jar') ids.push('acidify-tomatoes')
  if (row.acidity !== 'acid') ids.push('tested-recipe-only')
  if (row.acidity === 'low-acid') ids.push('untested-thickener')
  if (/jam|jell|preserve|spread|butter/i.test(row.food)) ids.push('hot-syrup')
  return [...ids.map((id) => HAZARDS[id].caution), ALWAYS]
}

const steamNotes = (row: PublishedRow, method: Method): string[] =>
  method === 'atmospheric-steam' && row.method === 'boiling-water'
    ? [
        `The boiling-water time in a steam canner: acid food only, ${STEAM_LIMIT_MINUTES} min at most with elevation, never opened (University of Missouri Extension, 2017).`,
      ]
    : []

const openBandNotes = (row: PublishedRow, band: Band): string[] =>
  band.maxFeet === null && band.minFeet === 6001 && row.gauge === null
    ? ['Printed with no upper end. No publication read speaks of more than 10,000 ft: above 8,000 ft ask an extension office too.']
    : []

/** Every line that can be answered, by food. */
const LINES: ReadonlyMap<string, FoodLines> = buildLines()
