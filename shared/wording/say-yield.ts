import type { ProduceUnit } from '@/shared/forms/recipe-yield'
import { jarName } from '@/shared/kitchen/jar-sizes'
import type { CannerLoadWeight } from '@/shared/recipes/canner-load-weights'
import type { HowMuchProblem, YieldAnswer } from '@/shared/recipes/how-much'
import type { Recipe } from '@/shared/recipes/recipe'
import type { BoilDownProblem } from '@/shared/recipes/soluble-solids'
import { sayKitchenAmount, sayNumber } from '@/shared/units/say-kitchen-amount'

type InThreeParts = { readonly what: string; readonly why: string; readonly instead: string }

/** "US cups", "metric cups of 250 mL", "bushels of 53 lb": three cups are told apart. */
export function sayProduceUnit(unit: ProduceUnit, fieldUnit?: CannerLoadWeight['fieldUnit']): string {
  switch (unit) {
    case 'field':
      return fieldUnit ? `${fieldUnit.name}s of ${fieldUnit.pounds} lb` : 'field units'
    case 'us-cup':
      return 'US cups (237 mL)'
    case 'imp-cup':
      return 'imperial cups (284 mL)'
    case 'metric-cup':
      return 'metric cups (250 mL)'
    case 'us-qt':
      return 'US quarts (946 mL)'
    case 'imp-qt':
      return 'imperial quarts (1.14 L)'
    case 'lb':
      return 'pounds'
    case 'kg':
      return 'kilograms'
    default:
      return 'litres'
  }
}

/** "42 to 48 half-pints": the sealed jars of nine days of ten, or one number where there is no range. */
export function sayJarsOf({ forecast: { low, high }, jar }: Pick<YieldAnswer, 'forecast' | 'jar'>): string {
  const most = Math.max(low, high)
  return low === most ? `${low} ${jarName(jar, low)}` : `${low} to ${most} ${jarName(jar, most)}`
}

/** "3 bushels of 53 lb", in whole ones; empty where none is printed. */
export function sayFieldUnits({ pounds, fieldUnit }: Pick<YieldAnswer, 'pounds' | 'fieldUnit'>): string {
  if (pounds === null || fieldUnit === null) return ''
  const count = Math.ceil(pounds / fieldUnit.pounds - 1e-9)
  return `${count} ${fieldUnit.name}${count === 1 ? '' : 's'} of ${fieldUnit.pounds} lb`
}

/** Why no jars are reckoned, in three parts. */
export function sayHowMuchProblem(problem: HowMuchProblem, recipe: Recipe): InThreeParts {
  switch (problem.kind) {
    case 'jar-not-in-recipe':
      return {
        what: 'Not in that jar.',
        why: `The recipe names ${recipe.jars.map((jar) => jarName(jar, 2)).join(' and ')}.`,
        instead: 'Choose one of those.',
      }
    case 'unit-not-printed':
      return {
        what: 'Not reckoned in that unit.',
        why: 'No publication read says what it weighs or measures for this recipe, and nothing is guessed.',
        instead: 'Say it in one of the units of the list, or say the jars that you want.',
      }
    case 'less-than-a-batch': {
      const { amount, unit } = problem.needs
      return {
        what: 'Less than one batch.',
        why: `One tested batch takes ${sayKitchenAmount(amount, unit)}, and it is never cut down.`,
        instead: 'Get what is missing, or freeze what you have.',
      }
    }
    case 'more-than-a-day':
      return {
        what: 'More than one day’s work.',
        why: 'At most 60 batches are reckoned at once.',
        instead: 'Share it out over several days, and ask for each.',
      }
    default:
      return problem satisfies never
  }
}

/** Why no boil-down is reckoned, in three parts. */
export const sayBoilDownProblem = (problem: BoilDownProblem): InThreeParts =>
  problem.kind === 'not-positive'
    ? { what: 'Not reckoned.', why: 'There must be some juice.', instead: 'Say how much juice there is.' }
    : {
        what: 'Nothing to boil down.',
        why: `With that much sugar the kettle begins at ${sayNumber(Math.round(problem.brix))} degrees Brix, at or past the finish of 65.`,
        instead: 'Check the sugar against the recipe; its proportions are fixed.',
      }
