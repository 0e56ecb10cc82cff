import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Result } from '@/shared/result/result'
import { chanceOfPromise, forecastBatches, type Losses, USUAL_LOSSES, type YieldForecast, type YieldProblem } from './predict-yield'
import type { Recipe } from './recipe'

/** Batches enough for a promise, with what they give. */
export type BatchesWanted = { readonly batches: number; readonly chance: number; readonly forecast: YieldForecast }

/** Most batches that are tried: more would not be one day's work. */
const MOST_BATCHES = 60

/** Sums of chances miss a whole 1 by a hair. */
const ROUNDING = 1e-9

/**
 * The fewest whole batches that keep a promise of sealed jars with the chance asked for.
 *
 * @param jarsWanted - 1 or more
 * @param chance - 0 to 1, usually 0.9
 * @returns the first number of batches that is enough; 60 batches with their chance when not even those are
 */
export function batchesWanted(
  recipe: Pick<Recipe, 'batch' | 'title'>,
  jar: JarSize,
  jarsWanted: number,
  chance: number,
  losses: Losses = USUAL_LOSSES,
): Result<BatchesWanted, YieldProblem> {
  for (let batches = 1; ; batches += 1) {
    const forecast = forecastBatches(recipe, jar, batches, losses)
    if (!forecast.ok) return forecast
    const reached = chanceOfPromise(forecast.value, jarsWanted)
    if (reached >= chance - ROUNDING || batches >= MOST_BATCHES)
      return { ok: true, value: { batches, chance: reached, forecast: forecast.value } }
  }
}
