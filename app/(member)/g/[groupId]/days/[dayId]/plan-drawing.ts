import type { ProduceOf } from '@/app/_drawings/wall-frame'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { kettleWorks } from '@/shared/planning/kettle-works'
import { recipeById } from '@/shared/recipes/recipe-library'

/** A plan with what it was made for. */
export type Planned = { readonly problem: DayProblem; readonly plan: DayPlan }

/** The pattern that each product of a day is drawn with. */
export function producePatterns(problem: DayProblem): ProduceOf {
  const patterns = new Map(kettleWorks(problem).map(({ id, recipeId, pattern }) => [id, pattern ?? recipeById(recipeId)?.pattern]))
  return (preparationId) => patterns.get(preparationId) ?? 'plum'
}
