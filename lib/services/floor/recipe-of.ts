import 'server-only'
import type { Recipe } from '@/shared/recipes/recipe'
import { recipeById } from '@/shared/recipes/recipe-library'

/** The recipe a preparation names. A preparation can only have been made with one of the library, so a missing one is our own broken promise. */
export function recipeOf(preparation: { readonly id: string; readonly recipeId: string }): Recipe {
  const recipe = recipeById(preparation.recipeId)
  if (!recipe) throw new Error(`preparation ${preparation.id} names the recipe ${preparation.recipeId}, which is not in the library`)
  return recipe
}
