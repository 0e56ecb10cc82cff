import type { BindingConditionId } from '@/shared/recipes/own-recipe'
import { conditionsToConfirm, standingOfJars } from '@/shared/recipes/conditions-to-confirm'
import type { OwnRecipe } from '@/shared/recipes/own-recipe-content'

/** "Fridge or freezer", "Fridge or freezer: 2 of 5 conditions are open", "For the shelf by its published process": in these kitchens, whole feet. */
export function sayOwnStanding(own: OwnRecipe, elevationsFeet: readonly number[]): string {
  if (!own.binding) return 'Fridge or freezer'
  const conditions = conditionsToConfirm(own, elevationsFeet)
  const open = conditions.filter(({ isConfirmed }) => !isConfirmed).length
  if (open > 0) return `Fridge or freezer: ${open} of ${conditions.length} conditions are open`
  const bound = elevationsFeet.flatMap((feet) => standingOfJars(own, feet)).filter(({ standing }) => standing === 'bound')
  return bound.length > 0 ? 'For the shelf by its published process' : 'Fridge or freezer: no table for these jars here'
}

const NAMES: Readonly<Record<BindingConditionId, string>> = {
  'same-food': 'The food',
  'same-pack': 'The pack',
  'same-jar': 'The jar',
  'same-headspace': 'The headspace',
  'acid-added': 'The acid',
  'proportions-kept': 'The proportions',
  'no-thickener': 'No thickener',
  'pack-limits': 'Limits of the pack',
}

/** "The headspace": what a condition is about. */
export const conditionName = (id: BindingConditionId): string => NAMES[id]
