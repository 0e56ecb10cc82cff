import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { lookUpProcess } from '@/shared/process/look-up-process'
import type { ProcessRefusal } from '@/shared/process/process-refusal'
import type { Source } from '@/shared/process/published-row'
import type { ScheduledProcess } from '@/shared/process/scheduled-process'
import { bindingConditions, type BindingCondition, unconfirmedOf } from '@/shared/recipes/own-recipe'
import type { OwnRecipe } from '@/shared/recipes/own-recipe-content'
import type { ProcessBinding } from '@/shared/recipes/recipe'
import { ok, type Result } from '@/shared/result/result'

/** A condition with the table it comes from, and whether it stands confirmed in these words. */
export type ConditionToConfirm = BindingCondition & { readonly edition: string; readonly source: Source; readonly isConfirmed: boolean }

/**
 * Every condition that a borrowed process asks for, at these elevations (whole feet) and in the recipe's jars, each once.
 *
 * Jars and elevations for which nothing is published ask for nothing: they get no minutes either.
 */
export function conditionsToConfirm({ content, binding, confirmed }: OwnRecipe, elevationsFeet: readonly number[]): ConditionToConfirm[] {
  if (!binding) return []
  const found = new Map<string, ConditionToConfirm>()
  for (const feet of elevationsFeet)
    for (const { jar } of content.yields) {
      const process = processOfBinding(binding, jar, feet)
      if (!process.ok) continue
      const { edition, source } = process.value
      const open = new Set(unconfirmedOf(process.value, confirmed).map(({ id, statement }) => id + statement))
      for (const condition of bindingConditions(process.value)) {
        const { id, statement } = condition
        found.set(`${id} ${edition} ${statement}`, { ...condition, edition, source, isConfirmed: !open.has(id + statement) })
      }
    }
  return [...found.values()]
}

/** What the borrowed table says for one jar at one elevation, whole feet. It is no standing: conditions may be open. */
export const processOfBinding = (
  { foodId, pack, method, gauge }: ProcessBinding,
  jar: JarSize,
  feet: number,
): Result<ScheduledProcess, ProcessRefusal> => lookUpProcess({ food: foodId, pack, jar, method, gauge, elevation: { feet } })

/** The standing of a recipe in one jar of one kitchen: the process with all conditions confirmed, or fridge or freezer. */
export type JarStanding =
  | { readonly jar: JarSize; readonly standing: 'bound'; readonly process: ScheduledProcess }
  | { readonly jar: JarSize; readonly standing: 'fridge-or-freezer'; readonly open: number; readonly refusal: ProcessRefusal | null }

/** Where each jar of a recipe stands at an elevation, whole feet. Minutes are in it only where every condition is confirmed. */
export function standingOfJars({ content, binding, confirmed }: OwnRecipe, feet: number): JarStanding[] {
  return content.yields.map(({ jar }) => {
    const cold = { jar, standing: 'fridge-or-freezer', open: 0, refusal: null } as const
    const process = binding ? processOfBinding(binding, jar, feet) : ok(null)
    if (!process.ok) return { ...cold, refusal: process.problem }
    if (process.value === null) return cold
    const open = unconfirmedOf(process.value, confirmed).length
    return open > 0 ? { ...cold, open } : { jar, standing: 'bound', process: process.value }
  })
}
