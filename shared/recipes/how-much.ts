import type { ProduceUnit } from '@/shared/forms/recipe-yield'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Source } from '@/shared/process/published-row'
import { ok, type Result, refuse } from '@/shared/result/result'
import { convert } from '@/shared/units/convert'
import { UNITS, type UnitId } from '@/shared/units/units'
import { batchesWanted } from './batches-wanted'
import { type CannerLoadWeight, loadWeightsOf } from './canner-load-weights'
import { chanceOfPromise, forecastBatches, forecastProduce, jarsPerPound, type Losses, type YieldForecast } from './predict-yield'
import { produceWanted } from './produce-wanted'
import type { Ingredient, Recipe } from './recipe'

/** Produce that there is, or jars that are wanted, in one jar of the recipe. */
export type YieldQuestion = { readonly jar: JarSize; readonly losses: Losses } & (
  | { readonly amount: number; readonly unit: ProduceUnit }
  | { readonly jars: number }
)

/** Jars with their range, and what has to be bought for them. */
export type YieldAnswer = {
  readonly jar: JarSize
  readonly forecast: YieldForecast
  /** Null where only produce was said. */
  readonly wanted: { readonly jars: number; readonly chance: number } | null
  /** Whole tested batches; null for plain packs, which take any weight. */
  readonly batches: number | null
  /** Produce as delivered, in pounds; null where the recipe names no weight. */
  readonly pounds: number | null
  readonly fieldUnit: CannerLoadWeight['fieldUnit']
  /** Ingredients of all batches together; empty for plain packs. */
  readonly buy: readonly Ingredient[]
  readonly source: Source
}

/** Why nothing is reckoned. */
export type HowMuchProblem =
  | { readonly kind: 'jar-not-in-recipe' }
  /** The publication prints no way from this unit to the recipe. */
  | { readonly kind: 'unit-not-printed' }
  | { readonly kind: 'less-than-a-batch'; readonly needs: { readonly amount: number; readonly unit: UnitId } }
  | { readonly kind: 'more-than-a-day' }

/** Most batches that are reckoned: more would not be one day's work. */
const MOST_BATCHES = 60

/** From here on a promise may be given: nine days of ten. */
export const PROMISE_CHANCE = 0.9

/** How many jars come of produce, or what jars need, from the printed yields and weights alone. */
export function howMuch(recipe: Recipe, question: YieldQuestion): Result<YieldAnswer, HowMuchProblem> {
  if (!recipe.jars.includes(question.jar)) return refuse({ kind: 'jar-not-in-recipe' })
  const weights = plainWeights(recipe, question.jar)
  return weights === null ? inBatches(recipe, question) : byWeight(weights, question)
}

/** The units in which produce of a recipe may be said, the most usual first. */
export function produceUnits(recipe: Recipe): ProduceUnit[] {
  const { scaling, batch } = recipe
  const isPlain = scaling === 'to-kettle-volume' && weightsOf(recipe) !== undefined
  const byPound: ProduceUnit[] = isPlain || batch.producePounds !== null ? ['lb', 'kg'] : []
  const byField: ProduceUnit[] = weightsOf(recipe)?.fieldUnit && byPound.length > 0 ? ['field'] : []
  const byVolume: ProduceUnit[] =
    isPlain || measured(recipe) === undefined ? [] : ['us-cup', 'imp-cup', 'metric-cup', 'us-qt', 'imp-qt', 'L']
  return [...byPound, ...byField, ...byVolume]
}

/** The prepared produce that a recipe measures in cups or quarts: the first of its ingredients, where that is a volume. */
export const measured = ({ ingredients: [first] }: Pick<Recipe, 'ingredients'>): Ingredient | undefined =>
  first !== undefined && first.per === undefined && UNITS[first.unit].dimension === 'volume' ? first : undefined

/** Printed weights of the recipe's food. */
export const weightsOf = ({ process }: Pick<Recipe, 'process'>): CannerLoadWeight | undefined =>
  process === null ? undefined : loadWeightsOf(process.foodId)

/** For a plain pack, the printed weights that reach this jar. */
function plainWeights(recipe: Recipe, jar: JarSize): { weights: CannerLoadWeight; jar: 'pint' | 'quart' } | null {
  const weights = recipe.scaling === 'to-kettle-volume' ? weightsOf(recipe) : undefined
  if (weights === undefined || (jar !== 'pint' && jar !== 'quart') || jarsPerPound(weights, jar) === null) return null
  return { weights, jar }
}

