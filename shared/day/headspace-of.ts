import type { PlanPreparation } from '@/shared/planning/day-problem'
import { type CannerKind, linesOf } from '@/shared/process/process-index'
import { recipeById } from '@/shared/recipes/recipe-library'

/** The published headspace of a product in inches, the same at every elevation and for both gauges; null when no table holds it. */
export function headspaceOf({ recipeId, method, pack, jarSize, process }: PlanPreparation): number | null {
  const canners: readonly CannerKind[] = method === 'pressure' ? ['dial', 'weighted'] : [method]
  const [lines] = canners.flatMap((canner) => linesOf(foodOf(recipeId, process.rowKey), canner, pack, jarSize) ?? [])
  return lines?.bands.find((band) => band.process !== null)?.process?.headspaceInches ?? null
}

/** A group's own recipe is in no library: there the row of its process names the food, before its canner. */
const foodOf = (recipeId: string, rowKey: string): string => recipeById(recipeId)?.process?.foodId ?? rowKey.split('--')[0] ?? ''
