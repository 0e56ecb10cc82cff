import type { JarRange } from '@/shared/allocation/predict-shares'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { type CannerLoadWeight, loadWeightsOf } from '@/shared/recipes/canner-load-weights'
import { afterLosses, atMost, batchChances, type JarChances, jarsAtChance, moreBy, severalBatches } from '@/shared/recipes/jar-chances'
import { jarsPerPound } from '@/shared/recipes/predict-yield'
import type { JarYield, Recipe } from '@/shared/recipes/recipe'
import { yieldInJars } from '@/shared/recipes/yield-in-jars'
import { produceKey } from './produce-amount'

/** A kettle batch as far as it is: planned, or filled with so many jars. Abandoned batches are left out. */
export interface ForecastBatch {
  readonly plannedJars: number
  /** Null until it is filled. */
  readonly jarsFilled: number | null
}

/** A product of the day with its claims and, once the day is planned, its kettle batches. */
export interface ForecastPreparation {
  readonly id: string
  readonly letter: string
  readonly recipe: Pick<Recipe, 'title' | 'batch' | 'scaling' | 'process'> & Parameters<typeof yieldInJars>[0]
  readonly jarSize: JarSize
  /** Null: fridge or freezer. No canner takes its jars, so none can fail to seal. */
  readonly process: unknown
  readonly offered: number
  readonly claimed: number
  readonly spareJars: number
  readonly batches: readonly ForecastBatch[]
}

/** Jars of a hundred that do not seal, as a share from 0 to 1. */
export interface ForecastLosses {
  readonly unsealed: number
}

/** Produce that a preparation needs as planned, in pounds. `poundsPerBatch` is null for plain packs, which take any weight. */
export interface PoundsWanted {
  readonly key: string
  readonly pounds: number
  readonly poundsPerBatch: number | null
  readonly weights?: CannerLoadWeight
}

/** What a preparation needs of its produce; null where its recipe names no weight or mixes several. */
export function poundsWanted(preparation: ForecastPreparation): PoundsWanted | null {
  const { recipe } = preparation
  const key = produceKey(recipe.batch.produce)
  const weights = weightsOf(preparation)
  if (key === null) return null
  if (recipe.scaling === 'whole-batches-only') {
    const perBatch = recipe.batch.producePounds
    return perBatch === null ? null : { key, pounds: perBatch * batchesPlanned(preparation), poundsPerBatch: perBatch, weights }
  }
  const perPound = perPoundOf(preparation)
  return perPound === null ? null : { key, pounds: jarsPlanned(preparation) / perPound.typical, poundsPerBatch: null, weights }
}

/**
 * Jars to fill, with their range, and the chances of sealed ones.
 *
 * @param pounds - produce that there is for it; null reckons with what the plan needs
 * @param logged - jars that earlier batches gave
 */
export function jarsOfPreparation(
  preparation: ForecastPreparation,
  pounds: number | null,
  { unsealed }: ForecastLosses,
  logged: readonly number[] = [],
): { filled: JarRange; sealed: JarChances } {
  const done = preparation.batches.flatMap(({ jarsFilled }) => (jarsFilled === null ? [] : [jarsFilled]))
  const doneJars = done.reduce((total, each) => total + each, 0)
  const { chances, typical } =
    preparation.recipe.scaling === 'whole-batches-only' || perPoundOf(preparation) === null
      ? restInBatches(preparation, pounds, done.length, logged)
      : restByWeight(preparation, pounds, doneJars)
  const filled = moreBy(chances, doneJars)
  return {
    filled: { low: jarsAtChance(filled, 0.9), typical: typical + doneJars, high: jarsAtChance(filled, 0.1) },
    sealed: preparation.process === null ? filled : afterLosses(filled, 1 - unsealed),
  }
}

type Rest = { chances: JarChances; typical: number }

/** Batches that are still to be filled, as many as the produce is enough for. */
function restInBatches(preparation: ForecastPreparation, pounds: number | null, done: number, logged: readonly number[]): Rest {
  const { recipe, jarSize } = preparation
  const planned = batchesPlanned(preparation)
  const perBatch = recipe.batch.producePounds
  const enoughFor = pounds === null || perBatch === null ? planned : Math.min(planned, Math.floor(pounds / perBatch + EDGE))
  const rest = Math.max(0, enoughFor - done)
  const one = yieldInJars(recipe, jarSize)
  return { chances: severalBatches(batchChances(one, logged), rest), typical: rest * one.typical }
}

/** One delivery rises and falls as a whole, so its printed range is not narrowed; more than planned is not filled. */
function restByWeight(preparation: ForecastPreparation, pounds: number | null, doneJars: number): Rest {
  const perPound = perPoundOf(preparation) as JarYield
  const planned = jarsPlanned(preparation)
  const most = Math.max(0, planned - doneJars)
  const left = (pounds ?? planned / perPound.typical) - doneJars / perPound.typical
  const jars = (each: number) => Math.max(0, Math.floor(each * left + EDGE))
  const range = { low: jars(perPound.low), typical: jars(perPound.typical), high: jars(perPound.high) }
  return { chances: atMost(batchChances(range), most), typical: Math.min(most, range.typical) }
}

/** Batches of the plan; before it, enough for the offer with its spare jars. */
const batchesPlanned = ({ recipe, jarSize, offered, spareJars, batches }: ForecastPreparation): number =>
  batches.length > 0 ? batches.length : Math.ceil((offered + spareJars) / Math.max(1, yieldInJars(recipe, jarSize).typical))

const jarsPlanned = ({ offered, spareJars, batches }: ForecastPreparation): number =>
  batches.length > 0 ? batches.reduce((total, each) => total + each.plannedJars, 0) : offered + spareJars

const weightsOf = ({ recipe }: ForecastPreparation): CannerLoadWeight | undefined =>
  recipe.process === null ? undefined : loadWeightsOf(recipe.process.foodId)

/** Jars a pound in the preparation's jar: as printed for it, else by the recipe's own batch. */
function perPoundOf(preparation: ForecastPreparation): JarYield | null {
  const { recipe, jarSize } = preparation
  const weights = weightsOf(preparation)
  const printed = weights && (jarSize === 'pint' || jarSize === 'quart') ? jarsPerPound(weights, jarSize) : null
  if (printed !== null) return printed
  const { producePounds } = recipe.batch
  const { low, typical, high } = yieldInJars(recipe, jarSize)
  if (producePounds === null || typical === 0) return null
  return { low: low / producePounds, typical: typical / producePounds, high: high / producePounds }
}

/** Pounds and jars are quotients: 252 lb at 3 lb a quart must be 84. */
const EDGE = 1e-9