function byWeight({ weights, jar }: { weights: CannerLoadWeight; jar: 'pint' | 'quart' }, question: YieldQuestion): Answer {
  const { losses } = question
  const pounds = 'jars' in question ? poundsFor(weights, jar, question.jars, losses) : inPounds(question, weights)
  if (pounds === null) return refuse({ kind: 'unit-not-printed' })
  const forecast = forecastProduce(weights, jar, pounds, losses)
  if (!forecast.ok) return refuse({ kind: 'unit-not-printed' })
  const wanted = 'jars' in question ? { jars: question.jars, chance: chanceOfPromise(forecast.value, question.jars) } : null
  const { fieldUnit, source } = weights
  return ok({ jar, forecast: forecast.value, wanted, batches: null, pounds, fieldUnit, buy: [], source })
}

type Answer = Result<YieldAnswer, HowMuchProblem>

function poundsFor(weights: CannerLoadWeight, jar: 'pint' | 'quart', jars: number, losses: Losses): number | null {
  const found = produceWanted(weights, jar, jars, PROMISE_CHANCE, losses)
  return found.ok ? found.value.pounds : null
}

function inBatches(recipe: Recipe, question: YieldQuestion): Answer {
  const batches = 'jars' in question ? batchesFor(recipe, question, question.jars) : batchesOf(recipe, question)
  if (!batches.ok) return batches
  const forecast = forecastBatches(recipe, question.jar, batches.value, question.losses)
  if (!forecast.ok) return refuse({ kind: 'more-than-a-day' })
  const { producePounds } = recipe.batch
  return ok({
    jar: question.jar,
    forecast: forecast.value,
    wanted: 'jars' in question ? { jars: question.jars, chance: chanceOfPromise(forecast.value, question.jars) } : null,
    batches: batches.value,
    pounds: producePounds === null ? null : (producePounds * batches.value) / (1 - question.losses.culls),
    fieldUnit: weightsOf(recipe)?.fieldUnit ?? null,
    buy: recipe.ingredients.map((each) => timesBatches(each, batches.value)),
    source: recipe.source,
  })
}

function batchesFor(recipe: Recipe, { jar, losses }: YieldQuestion, jars: number): Result<number, HowMuchProblem> {
  const found = batchesWanted(recipe, jar, jars, PROMISE_CHANCE, losses)
  if (!found.ok || found.value.chance < PROMISE_CHANCE - EDGE) return refuse({ kind: 'more-than-a-day' })
  return ok(found.value.batches)
}

/** Whole batches that the produce is enough for, after culls. */
function batchesOf(recipe: Recipe, question: Extract<YieldQuestion, { unit: ProduceUnit }>): Result<number, HowMuchProblem> {
  const { losses, amount, unit } = question
  const needs = needsOf(recipe, unit)
  if (needs === null) return refuse({ kind: 'unit-not-printed' })
  const there = unit === 'field' ? inPounds(question, weightsOf(recipe)) : inUnit(amount, unit, needs.unit)
  if (there === null) return refuse({ kind: 'unit-not-printed' })
  // What is measured in cups is prepared: its culls are out already.
  const sound = needs.unit === 'lb' ? there * (1 - losses.culls) : there
  const batches = Math.floor(sound / needs.amount + EDGE)
  if (batches < 1) return refuse({ kind: 'less-than-a-batch', needs })
  return batches > MOST_BATCHES ? refuse({ kind: 'more-than-a-day' }) : ok(batches)
}

/** What one batch takes, in the dimension that was asked in: pounds, or the measured produce. */
function needsOf(recipe: Recipe, unit: ProduceUnit): { amount: number; unit: UnitId } | null {
  const isWeight = unit === 'field' || UNITS[unit].dimension === 'mass'
  const { producePounds } = recipe.batch
  if (isWeight) return producePounds === null ? null : { amount: producePounds, unit: 'lb' }
  const first = measured(recipe)
  return first === undefined ? null : { amount: typeof first.amount === 'number' ? first.amount : first.amount.high, unit: first.unit }
}

const inPounds = ({ amount, unit }: { amount: number; unit: ProduceUnit }, weights: CannerLoadWeight | undefined): number | null =>
  unit === 'field' ? (weights?.fieldUnit ? amount * weights.fieldUnit.pounds : null) : inUnit(amount, unit, 'lb')

function inUnit(amount: number, from: UnitId, to: UnitId): number | null {
  const found = convert(amount, from, to)
  return found.ok ? found.value : null
}

const timesBatches = (each: Ingredient, batches: number): Ingredient => ({
  ...each,
  amount: typeof each.amount === 'number' ? each.amount * batches : { low: each.amount.low * batches, high: each.amount.high * batches },
})

/** Amounts are quotients: 63 lb must be nine batches of 7 lb. */
const EDGE = 1e-9
