import { ok, type Result, refuse } from '@/shared/result/result'

/** Something of which only a range is known. */
export type Range = { readonly low: number; readonly typical: number; readonly high: number }

/** What goes into the kettle. Soluble solids of juice or fruit in percent by mass (degrees Brix). */
export type BoilDownInput = {
  /** Litres of juice, or of juice and water together. */
  readonly juiceLitres: number
  readonly juiceBrix: Range
  readonly sugarKilograms: number
}

/** What a boiled-down preserve ends as, with the inputs it rests on. */
export type BoilDownYield = {
  readonly litres: Range
  readonly kilograms: Range
  /** The finish that was reckoned with, percent soluble solids by mass. */
  readonly finishBrix: number
  /** The part of the first volume (juice with its sugar dissolved) that is left, 0 to 1. */
  readonly volumeLeft: Range
  readonly inputs: BoilDownInput
}

/** Why no boil-down is reckoned: an amount below zero, or a mixture sweeter than its finish (`brix`, percent) from the start. */
export type BoilDownProblem = { readonly kind: 'not-positive' } | { readonly kind: 'already-past-finish'; readonly brix: number }

/** Least soluble solids of finished jam and jelly, percent by mass. Source: 21 CFR 150.140(d) and 150.160(d), standards of identity. */
export const FINISH_BRIX = 65

/** Kilograms in a litre of sucrose solution at 65 degrees Brix and 20 C, to two decimals. Source: National Bureau of Standards Circular C440 (1942). */
export const FINISH_KG_PER_LITRE = 1.32

/** Litres that a kilogram of sugar adds to a solution: the volume of the solid, 1 / 1.587. Source: density of sucrose, National Bureau of Standards Circular C440 (1942). */
const LITRES_PER_KG_SUGAR = 1 / 1.587

/**
 * How much jam or jelly is left when juice and sugar are boiled down to 65 degrees Brix: solids in are solids out, only water leaves.
 *
 * A mass balance, not a promise: pulp, scum and the cook's hand move it. Acid and pectin are not counted.
 */
export function boilDown(inputs: BoilDownInput): Result<BoilDownYield, BoilDownProblem> {
  const { juiceLitres, juiceBrix, sugarKilograms } = inputs
  if (!(juiceLitres > 0 && juiceBrix.low >= 0 && sugarKilograms >= 0)) return refuse({ kind: 'not-positive' })
  const startBrix = (100 * solids(inputs, juiceBrix.high)) / (juiceKilograms(juiceLitres, juiceBrix.high) + sugarKilograms)
  if (startBrix >= FINISH_BRIX) return refuse({ kind: 'already-past-finish', brix: startBrix })

  const kilograms = eachOf(juiceBrix, (brix) => solids(inputs, brix) / (FINISH_BRIX / 100))
  const litres = eachOf(kilograms, (mass) => mass / FINISH_KG_PER_LITRE)
  const atFirst = juiceLitres + sugarKilograms * LITRES_PER_KG_SUGAR
  return ok({ litres, kilograms, finishBrix: FINISH_BRIX, volumeLeft: eachOf(litres, (each) => each / atFirst), inputs })
}

/** Jars that a volume fills, the last one part-full: every started jar counts. */
export const jarsToHold = (litres: number, jarMillilitres: number): number => Math.ceil((litres * 1000) / jarMillilitres - 1e-9)

/** Jars to sterilise for jars expected: about a fifth more (common practice). */
export const jarsToSterilise = (jarsExpected: number): number => Math.ceil((jarsExpected * 6) / 5)

/** Kilograms of soluble solids in juice and sugar together. */
const solids = ({ juiceLitres, sugarKilograms }: BoilDownInput, brix: number): number =>
  (juiceKilograms(juiceLitres, brix) * brix) / 100 + sugarKilograms

/** Juice weighs 0.4 % more than water for each degree Brix. Source: National Bureau of Standards Circular C440 (1942), 0 to 15 degrees. */
const juiceKilograms = (litres: number, brix: number): number => litres * (1 + 0.004 * brix)

const eachOf = ({ low, typical, high }: Range, reckon: (value: number) => number): Range => ({
  low: reckon(low),
  typical: reckon(typical),
  high: reckon(high),
})
