import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method, Pack } from '@/shared/kitchen/methods'

/** Whether a food is sour by itself, made sour by a tested recipe, or neither (then only pressure canning is published). */
export type Acidity = 'acid' | 'acidified' | 'low-acid'

/** Where a figure is printed: the publication, its edition, and the table or item in it. Never a web copy. */
export type Source = { readonly publication: string; readonly edition: string; readonly section: string }

/**
 * One printed line of a table: what is published from `minFeet` to `maxFeet`, both inclusive, whole feet above sea level.
 *
 * `maxFeet` null means the band is printed without an upper end. `psi` is gauge pressure, null where the method has none.
 * `minutes` null is a printed refusal ("not recommended").
 */
export type Band = {
  readonly minFeet: number
  readonly maxFeet: number | null
  readonly printed: string
  readonly minutes: number | null
  readonly psi: number | null
}

/** What one publication prints for a band where another prints longer: its minutes are not used, but told. */
export type ShorterPrint = { readonly source: Source; readonly minutes: number }

/** Longer minutes that another publication prints for the same food, packs, jars and pressures, by the lowest foot of the band. */
export type LongerPrint = { readonly source: Source; readonly minutesFrom: Readonly<Record<number, number>> }

/** The bands of one printed line for these packs and jars. `option` numbers alternative pressures that one table prints. */
export type Schedule = {
  readonly packs: readonly Pack[]
  readonly jars: readonly JarSize[]
  readonly option?: number
  readonly bands: readonly Band[]
  readonly longerPrint?: LongerPrint
  /** Minutes that the Utah State timetable prints from 8,001 to 10,000 ft, where AIB 539 holds its open band. */
  readonly utahMinutesAbove8000?: number
}

/** Acid that the process depends on: added to each jar (any one of the amounts), or part of the tested recipe. */
export type Acidification =
  | {
      readonly kind: 'add-to-each-jar'
      readonly lemonJuiceTbsp: Readonly<Record<'pint' | 'quart', number>>
      readonly citricAcidTsp: Readonly<Record<'pint' | 'quart', number>>
      readonly vinegarTbsp: Readonly<Record<'pint' | 'quart', number>> | null
      readonly note: string
      /** Publication and section that print the amounts. */
      readonly printedIn: string
    }
  | { readonly kind: 'in-the-recipe'; readonly note: string }

/** Headspace that differs from the row's own for some pack and jar, in inches. */
export type HeadspaceException = {
  readonly pack: Pack
  readonly jar: JarSize
  readonly inches: number
  readonly note: string
}

/** One food by one method, as one publication prints it. */
export type PublishedRow = {
  readonly id: string
  readonly foodId: string
  readonly food: string
  readonly acidity: Acidity
  readonly method: Method
  readonly gauge: Gauge | null
  readonly headspaceInches: number
  readonly headspaceExceptions?: readonly HeadspaceException[]
  /** Jars must be sterile wherever the band in use is under 10 minutes. */
  readonly sterileJarsUnder10Minutes?: true
  readonly acidification?: Acidification
  readonly packLimits?: string
  readonly schedules: readonly Schedule[]
  /** Why the open top band is not used above 8,000 ft, where another publication closes it or prints more. */
  readonly closesAt8000Feet?: string
  readonly source: Source
  /** Independent readings of the whole row on different pages. */
  readonly readers: 1 | 2
  readonly notes?: readonly string[]
  /** Publications that differ: what each prints and which is used. */
  readonly disagreements?: readonly string[]
}

const feet = (whole: number): string => whole.toLocaleString('en-US')

const band = (minFeet: number, maxFeet: number | null, minutes: number | null, psi: number | null): Band => ({
  minFeet,
  maxFeet,
  printed: maxFeet === null ? `Above ${feet(minFeet - 1)} ft` : `${feet(minFeet)}-${feet(maxFeet)} ft`,
  minutes,
  psi,
})

/** Minutes to 1,000 ft, to 6,000 ft, and above. */
export const threeBands = (low: number, middle: number, high: number): Band[] => [
  band(0, 1000, low, null),
  band(1001, 6000, middle, null),
  band(6001, null, high, null),
]

/** Minutes to 1,000 ft, to 3,000 ft, to 6,000 ft, and above. */
export const fourBands = (low: number, lower: number, higher: number, high: number): Band[] => [
  band(0, 1000, low, null),
  band(1001, 3000, lower, null),
  band(3001, 6000, higher, null),
  band(6001, null, high, null),
]

/** The same bands with the top one ending at 8,000 ft, as some editions print it. */
export const endingAt8000 = (bands: readonly Band[]): Band[] =>
  bands.map((each) => (each.maxFeet === null ? band(each.minFeet, 8000, each.minutes, each.psi) : each))

/** Dial gauge: the psi to 2,000, 4,000, 6,000 and 8,000 ft rise by one from `psi`; the table ends there. */
export const dialBands = (minutes: number, psi: number): Band[] => [
  band(0, 2000, minutes, psi),
  band(2001, 4000, minutes, psi + 1),
  band(4001, 6000, minutes, psi + 2),
  band(6001, 8000, minutes, psi + 3),
]

/** Weighted gauge: psi to 1,000 ft and above; null above where the table prints "not recommended". */
export const weightedBands = (minutes: number, psi: number, psiAbove: number | null): Band[] => [
  band(0, 1000, minutes, psi),
  band(1001, null, psiAbove === null ? null : minutes, psiAbove),
]
