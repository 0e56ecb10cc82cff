import { z } from 'zod'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { GAUGES, METHODS, PACKS } from '@/shared/kitchen/methods'
import { BINDING_CONDITION_IDS } from '@/shared/recipes/own-recipe'
import type { OwnRecipe, OwnRecipeContent } from '@/shared/recipes/own-recipe-content'
import type { ProducePattern } from '@/shared/recipes/recipe'
import { UNITS, type UnitId } from '@/shared/units/units'

/** Units in which a kitchen measures what goes into a kettle. */
export const RECIPE_UNITS = (Object.keys(UNITS) as UnitId[]).filter((unit) => ['volume', 'mass', 'count'].includes(UNITS[unit].dimension))

/** How what is made is drawn on charts and labels. */
export const PATTERNS: readonly ProducePattern[] = ['plum', 'dill', 'tomato', 'peach', 'bean']

const Content = z.object({
  title: z.string(),
  comesFrom: z.string(),
  pattern: z.enum(PATTERNS as [ProducePattern]),
  ingredients: z.array(z.object({ item: z.string(), amount: z.number(), unit: z.enum(RECIPE_UNITS as [UnitId]) })),
  allergens: z.array(z.string()),
  pack: z.enum(PACKS),
  prepBefore: z.enum(['cook', 'fill']),
  kettleUse: z.enum(['jam', 'brine', 'cook']),
  acidFood: z.boolean(),
  scaling: z.enum(['whole-batches-only', 'to-kettle-volume']),
  yields: z.array(z.object({ jar: z.enum(JAR_SIZES), low: z.number(), typical: z.number(), high: z.number() })).min(1),
  prepMinutes: z.number(),
  kettleMinutes: z.number(),
  fillMinutes: z.number(),
  stages: z.array(z.object({ label: z.string(), minutes: z.number() })),
  leadSteps: z.array(z.object({ label: z.string(), hours: z.number(), where: z.string() })),
}) satisfies z.ZodType<OwnRecipeContent>

/** A version of a group's own recipe with the conditions that stand confirmed, as it is read back from its rows. */
export const SavedOwnRecipe = z.object({
  number: z.number().int(),
  content: Content,
  foodId: z.string().nullable(),
  pack: z.enum(PACKS).nullable(),
  method: z.enum(METHODS).nullable(),
  gauge: z.enum(GAUGES).nullable(),
  conditions: z.array(z.object({ condition: z.enum(BINDING_CONDITION_IDS), statement: z.string(), edition: z.string() })),
})

/**
 * A kept version as the rules take it.
 *
 * @throws ZodError when the row is not one of ours: a recipe that cannot be read is not guessed at
 */
export function readOwnRecipe(id: string, row: unknown): OwnRecipe {
  const { number, content, foodId, pack, method, gauge, conditions } = SavedOwnRecipe.parse(row)
  return {
    id,
    version: number,
    content,
    binding: foodId && pack && method ? { foodId, pack, method, gauge } : null,
    confirmed: conditions.map(({ condition, ...words }) => ({ id: condition, ...words })),
  }
}
