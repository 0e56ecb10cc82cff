import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { EachJarAcid } from '@/shared/process/scheduled-process'
import { yieldInJars } from '@/shared/recipes/yield-in-jars'
import type { ProductToMake, RecipeNeed } from './recipe-needs'

/** The acid of one product's jars. */
export interface AcidOfJars {
  readonly acid: EachJarAcid
  readonly jar: JarSize
  /** Whole jars. */
  readonly jars: number
}

/**
 * Bottled lemon juice for every jar of the products whose process asks for acid: of the printed ways the one that is listed first. The others stand
 * beside it with their amounts. Batches count at their high yield, because a jar without its acid is not safe.
 */
export const acidNeeds = (products: readonly ProductToMake[]): RecipeNeed[] =>
  products.flatMap(({ title, recipe, jarSize, batches, jars: typical, acid = null }) => {
    const jars = recipe.scaling === 'to-kettle-volume' ? typical : Math.max(typical, batches * yieldInJars(recipe, jarSize).high)
    if (acid === null || jars <= 0) return []
    const line = { item: 'bottled lemon juice', product: title, isProduce: false, isOptional: false }
    return [{ ...line, amount: acid.lemonJuiceTbsp * jars, unit: 'us-tbsp', acid: { acid, jar: jarSize, jars } }]
  })
