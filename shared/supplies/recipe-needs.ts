import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { EachJarAcid } from '@/shared/process/scheduled-process'
import type { Ingredient, Recipe } from '@/shared/recipes/recipe'
import { UNITS, type UnitId } from '@/shared/units/units'
import type { AcidOfJars } from './acid-needs'
import { ingredientKey, sharesWord } from './ingredient-words'

/** A quantity with the unit that it is measured in. */
export interface Measured {
  readonly amount: number
  readonly unit: UnitId
}

/** One product of a day, as far as it must be bought for. */
export interface ProductToMake {
  readonly title: string
  readonly recipe: Pick<Recipe, 'batch' | 'yields' | 'ingredients' | 'loadWeights' | 'scaling'>
  readonly jarSize: JarSize
  /** Whole tested batches; for plain packs `jars` counts, because there a kettle holds what it holds. */
  readonly batches: number
  /** Jars at the typical yield. */
  readonly jars: number
  /** Acid that its process asks for in every jar. */
  readonly acid?: EachJarAcid | null
}

/** What one product takes of one ingredient. */
export interface RecipeNeed extends Measured {
  readonly item: string
  readonly product: string
  /** The crop itself: culls are reckoned on top, and a gift may be named by the crop alone. */
  readonly isProduce: boolean
  readonly isOptional: boolean
  /** The jars that it goes into, where it is the acid of their process. */
  readonly acid?: AcidOfJars
}

/**
 * What the batches of the day's products take. A printed range counts at its high end, so that nothing runs out at the stove; water comes from the tap.
 *
 * Prepared produce ("4½ cups of crushed plums") is bought by the recipe's own weight of raw produce, where that is known.
 */
export const recipeNeeds = (products: readonly ProductToMake[]): RecipeNeed[] =>
  products.flatMap((product) => (product.recipe.scaling === 'to-kettle-volume' ? plainPackNeeds(product) : batchNeeds(product)))

function batchNeeds({ title, recipe, batches }: ProductToMake): RecipeNeed[] {
  if (batches <= 0) return []
  const { produce, producePounds } = recipe.batch
  const bought = recipe.ingredients.filter(({ item }) => !isWater(item))
  const produceLine = bought.find(({ item }) => sharesWord(produce, item))
  return bought.map((ingredient) => {
    const isProduce = ingredient === produceLine
    const isWeighed = UNITS[ingredient.unit].dimension === 'mass'
    const line = { product: title, isProduce, isOptional: ingredient.optional === true }
    if (isProduce && !isWeighed && producePounds !== null)
      return { ...line, item: ingredientKey(produce), amount: producePounds * batches, unit: 'lb' }
    return { ...line, item: ingredientKey(ingredient.item), amount: ofBatch(ingredient, producePounds) * batches, unit: ingredient.unit }
  })
}

/** Jars times the printed weight of a canner load in that jar, and the rest of the recipe in the same proportion. */
function plainPackNeeds({ title, recipe, jarSize, jars }: ProductToMake): RecipeNeed[] {
  if (jars <= 0) return []
  const { batch, loadWeights } = recipe
  const weight = loadWeights.find(({ jar }) => jar === jarSize)
  const perJar = weight ? weight.pounds / weight.jars : (batch.producePounds ?? 0) / batch.yield.typical
  const loads = jars / (weight?.jars ?? batch.yield.typical)
  const produce: RecipeNeed = {
    ...{ item: ingredientKey(batch.produce), product: title, isProduce: true, isOptional: false },
    ...{ amount: toThousandths(perJar * jars), unit: 'lb' },
  }
  const rest = recipe.ingredients.filter(({ item }) => item !== batch.produce && !isWater(item))
  return [
    produce,
    ...rest.map((ingredient) => ({
      ...{ item: ingredientKey(ingredient.item), product: title, isProduce: false, isOptional: ingredient.optional === true },
      ...{ amount: toThousandths(ofBatch(ingredient, batch.producePounds) * loads), unit: ingredient.unit },
    })),
  ]
}

const isWater = (item: string) => /^water\b/i.test(item)

/** One pound of fruit gives at least one cup of clear juice for jelly (kitchen-measures, `juice-per-pound`), so both are reckoned on the pounds. */
function ofBatch({ amount, per }: Ingredient, producePounds: number | null): number {
  const most = typeof amount === 'number' ? amount : amount.high
  return per === undefined ? most : most * (producePounds ?? 1)
}

const toThousandths = (amount: number) => Math.round(amount * 1000) / 1000
