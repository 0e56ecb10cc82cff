import { produceKey } from '@/shared/day/produce-amount'
import { type PromisedProduce, produceOfDay, type WeighedProduce } from '@/shared/day/produce-of-day'
import { loadWeightsOf } from '@/shared/recipes/canner-load-weights'
import type { Recipe } from '@/shared/recipes/recipe'

/** Hours of one household on a day: counted, or null when nobody has, beside what was promised. */
export interface CountedHours {
  readonly householdId: string
  readonly minutes: number | null
  readonly promisedMinutes: number
}

/** Minutes by household: as they were counted, and where nobody has counted yet, as they were promised. */
export const minutesGiven = (hours: readonly CountedHours[]): Map<string, number> =>
  new Map(hours.map(({ householdId, minutes, promisedMinutes }) => [householdId, Math.round(minutes ?? promisedMinutes)]))

/**
 * Produce of the day's recipes by household, in hundredths of a pound: what was weighed in less what was sorted out, and of a crop that a household has
 * not brought yet, what it promised. Sugar and vinegar are no produce, and a unit that names no weight is not counted.
 *
 * @param promised - none any more once the kettles are done: what did not come then counts no longer
 */
export function produceGiven(
  recipes: readonly Pick<Recipe, 'batch' | 'process'>[],
  promised: readonly PromisedProduce[],
  weighed: readonly WeighedProduce[],
): Map<string, number> {
  const crops = new Map(recipes.map(({ batch, process }) => [produceKey(batch.produce), process && loadWeightsOf(process.foodId)]))
  const households = new Set([...promised, ...weighed].flatMap(({ householdId }) => householdId ?? []))
  return new Map(
    [...households].map((id) => {
      const own = (of: { readonly householdId: string | null }) => of.householdId === id
      const pounds = [...crops].map(([key, weights]) => {
        const crop = key === null ? null : { key, ...(weights ? { weights } : {}) }
        return (crop && produceOfDay(crop, promised.filter(own), weighed.filter(own))?.usable) ?? 0
      })
      return [id, Math.max(0, Math.round(100 * pounds.reduce((sum, each) => sum + each, 0)))]
    }),
  )
}
