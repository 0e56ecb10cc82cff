import type { Band, PublishedRow, Schedule, ShorterPrint, Source } from './published-row'
import { UTAH_TIMETABLE } from './sources'

/** A band as it is used: the longest time that a publication prints for it, where it is printed, and the shorter print it takes the place of. */
export type BandInUse = { readonly band: Band; readonly source: Source; readonly shorterPrint: ShorterPrint | null }

/**
 * The bands of a printed line as they are used, lowest first: where another publication prints a longer time for the same food, pack, jar
 * and band, the longer one counts; such lines never print "not recommended". Above 8,000 ft an open band that another publication closes or
 * contradicts is not used.
 */
export function bandsInUse(row: PublishedRow, schedule: Schedule): BandInUse[] {
  const isContradicted = schedule.utahMinutesAbove8000 !== undefined || row.closesAt8000Feet !== undefined
  const below = isContradicted ? schedule.bands.map(closeAt8000) : schedule.bands
  return [...below.map((band) => takeLonger(row, schedule, band)), ...above8000(row, schedule)]
}

const closeAt8000 = (band: Band): Band => (band.maxFeet === null ? { ...band, maxFeet: 8000 } : band)

function takeLonger({ source }: PublishedRow, { longerPrint }: Schedule, band: Band): BandInUse {
  const longer = longerPrint?.minutesFrom[band.minFeet]
  if (longerPrint === undefined || longer === undefined) return { band, source, shorterPrint: null }
  return { band: { ...band, minutes: longer }, source: longerPrint.source, shorterPrint: { source, minutes: Number(band.minutes) } }
}

function above8000({ source }: PublishedRow, { bands, utahMinutesAbove8000 }: Schedule): BandInUse[] {
  if (utahMinutesAbove8000 === undefined) return []
  const band = { minFeet: 8001, maxFeet: 10000, printed: '8,001-10,000 ft', minutes: utahMinutesAbove8000, psi: null }
  return [{ band, source: UTAH_TIMETABLE, shorterPrint: { source, minutes: Number(bands.at(-1)?.minutes) } }]
}
