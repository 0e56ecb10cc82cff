import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { EachJarAcid } from '@/shared/process/scheduled-process'
import { yieldInJars } from '@/shared/recipes/yield-in-jars'
import { convert } from '@/shared/units/convert'
import { ingredientKey } from './ingredient-words'
import type { Measured, ProductToMake, RecipeNeed } from './recipe-needs'

/** The acid of one product's jars. */
export interface AcidOfJars {
  readonly acid: EachJarAcid
  readonly jar: JarSize
  /** Whole jars. */
  readonly jars: number
  /** Of them, jars that get citric acid because it is there; the others get bottled lemon juice. */
  readonly byCitricAcid: number
}

/** Something that is there, as far as it may be citric acid. `said` where its unit was none of ours. */
export interface MaybeCitricAcid extends Measured {
  readonly item: string
  readonly said?: string
}

/**
 * Bottled lemon juice for every jar of the products whose process asks for acid: of the printed ways the one that is listed first. The others stand
 * beside it with their amounts. Batches count at their high yield, because a jar without its acid is not safe.
 *
 * Citric acid that is there takes the place of the juice in as many whole jars as it is enough for, by the amount printed for the process and the jar
 * (USDA AIB No. 539, Guide 3, acidification: 2 tablespoons of juice or 1/2 teaspoon of citric acid a quart, 1 tablespoon or 1/4 teaspoon a pint). A jar gets the
 * one or the other, never a part of each.
 *
 * @param citricAcid - teaspoons that are there, see `citricTeaspoons`
 */
export function acidNeeds(products: readonly ProductToMake[], citricAcid = 0): RecipeNeed[] {
  let left = citricAcid
  return products.flatMap(({ title, recipe, jarSize, batches, jars: typical, acid = null }) => {
    const jars = recipe.scaling === 'to-kettle-volume' ? typical : Math.max(typical, batches * yieldInJars(recipe, jarSize).high)
    if (acid === null || jars <= 0) return []
    const byCitricAcid = Math.min(jars, Math.floor(left / acid.citricAcidTsp + HAIR))
    left -= byCitricAcid * acid.citricAcidTsp
    const line = { item: 'bottled lemon juice', product: title, isProduce: false, isOptional: false }
    const amount = acid.lemonJuiceTbsp * (jars - byCitricAcid)
    return [{ ...line, amount, unit: 'us-tbsp', acid: { acid, jar: jarSize, jars, byCitricAcid } }]
  })
}

/** Teaspoons of citric acid among what is there. By weight it does not count: the amounts are printed in spoons, and nobody measured what one weighs. */
export const citricTeaspoons = (had: readonly MaybeCitricAcid[]): number =>
  had.filter(isCitricAcid).reduce((sum, each) => sum + (each.said === undefined ? (inTeaspoons(each) ?? 0) : 0), 0)

/** Citric acid that is there and does not count. */
export const citricNotCounted = <Had extends MaybeCitricAcid>(had: readonly Had[]): Had[] =>
  had.filter((each) => isCitricAcid(each) && (each.said !== undefined || inTeaspoons(each) === null))

/** A sum of thirds of a spoon must be a whole number of them. */
const HAIR = 1e-6

const isCitricAcid = ({ item }: MaybeCitricAcid) => /\bcitric acid\b/.test(ingredientKey(item))

function inTeaspoons({ amount, unit }: Measured): number | null {
  const spoons = convert(amount, unit, 'us-tsp')
  return spoons.ok ? spoons.value : null
}
