import { z } from 'zod'
import { BINDING_CONDITION_IDS } from '@/shared/recipes/own-recipe'
import type { OwnRecipeContent } from '@/shared/recipes/own-recipe-content'
import { Id, whole } from './fields'
import { gatherOwnRecipe, OWN_RECIPE_ENTRIES, type OwnRecipeTyped } from './own-recipe-entries'

const Version = whole(1, 100_000, 'Which version?')
const Condition = z.enum(BINDING_CONDITION_IDS)
const Statement = z.string().min(1).max(1000)

/** What the new-recipe form sends; its rows are gathered into lists. */
export const AddOwnRecipe: z.ZodType<OwnRecipeContent> = z
  .strictObject(OWN_RECIPE_ENTRIES)
  .transform((typed, context) => gatherOwnRecipe(typed as unknown as OwnRecipeTyped, context))

/** What the change-the-recipe form sends: the whole recipe, and the version that was on the screen. */
export const ChangeOwnRecipe = z
  .strictObject({ ...OWN_RECIPE_ENTRIES, recipeId: Id, version: Version })
  .transform(({ recipeId, version, ...typed }, context) => ({
    recipeId,
    version,
    content: gatherOwnRecipe(typed as unknown as OwnRecipeTyped, context),
  }))
export type ChangeOwnRecipe = z.infer<typeof ChangeOwnRecipe>

/** The canners that tables are printed for, as one choice. */
export const CANNER_KINDS = ['boiling-water', 'atmospheric-steam', 'pressure-dial', 'pressure-weighted'] as const
export type CannerChoice = (typeof CANNER_KINDS)[number]

/** What the choose-a-process form sends; the kitchen's elevation says which line of the table is read. */
export const BindOwnRecipe = z.strictObject({
  recipeId: Id,
  version: Version,
  foodId: z.string('Choose a food.').regex(/^[\w-]{1,80}$/, 'Choose a food of the tables.'),
  canner: z.enum(CANNER_KINDS, 'Choose a canner.'),
  kitchenId: Id,
})
export type BindOwnRecipe = z.infer<typeof BindOwnRecipe>

/** What one tap on a condition sends: the very words that stood there. */
export const ConfirmCondition = z.strictObject({ recipeId: Id, version: Version, condition: Condition, statement: Statement })
export type ConfirmCondition = z.infer<typeof ConfirmCondition>

/** What taking a confirmation back sends. */
export const WithdrawCondition = z.strictObject({ recipeId: Id, condition: Condition, statement: Statement })
export type WithdrawCondition = z.infer<typeof WithdrawCondition>

/** What taking a recipe out of use, or back into it, sends. */
export const RetireOwnRecipe = z.strictObject({ recipeId: Id, retired: z.enum(['yes', 'no']) })
export type RetireOwnRecipe = z.infer<typeof RetireOwnRecipe>
