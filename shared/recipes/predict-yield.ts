import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { CannerLoadWeight } from './canner-load-weights'
import { afterLosses, batchChances, chanceOfAtLeast, expectedJars, type JarChances, jarsAtChance, severalBatches } from './jar-chances'
import type { JarYield, Recipe } from './recipe'
import { yieldInJars } from './yield-in-jars'

/** What is lost on the way, as shares from 0 to 1. */
export type Losses = { readonly culls: number; readonly unsealed: number }

/** Jars with their spread, and the chance of a promise; `inputs` says what it rests on. */
export type YieldForecast = {
  readonly jar: JarSize
  /** Nine days of ten give at least `low`, one of ten more than `high`. */
  readonly low: number
  readonly typical: number
  readonly high: number
  readonly chances: JarChances
  readonly inputs: readonly string[]
}

/** Why nothing is forecast: a share outside 0 to 1, no batches or pounds, or no printed weight for the jar. */
export type YieldProblem =
  | { readonly kind: 'share-out-of-range'; readonly share: number }
  | { readonly kind: 'nothing-to-reckon-with' }
  | { readonly kind: 'no-printed-weight'; readonly jar: JarSize }

/** Seal loss to start from until the group has its own log: 2 of 100 jars (common practice). */
export const USUAL_LOSSES: Losses = { culls: 0, unsealed: 0.02 }

/**
 * The jars that some batches of a recipe give, after seal loss.
 *
 * @param batches - whole tested batches, 1 or more
 * @param logged - jars that earlier batches of the same recipe gave in this jar size
 */
export function forecastBatches(
  recipe: Pick<Recipe, 'batch' | 'title'>,
  jar: JarSize,
  batches: number,
  losses: Losses = USUAL_LOSSES,
  logged: readonly number[] = [],
): Result<YieldForecast, YieldProblem> {
  const wrong = wrongShare(losses)
  if (wrong !== null) return refuse({ kind: 'share-out-of-range', share: wrong })
  if (!(Number.isInteger(batches) && batches > 0)) return refuse({ kind: 'nothing-to-reckon-with' })

  const printed = yieldInJars(recipe, jar)
  const chances = severalBatches(afterLosses(batchChances(printed, logged), 1 - losses.unsealed), batches)
  return ok(
    forecast(jar, chances, [
      `${batches} x ${recipe.title}, printed ${sayRange(printed)} a batch`,
      `${logged.length} logged batches`,
      `${percent(losses.unsealed)} of jars do not seal`,
    ]),
  )
}

/**
 * The jars that a weight of produce gives, from the printed yield of a bushel, lug or crate, or from the printed pounds a load.
 *
 * All jars of one delivery rise and fall together, so the printed range is not narrowed by quantity.
 *
 * @param pounds - produce as delivered, before culls
 */
export function forecastProduce(
  weights: CannerLoadWeight,
  jar: 'pint' | 'quart',
  pounds: number,
  losses: Losses = USUAL_LOSSES,
): Result<YieldForecast, YieldProblem> {
  const wrong = wrongShare(losses)
  if (wrong !== null) return refuse({ kind: 'share-out-of-range', share: wrong })
  if (!(pounds > 0)) return refuse({ kind: 'nothing-to-reckon-with' })
  const perPound = jarsPerPound(weights, jar)
  if (perPound === null) return refuse({ kind: 'no-printed-weight', jar })

  const sound = pounds * (1 - losses.culls)
  const jars = { low: floor(perPound.low * sound), typical: floor(perPound.typical * sound), high: floor(perPound.high * sound) }
  const chances = afterLosses(batchChances(jars), 1 - losses.unsealed)
  return ok(
    forecast(jar, chances, [
      `${Math.round(pounds * 10) / 10} lb of ${weights.food}, ${percent(losses.culls)} culled`,
      `${sayRange(jars)} by ${weights.source.publication}, ${weights.source.section}`,
      `${percent(losses.unsealed)} of jars do not seal`,
    ]),
  )
}

/** The chance that a forecast keeps a promise of so many sealed jars, 0 to 1. */
export const chanceOfPromise = ({ chances }: YieldForecast, jarsPromised: number): number => chanceOfAtLeast(chances, jarsPromised)

/** Jars a pound: the printed load at the middle, the printed field unit as the range about it; null when neither is printed for the jar. */
export function jarsPerPound({ poundsPer7Quarts, poundsPer9Pints, fieldUnit }: CannerLoadWeight, jar: 'pint' | 'quart'): JarYield | null {
  const load = jar === 'quart' ? poundsPer7Quarts : poundsPer9Pints
  if (load === null) return null
  const typical = (jar === 'quart' ? 7 : 9) / load
  if (fieldUnit === null) return { low: typical, typical, high: typical }

  const scale = PINTS[fieldUnit.yields.jar] / PINTS[jar]
  const low = (fieldUnit.yields.low * scale) / fieldUnit.pounds
  const high = (fieldUnit.yields.high * scale) / fieldUnit.pounds
  return { low: Math.min(low, typical), typical, high: Math.max(high, typical) }
}

const PINTS = { pint: 1, quart: 2 } as const

function forecast(jar: JarSize, chances: JarChances, inputs: readonly string[]): YieldForecast {
  return {
    jar,
    low: jarsAtChance(chances, 0.9),
    typical: Math.round(expectedJars(chances)),
    high: jarsAtChance(chances, 0.1),
    chances,
    inputs,
  }
}

const wrongShare = ({ culls, unsealed }: Losses): number | null => [culls, unsealed].find((share) => !(share >= 0 && share < 1)) ?? null

const floor = (jars: number): number => Math.floor(jars + 1e-9)
const percent = (share: number): string => `${Math.round(share * 1000) / 10} %`
const sayRange = ({ low, typical, high }: JarYield): string => `${low} to ${high} jars, typically ${typical}`
