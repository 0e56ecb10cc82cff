import type { PlanPreparation } from '@/shared/planning/day-problem'
import { type CannerKind, linesOf } from '@/shared/process/process-index'
import { recipeById } from '@/shared/recipes/recipe-library'

/** The published headspace of a product in inches, the same at every elevation; null when no table holds it. */
export function headspaceOf({ recipeId, method, pack, jarSize }: PlanPreparation): number | null {
  const bound = recipeById(recipeId)?.process
  const canner: CannerKind | null = method === 'pressure' ? (bound?.gauge ?? null) : method
  const lines = bound && canner ? linesOf(bound.foodId, canner, pack, jarSize) : undefined
  return lines?.[0].bands.find(({ process }) => process !== null)?.process?.headspaceInches ?? null
}
