/** Which recipe, in which version, the forms of the page are about. */
export interface RecipePlace {
  readonly groupId: string
  readonly recipeId: string
  readonly version: number
}

export const recipePath = ({ groupId, recipeId }: RecipePlace): string => `/g/${groupId}/recipes/${recipeId}`
