import { RECIPE_UNITS } from '@/shared/forms/saved-own-recipe'
import { UNITS, type UnitId } from '@/shared/units/units'

/** The units that recipes here are mostly written in, in the order of a kitchen drawer. */
const USUAL: readonly UnitId[] = [
  ...(['lb', 'oz', 'us-cup', 'us-tbsp', 'us-tsp', 'us-qt', 'us-pt', 'us-gal', 'us-floz'] as const),
  ...(['kg', 'g', 'L', 'mL', 'each', 'clove', 'head', 'pouch'] as const),
]

const choice = (unit: UnitId) => ({ value: unit, label: UNITS[unit].name })

export const RECIPE_UNIT_CHOICES = USUAL.map(choice)

/** Cups of other countries and labels: a cup without its kind is no quantity. */
export const OTHER_RECIPE_UNITS = RECIPE_UNITS.filter((unit) => !USUAL.includes(unit)).map(choice)

export const PATTERN_CHOICES = [
  { value: 'plum', label: 'Plums: solid' },
  { value: 'dill', label: 'Dill: slanted lines' },
  { value: 'tomato', label: 'Tomatoes: dots' },
  { value: 'peach', label: 'Peaches: upright bars' },
  { value: 'bean', label: 'Beans: cross hatch' },
]
