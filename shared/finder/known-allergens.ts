import { RECIPES } from '@/shared/recipes/recipe-library'
import type { Recipe } from '@/shared/recipes/recipe'

/** The tested recipes of the library whose jars are bound to a food of the process tables. */
export const recipesBoundTo = (foodId: string): Recipe[] => RECIPES.filter(({ process }) => process?.foodId === foodId)

/** Allergens of the tested recipes for a food: those in every one of them, and those in some. */
export function knownAllergens(foodId: string): { readonly always: readonly string[]; readonly sometimes: readonly string[] } {
  const recipes = recipesBoundTo(foodId)
  const named = [...new Set(recipes.flatMap(({ allergens }) => allergens))].sort()
  const isAlways = (allergen: string) => recipes.every(({ allergens }) => allergens.includes(allergen))
  return { always: named.filter(isAlways), sometimes: named.filter((allergen) => !isAlways(allergen)) }
}
