import type { Source } from '@/shared/process/published-row'
import { aib1994, michiganState } from '@/shared/process/sources'

/** A printed temperature at a height, shown beside what is computed. */
export type PrintedTemperature = { readonly feet: number; readonly fahrenheit: number }

/** Boiling point of water by height as the guide prints it; it lies up to 1 F above the standard atmosphere at 10,000 ft. */
export const PRINTED_BOILING_POINTS: { readonly rows: readonly PrintedTemperature[]; readonly source: Source } = {
  source: aib1994('Process adjustments at high altitudes'),
  rows: printed([212, 210.2, 208.5, 206.7, 204.9, 203.2, 201.5, 199.8, 198.1, 196.4, 194.7]),
}

/** Gel point of jam and jelly by height, whole degrees as printed; nothing is printed between the steps. */
export const PRINTED_GEL_POINTS: { readonly rows: readonly PrintedTemperature[]; readonly source: Source } = {
  source: michiganState('Making jams without added pectin (item 01600890)'),
  rows: printed([220, 218, 216, 214, 212, 211, 209, 207, 205]),
}

/** The printed row at exactly this height, or the nearest below it: never a value between two rows. */
export const printedAtOrBelow = (rows: readonly PrintedTemperature[], feet: number): PrintedTemperature | undefined =>
  rows.findLast((row) => row.feet <= feet)

function printed(fahrenheit: readonly number[]): PrintedTemperature[] {
  return fahrenheit.map((each, thousand) => ({ feet: thousand * 1000, fahrenheit: each }))
}
