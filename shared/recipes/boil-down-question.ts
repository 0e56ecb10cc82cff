import type { RecipeYield } from '@/shared/forms/recipe-yield'
import { JAR_MILLILITRES, JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { ok, type Result } from '@/shared/result/result'
import { convert } from '@/shared/units/convert'
import type { UnitId } from '@/shared/units/units'
import { dilutedBrix, type FruitWithSolids, fruitBrix } from './fruit-solids'
import type { Recipe } from './recipe'
import { type BoilDownProblem, type BoilDownYield, boilDown, jarsToHold, jarsToSterilise } from './soluble-solids'

/** Jars of one size for a boil-down: to fill, and to sterilise so that none is missing (a fifth more, common practice). */
export type BoilDownJars = { readonly jar: JarSize; readonly low: number; readonly high: number; readonly sterilise: number }

/** What a boil-down ends as, in jars of the recipe, beside what went in. */
export type BoilDownAnswer = {
  readonly fruit: FruitWithSolids
  readonly juiceLitres: number
  readonly waterLitres: number
  readonly yield: BoilDownYield
  readonly jars: readonly BoilDownJars[]
}

/** Preserves that are boiled until they set: no pectin is added, so what is left depends on how much sugar and fruit went in. */
export const isBoiledDown = ({ kettleUse, process }: Pick<Recipe, 'kettleUse' | 'process'>): boolean =>
  kettleUse === 'jam' && process !== null && process.foodId !== 'jam-jelly-added-pectin'

/** Reckons a boil-down as its form asks for it; null while something of it is not said. */
export function askBoilDown(asked: RecipeYield, sizes: readonly JarSize[]): Result<BoilDownAnswer, BoilDownProblem> | null {
  const { juice, water = 0, juiceUnit, fruit, sugar, sugarUnit } = asked
  if (juice === undefined || juiceUnit === undefined || fruit === undefined || sugar === undefined || sugarUnit === undefined) return null
  const juiceLitres = inUnit(juice, juiceUnit, 'L')
  const waterLitres = inUnit(water, juiceUnit, 'L')
  const found = boilDown({
    juiceLitres: juiceLitres + waterLitres,
    juiceBrix: dilutedBrix(fruitBrix(fruit), juiceLitres, waterLitres),
    sugarKilograms: inUnit(sugar, sugarUnit, 'kg'),
  })
  if (!found.ok) return found
  const jars = JAR_SIZES.filter((jar) => sizes.includes(jar)).map((jar) => jarsFor(jar, found.value))
  return ok({ fruit, juiceLitres, waterLitres, yield: found.value, jars })
}

function jarsFor(jar: JarSize, { litres }: BoilDownYield): BoilDownJars {
  const most = jarsToHold(litres.high, JAR_MILLILITRES[jar])
  return { jar, low: jarsToHold(litres.low, JAR_MILLILITRES[jar]), high: most, sterilise: jarsToSterilise(most) }
}

function inUnit(amount: number, from: UnitId, to: UnitId): number {
  const found = convert(amount, from, to)
  return found.ok ? found.value : 0
}
