import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method, Pack } from '@/shared/kitchen/methods'
import type { Acidity, ShorterPrint, Source } from './published-row'

/** Acid for the jar that was asked about, in tablespoons and teaspoons a jar: any one of the amounts, or part of the recipe. */
export type JarAcid = EachJarAcid | { readonly kind: 'in-the-recipe'; readonly note: string }

/** Acid that goes into every jar: any one of the amounts, in tablespoons and teaspoons. */
export type EachJarAcid = {
  readonly kind: 'add-to-each-jar'
  readonly lemonJuiceTbsp: number
  readonly citricAcidTsp: number
  readonly vinegarTbsp: number | null
  readonly note: string
  readonly printedIn: string
}

/** Whether empty jars must be boiled first, and for how many minutes at this elevation (null when they need not be). */
export type JarSterilising = { readonly required: boolean; readonly minutes: number | null; readonly source: Source }

/** One of the pressures that the same table prints for the same food and jar. */
export type ProcessOption = { readonly option: number; readonly minutes: number; readonly psi: number }

/**
 * What a published table says for one food, pack, jar, canner and elevation. Its time and pressure are printed in `source`.
 *
 * `minutes` count from the full boil, or from pressure; `psi` is gauge pressure at a true gauge, null without pressure;
 * `needlePsi` is where the needle of a dial gauge with a known error must stand.
 */
export type ScheduledProcess = {
  /** The published row. */
  readonly processId: string
  /** Row, pack, jar, option and band: the exact printed figure, to be stored with whatever relied on it. */
  readonly rowKey: string
  readonly edition: string
  /** The day these tables were last compared with the publications, as an ISO date. */
  readonly tablesAsOf: string
  readonly foodId: string
  readonly food: string
  readonly acidity: Acidity
  readonly method: Method
  readonly gauge: Gauge | null
  readonly pack: Pack
  /** The jar asked about. */
  readonly jar: JarSize
  /** The jar size whose printed time is used: the same, or the next larger listed. */
  readonly jarRow: JarSize
  readonly jarNote: string | null
  readonly option: number | null
  readonly otherOptions: readonly ProcessOption[]
  readonly minutes: number
  readonly psi: number | null
  readonly needlePsi: number | null
  /** Whole feet above sea level; a part of a foot counts as the next foot. */
  readonly elevationFeet: number
  /** The elevation band as printed. */
  readonly band: string
  readonly bandMinFeet: number
  readonly bandMaxFeet: number | null
  readonly headspaceInches: number
  readonly headspaceNote: string | null
  readonly acidification: JarAcid | null
  readonly sterilise: JarSterilising
  /** Minutes in boiling water after which the jars need no sterilising beforehand; null where `minutes` already suffice. */
  readonly minutesWithoutSterilising: number | null
  readonly packLimits: string | null
  readonly source: Source
  /** What another publication prints for the same band; not used, because it is shorter. Null where all agree. */
  readonly shorterPrint: ShorterPrint | null
  readonly cautions: readonly string[]
  readonly notes: readonly string[]
  readonly disagreements: readonly string[]
}

/** The day these tables were last compared with the publications. */
export const TABLES_AS_OF = '2026-11-25'
