import { type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import type { Method, Pack } from '@/shared/kitchen/methods'
import { type BandInUse, bandsInUse } from './bands-in-use'
import { HAZARDS, type HazardId } from './hazards'
import type { Band, PublishedRow, Schedule, ShorterPrint, Source } from './published-row'
import { type JarAcid, type ScheduledProcess, TABLES_AS_OF } from './scheduled-process'
import { STERILE_BELOW_MINUTES, STERILISING_SOURCE } from './sterilising'

/** Where a figure is printed: the row and its line, the method it is used for (steam takes boiling-water rows), the jar asked about and the jar whose line it is. */
export type PrintedPlace = {
  readonly row: PublishedRow
  readonly schedule: Schedule
  readonly method: Method
  readonly pack: Pack
  readonly jar: JarSize
  readonly jarRow: JarSize
}

/** Longest process, elevation included, in an atmospheric steam canner. Source: University of Missouri Extension (2017), Conditions for steam canning. */
export const STEAM_LIMIT_MINUTES = 45

const ALWAYS =
  'Follow the tested recipe exactly; local codes and licensed practice come first. Selling or donating home-canned food is often not allowed.'

/**
 * What a band says for its pack and jar, as if asked at its lowest foot with a true gauge.
 *
 * @returns null when "not recommended" is printed, or when a steam canner would have to run longer than 45 minutes
 */
export function readyProcess(place: PrintedPlace, { band, source, shorterPrint }: BandInUse): ScheduledProcess | null {
  const { row, schedule, method, pack, jar, jarRow } = place
  const { minutes } = band
  if (minutes === null || (method === 'atmospheric-steam' && minutes > STEAM_LIMIT_MINUTES)) return null

  const exception = row.headspaceExceptions?.find((each) => each.pack === pack && each.jar === jarRow)
  return {
    processId: row.id,
    rowKey: rowKey(place, band),
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
    otherOptions: otherOptions(place, band),
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
    shorterPrint,
    cautions: cautionsFor(row, method),
    notes: [...(row.notes ?? []), ...steamNotes(row, method), ...openBandNotes(row, band)],
    disagreements: [
      ...(shorterPrint === null ? [] : [saysLonger(source, minutes, shorterPrint)]),
      ...(row.disagreements ?? []),
      ...(row.closesAt8000Feet === undefined ? [] : [row.closesAt8000Feet]),
    ],
  }
}

const saysLonger = (longer: Source, minutes: number, shorter: ShorterPrint): string =>
  `${longer.publication} (${longer.edition}) prints ${minutes} min here, ${shorter.source.publication} (${shorter.source.edition}) ${shorter.minutes} min. The longer time is used.`

function rowKey({ row, schedule: { option }, method, pack, jarRow }: PrintedPlace, { minFeet, maxFeet }: Band): string {
  const parts = [row.id, method, pack, jarRow, option === undefined ? null : `option-${option}`, `${minFeet}-${maxFeet ?? 'up'}-ft`]
  return parts.filter((part) => part !== null).join('/')
}

function otherOptions({ row, schedule, pack, jarRow }: PrintedPlace, band: Band): ScheduledProcess['otherOptions'] {
  return row.schedules.flatMap((each) => {
    if (each.option === undefined || each === schedule || !each.packs.includes(pack) || !each.jars.includes(jarRow)) return []
    const { option } = each
    return bandsInUse(row, each).flatMap(({ band: { minFeet, minutes, psi } }) =>
      minFeet === band.minFeet && minutes !== null && psi !== null ? [{ option, minutes, psi }] : [],
    )
  })
}

/** Amounts are printed for pints and quarts; a smaller jar gets the amount of the size whose time it uses. */
export function jarAcid({ acidification }: PublishedRow, jarRow: JarSize): JarAcid | null {
  if (acidification === undefined) return null
  if (acidification.kind === 'in-the-recipe') return acidification
  const size = jarRow === 'quart' ? 'quart' : 'pint'
  return {
    kind: 'add-to-each-jar',
    lemonJuiceTbsp: acidification.lemonJuiceTbsp[size],
    citricAcidTsp: acidification.citricAcidTsp[size],
    vinegarTbsp: acidification.vinegarTbsp?.[size] ?? null,
    note: acidification.note,
    printedIn: acidification.printedIn,
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

function steamNotes(row: PublishedRow, method: Method): string[] {
  return method === 'atmospheric-steam' && row.method === 'boiling-water'
    ? [
        `The boiling-water time in a steam canner: acid food only, ${STEAM_LIMIT_MINUTES} min at most with elevation, never opened (University of Missouri Extension, 2017).`,
      ]
    : []
}

function openBandNotes(row: PublishedRow, band: Band): string[] {
  return band.maxFeet === null && row.gauge === null
    ? ['Printed with no upper end. No publication read speaks of more than 10,000 ft: above 8,000 ft ask an extension office too.']
    : []
}
