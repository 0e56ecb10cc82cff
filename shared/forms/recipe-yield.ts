import { z } from 'zod'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { type FruitWithSolids, SOLIDS_FACTORS } from '@/shared/recipes/fruit-solids'
import { orEmpty } from './or-empty'

/** Units in which produce may be said. A field unit such as a bushel is one only where a publication prints it for the food. */
export const PRODUCE_UNITS = ['lb', 'kg', 'field', 'us-cup', 'imp-cup', 'metric-cup', 'us-qt', 'imp-qt', 'L'] as const
export type ProduceUnit = (typeof PRODUCE_UNITS)[number]

/** Units of juice and water, and of sugar. */
export const JUICE_UNITS = ['L', 'us-cup', 'imp-cup', 'metric-cup', 'us-qt', 'imp-qt'] as const
export const SUGAR_UNITS = ['kg', 'lb'] as const
export const FRUITS = Object.keys(SOLIDS_FACTORS) as [FruitWithSolids, ...FruitWithSolids[]]

const amount = (ask: string, most: number) =>
  z
    .string(ask)
    .trim()
    .regex(/^(\d{1,6}|\d{1,3},\d{3})(\.\d{1,3})?$/, ask)
    .transform((typed) => Number(typed.replace(',', '')))
    .pipe(z.number().max(most, `At most ${most.toLocaleString('en-US')}.`))

const NOT_NOTHING = 'More than nothing.'
const ofHundred = orEmpty(amount('Type a number from 0 to 90.', 90))

/** A question about the yield of a recipe, as its forms send it: from produce, from wanted jars, or a boil-down. */
export const RecipeYield = z.strictObject({
  amount: orEmpty(amount('Type the amount as a number, such as 25.', 100_000).refine((each) => each > 0, NOT_NOTHING)),
  unit: orEmpty(z.enum(PRODUCE_UNITS, 'Choose a unit from the list.')),
  jars: orEmpty(
    amount('Type a whole number of jars.', 2000)
      .refine(Number.isInteger, 'Type a whole number of jars.')
      .refine((each) => each > 0, NOT_NOTHING),
  ),
  jar: orEmpty(z.enum(JAR_SIZES, 'Choose a jar from the list.')),
  culls: ofHundred,
  unsealed: ofHundred,
  juice: orEmpty(amount('Type the juice as a number, such as 4.', 1000).refine((each) => each > 0, NOT_NOTHING)),
  water: orEmpty(amount('Type the water as a number, or leave it.', 1000)),
  juiceUnit: orEmpty(z.enum(JUICE_UNITS, 'Choose a unit from the list.')),
  fruit: orEmpty(z.enum(FRUITS, 'Choose a fruit from the list.')),
  sugar: orEmpty(amount('Type the sugar as a number, such as 1.25.', 1000)),
  sugarUnit: orEmpty(z.enum(SUGAR_UNITS, 'Choose kilograms or pounds.')),
})
export type RecipeYield = z.infer<typeof RecipeYield>
export type RecipeYieldField = keyof typeof RecipeYield.shape
