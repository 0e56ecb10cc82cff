import { JAR_MILLILITRES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { convert } from '@/shared/units/convert'
import type { Ingredient, Recipe, WorkMinutes } from './recipe'

type Derived = 'batchLitres' | 'fillMinutes'
type Usual =
  | 'alsoKnownAs'
  | 'loadWeights'
  | 'ingredientList'
  | 'scaling'
  | 'allergens'
  | 'leadSteps'
  | 'prepBefore'
  | 'prepMinutes'
  | 'kettleMinutes'
  | 'notes'

/** What has to be said about a recipe; the usual case fills in the rest. */
export type RecipeFacts = Omit<Recipe, Derived | Usual> & Partial<Pick<Recipe, Usual>> & { readonly cupsOfJuice?: number }

/** Minutes that somebody needs to fill, wipe and lid one jar: common practice. */
const FILL_MINUTES_A_JAR = 1

/** Completes a recipe: kettle volume from what goes into the kettle, filling time from the jars. */
export function buildRecipe({ cupsOfJuice = 0, ...facts }: RecipeFacts): Recipe {
  const { batch, prepBefore = 'cook' } = facts
  const weighsIn = prepBefore === 'cook' && facts.scaling !== 'to-kettle-volume'
  const inKettle = facts.ingredients.filter((each) => weighsIn || !isWeighed(each))
  const measured = inKettle.reduce((sum, each) => sum + litresInKettle(each, cupsOfJuice), 0)
  const filled = (batch.yield.high * JAR_MILLILITRES[batch.jar]) / 1000
  return {
    alsoKnownAs: [],
    loadWeights: [],
    ingredientList: 'key-only',
    scaling: 'whole-batches-only',
    allergens: [],
    leadSteps: [],
    prepMinutes: null,
    kettleMinutes: null,
    notes: [],
    ...facts,
    prepBefore,
    batchLitres: upToATenth(prepBefore === 'fill' ? measured : Math.max(measured, filled)),
    fillMinutes: commonPractice(batch.yield.low, batch.yield.typical, batch.yield.high, FILL_MINUTES_A_JAR),
  }
}

/** Minutes that the trade plans with. */
export const commonPractice = (low: number, typical: number, high: number, times = 1): WorkMinutes => ({
  low: low * times,
  typical: typical * times,
  high: high * times,
  basis: 'common practice',
})

/** Minutes that a publication prints. */
export const published = (minutes: number): WorkMinutes => ({ low: minutes, typical: minutes, high: minutes, basis: 'published' })

/** Person-minutes to make `pounds` of produce ready at a rate in pounds per person-hour: common practice. */
export function prepAtRate(pounds: number, poundsPerPersonHour: number): WorkMinutes {
  const minutes = Math.round((pounds / poundsPerPersonHour) * 60)
  return commonPractice(minutes, minutes, minutes)
}

/** Raw produce for a full canner: seven quarts, nine pints. */
export const loadWeights = (poundsPer7Quarts: number, poundsPer9Pints: number): Recipe['loadWeights'] => [
  { jar: 'quart', jars: 7, pounds: poundsPer7Quarts },
  { jar: 'pint', jars: 9, pounds: poundsPer9Pints },
]

/** Jars of most fruit, vegetables and pickles. */
export const PINT_OR_QUART: readonly JarSize[] = ['pint', 'quart']
/** Jars of jams, jellies and relishes. */
export const HALF_PINT_OR_PINT: readonly JarSize[] = ['half-pint', 'pint']

/** In a raw pack what is weighed goes into the jars; of a plain pack the waste is weighed too, so the filled jars count instead. */
const isWeighed = ({ unit }: Ingredient): boolean => convert(1, unit, 'kg').ok

/** Volumes as measured; a kilogram of produce is taken as a litre (common practice), but not of fruit that only gives its juice. */
function litresInKettle({ amount, unit, per }: Ingredient, cupsOfJuice: number): number {
  if (per === 'pound of fruit') return 0
  const most = typeof amount === 'number' ? amount : amount.high
  const litres = convert(most, unit, 'L')
  if (litres.ok) return litres.value * (per === 'cup of juice' ? cupsOfJuice : 1)
  const kilograms = convert(most, unit, 'kg')
  return kilograms.ok && cupsOfJuice === 0 ? kilograms.value : 0
}

const upToATenth = (litres: number): number => Math.ceil(litres * 10) / 10
