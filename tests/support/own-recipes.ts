import type { OwnRecipe, OwnRecipeContent } from '@/shared/recipes/own-recipe-content'
import { conditionsToConfirm } from '@/shared/recipes/conditions-to-confirm'
import type { ConfirmedCondition } from '@/shared/recipes/own-recipe'

/** Whole plums in syrup as a group might write them down; `changes` replace what is said. Figures are invented. */
export const anOwnRecipe = (changes: Partial<OwnRecipeContent> = {}): OwnRecipeContent => ({
  title: 'Halved plums of the lane',
  comesFrom: 'Written down in the kitchen',
  pattern: 'plum',
  ingredients: [
    { item: 'plums', amount: 9, unit: 'lb' },
    { item: 'sugar', amount: 2, unit: 'us-cup' },
  ],
  allergens: [],
  pack: 'hot',
  prepBefore: 'cook',
  kettleUse: 'cook',
  acidFood: true,
  scaling: 'whole-batches-only',
  yields: [{ jar: 'pint', low: 7, typical: 8, high: 9 }],
  prepMinutes: 40,
  kettleMinutes: 25,
  fillMinutes: 10,
  stages: [{ label: 'Boil the syrup', minutes: 5 }],
  leadSteps: [],
  ...changes,
})

/** A version of it that borrows the table for plums, with nothing confirmed. */
export const aBoundRecipe = (changes: Partial<OwnRecipe> = {}): OwnRecipe => ({
  id: 'own',
  version: 1,
  content: anOwnRecipe(),
  binding: { foodId: 'plums', pack: 'hot', method: 'boiling-water', gauge: null },
  confirmed: [],
  ...changes,
})

/** Every condition of a recipe at these elevations, as somebody would have confirmed it. */
export const allConfirmed = (own: OwnRecipe, ...feet: number[]): ConfirmedCondition[] =>
  conditionsToConfirm(own, feet).map(({ id, statement, edition }) => ({ id, statement, edition }))
