import { describe, expect, it } from 'vitest'
import { CANNER_LOAD_WEIGHTS } from '@/shared/recipes/canner-load-weights'
import { KITCHEN_MEASURES, SYRUPS } from '@/shared/recipes/kitchen-measures'
import { forecastProduce, jarsPerPound } from '@/shared/recipes/predict-yield'
import type { Ingredient, Recipe } from '@/shared/recipes/recipe'
import { RECIPES, recipeById } from '@/shared/recipes/recipe-library'

/**
 * Pounds for 7 quarts and for 9 pints | field unit, its pounds and its yield | pounds a jar.
 *
 * Sources as in the app's own table: USDA AIB No. 539 Guides 2 to 4 and their Michigan State, Florida, Nebraska and National Center prints.
 */
const LOADS = `
tomatoes-crushed: 22 14 | bushel 53 lb 17-20 quart | 2.75 quart
tomato-juice: 23 14 | bushel 53 lb 15-18 quart | 3.25 quart
tomato-vegetable-juice: 22 - | - | -
tomato-sauce-thin: 35 21 | bushel 53 lb 10-12 quart | 5 quart
tomato-sauce-thick: 46 28 | bushel 53 lb 7-9 quart | 6.5 quart
tomatoes-whole: 21 13 | bushel 53 lb 15-21 quart | 3 quart
apples-sliced: 19 12.25 | bushel 48 lb 16-19 quart | 2.75 quart
applesauce: 21 13.5 | bushel 48 lb 14-19 quart | 3 quart
apricots: 16 10 | bushel 50 lb 20-25 quart | 2.25 quart
berries-whole: 12 8 | 24-quart crate 36 lb 18-24 quart | 1.75 quart
cherries: 17.5 11 | lug 25 lb 8-12 quart | 2.5 quart
figs: 16 11 | - | 2.5 quart
grape-juice: 24.5 16 | lug 26 lb 7-9 quart | 3.5 quart
grapes-whole: 14 9 | lug 26 lb 12-14 quart | 2 quart
peaches: 17.5 11 | bushel 48 lb 16-24 quart | 2.5 quart
pears: 17.5 11 | bushel 50 lb 16-25 quart | 2.5 quart
plums: 14 9 | bushel 56 lb 22-36 quart | 2 quart
asparagus: 24.5 16 | crate 31 lb 7-12 quart | 3.5 quart
green-beans: 14 9 | bushel 30 lb 12-20 quart | 2 quart
lima-beans: 28 18 | bushel 32 lb 6-10 quart | 4 quart
beets: 21 13.5 | bushel 52 lb 15-20 quart | 3 quart
carrots: 17.5 11 | bushel 50 lb 17-25 quart | 2.5 quart
corn-whole-kernel: 31.5 20 | bushel 35 lb 6-11 quart | 4.5 quart
peas-green: 31.5 20 | bushel 30 lb 5-10 quart | 4.5 quart
peppers: - 9 | bushel 25 lb 20-30 pint | 1 pint
potatoes-white: 35 22.5 | bag 50 lb 8-12 quart | 5 quart
pumpkin-winter-squash: 16 10 | - | 2.25 quart
sweet-potatoes: 17.5 11 | bushel 50 lb 17-25 quart | 2.5 quart
greens: 28 18 | bushel 18 lb 3-9 quart | 4 quart
corn-cream-style: - 20 | bushel 35 lb 12-20 pint | 2.25 pint
dry-beans-peas: 5 3.25 | - | 0.75 quart
`

/** Printed yield | printed amounts of the key ingredients, in order; amounts reckoned a cup of juice or a pound of fruit are left out. */
const STATED = `
jam-apricot: 5-6 half-pint | 4..4.5 us-cup, 4 us-cup, 2 us-tbsp
jam-berry: 3-4 half-pint | 4 us-cup, 4 us-cup
jam-peach: 6-7 half-pint | 5.5..6 us-cup, 4..5 us-cup, 2 us-tbsp
jelly-apple: 4-5 half-pint | 4 us-cup
jelly-blackberry: 7-8 half-pint | 4 us-cup
jelly-crab-apple: 4-5 half-pint | 4 us-cup
jelly-grape: 8-9 half-pint | 4 us-cup
jelly-plum: 8-9 half-pint | 4 us-cup
pear-apple-jam: 7-8 half-pint | 2 us-cup, 1 us-cup, 6.5 us-cup, 1/3 us-cup, 6 us-floz
blueberry-spice-jam: 5-5 half-pint | 2.5 us-pt, 1 us-tbsp, 5.5 us-cup, 0.75 us-cup, 1.75 oz
grape-plum-jelly: 10-10 half-pint | 3.5 lb, 3 lb, 1 us-cup, 6.5 us-cup, 8.5 us-cup, 1.75 oz
plum-preserves: 5-5 half-pint | 5 us-cup, 4 us-cup, 1 us-cup
orange-marmalade: 7-8 half-pint | 4 us-cup, 4 us-cup, 1 us-cup, 6 us-cup, 6 us-cup
apple-butter: 8-9 pint | 8 lb, 2 us-cup, 2 us-cup, 2.25 us-cup, 2.25 us-cup
cranberry-orange-chutney: 8-8 half-pint | 24 oz, 2 us-cup, 2 us-cup, 1.5 us-cup, 1.5 us-cup, 2 us-cup, 1 us-cup
tomato-ketchup: 6-7 pint | 24 lb, 3 us-cup, 3 us-cup, 1.5 us-cup, 0.25 us-cup
chile-salsa: 6-8 pint | 5 lb, 2 lb, 1 lb, 1 us-cup, 3 us-tsp
spaghetti-sauce-meatless: 9-9 pint | 30 lb, 1 us-cup, 1 us-cup, 1 lb, 0.25 us-cup, 0.25 us-cup
mexican-tomato-sauce: 7-7 quart | 2.5..3 lb, 18 lb, 3 us-cup, 0.5 us-cup
dill-pickles-fresh-pack: 7-9 pint | 8 lb, 1.5 us-qt, 1.25 us-cup, 0.25 us-cup, 2 us-qt
bread-and-butter-pickles: 8-8 pint | 6 lb, 8 us-cup, 4 us-cup, 4.5 us-cup, 0.5 us-cup
pickled-beets: 8-8 pint | 7 lb, 4 us-cup, 2 us-cup, 2 us-cup, 1.5 us-tsp
pickle-relish: 9-9 pint | 3 us-qt, 3 us-cup, 3 us-cup, 1 us-cup, 6 us-cup, 2 us-cup
corn-relish: 9-9 pint | 10 us-cup, 2.5 us-cup, 2.5 us-cup, 2.5 us-cup, 1.25 us-cup, 1.75 us-cup, 5 us-cup
green-tomato-relish: 7-9 pint | 10 lb, 1.5 lb, 1.5 lb, 2 lb, 4 us-cup, 1 us-qt
sauerkraut: 9-9 quart | 25 lb, 0.75 us-cup
dilly-beans-small: 4-4 pint | 2 lb, 2.5 us-cup, 2.5 us-cup, 0.25 us-cup
`

const lines = (text: string): string[] => text.trim().split('\n')

describe('canner-load weights', () => {
  it.each(lines(LOADS))('%s', (line) => {
    const [id] = line.split(': ')
    const weights = CANNER_LOAD_WEIGHTS.find((each) => each.id === id)
    expect(weights && sayLoad(weights)).toBe(line)
  })

  it('hold no line more', () => {
    expect(CANNER_LOAD_WEIGHTS).toHaveLength(lines(LOADS).length)
    expect(lines(LOADS)).toHaveLength(31)
  })

  it.each(CANNER_LOAD_WEIGHTS)('$id: the printed load gives the printed jars', (weights) => {
    for (const [jar, jars, pounds] of [
      ['quart', 7, weights.poundsPer7Quarts],
      ['pint', 9, weights.poundsPer9Pints],
    ] as const) {
      const rate = jarsPerPound(weights, jar)
      if (pounds === null) {
        expect(rate).toBeNull()
        continue
      }
      expect(rate && rate.typical * pounds).toBeCloseTo(jars, 9)
      expect(rate && rate.low <= rate.typical && rate.typical <= rate.high).toBe(true)
      const forecast = forecastProduce(weights, jar, pounds, { culls: 0, unsealed: 0 })
      expect(forecast.ok && forecast.value.low <= jars && jars <= forecast.value.high).toBe(true)
    }
  })

  it.each(CANNER_LOAD_WEIGHTS.filter(({ fieldUnit }) => fieldUnit !== null))('$id: a field unit gives its printed jars', (weights) => {
    const { fieldUnit } = weights
    if (fieldUnit === null) return expect.unreachable()
    const rate = jarsPerPound(weights, fieldUnit.yields.jar)
    expect(rate && rate.low * fieldUnit.pounds).toBeLessThanOrEqual(fieldUnit.yields.low + 1e-9)
    expect(rate && rate.high * fieldUnit.pounds).toBeGreaterThanOrEqual(fieldUnit.yields.high - 1e-9)
  })

  it.each(RECIPES.filter(({ loadWeights }) => loadWeights.length > 0))('$id: the recipe plans with the printed load', (recipe) => {
    const weights = CANNER_LOAD_WEIGHTS.find(({ foodIds }) => foodIds.includes(recipe.process?.foodId ?? ''))
    expect(recipe.loadWeights).toEqual([
      { jar: 'quart', jars: 7, pounds: weights?.poundsPer7Quarts },
      { jar: 'pint', jars: 9, pounds: weights?.poundsPer9Pints },
    ])
  })
})

describe('recipes', () => {
  it.each(lines(STATED))('%s', (line) => {
    const [id = '', rest = ''] = line.split(': ')
    const [stated = '', amounts = ''] = rest.split(' | ')
    const recipe = recipeById(id)
    if (recipe === undefined) return expect.unreachable()
    if (id === 'bread-and-butter-pickles') {
      // printed as "about 8 pints": planned with one jar either way
      expect([stated, sayYield(recipe), recipe.batch.yield.typical]).toEqual(['8-8 pint', '7-9 pint', 8])
    } else expect(sayYield(recipe)).toBe(stated)
    const listed = recipe.ingredients.filter(({ per }) => per === undefined).map(sayAmount)
    for (const amount of amounts.split(', ')) expect(take(listed, amount)).toBe(amount)
    if (recipe.ingredientList === 'key-only') expect(listed).toEqual([])
  })

  it('are the 27 printed ones and seven more', () => {
    expect(lines(STATED)).toHaveLength(27)
    expect(RECIPES).toHaveLength(34)
  })

  it('hold the printed sugar and water of jelly, a cup of juice and a pound of fruit', () => {
    const jellies = RECIPES.filter(({ id }) => id.startsWith('jelly-'))
    const amounts = jellies.map(({ id, ingredients }) => [id, ...ingredients.filter(({ per }) => per !== undefined).map(sayAmount)])
    expect(amounts).toEqual([
      ['jelly-apple', '0.75 us-cup', '1 us-cup', '1.5 us-tsp'],
      ['jelly-blackberry', '0.75..1 us-cup', '0..0.25 us-cup'],
      ['jelly-crab-apple', '1 us-cup', '1 us-cup'],
      ['jelly-grape', '0.75..1 us-cup', '0..0.25 us-cup'],
      ['jelly-plum', '0.75 us-cup', '0.5 us-cup'],
    ])
  })

  it('hold the five printed measures and the printed syrups', () => {
    expect(KITCHEN_MEASURES.map(({ id }) => id)).toEqual(['juice-per-pound', 'salt-optional', 'corn-ears', 'onion-cups', 'kraut-salt'])
    // type, percent, water and sugar for 9 pints, water and sugar for 7 quarts, US cups
    expect(
      SYRUPS.map(({ name, sugarPercent, for9Pints, for7Quarts }) => [
        name,
        sugarPercent,
        ...Object.values(for9Pints),
        ...Object.values(for7Quarts),
      ]),
    ).toEqual([
      ['very light', 10, 6.5, 0.75, 10.5, 1.25],
      ['light', 20, 5.75, 1.5, 9, 2.25],
      ['medium', 30, 5.25, 2.25, 8.25, 3.75],
    ])
  })
})

function sayLoad({ id, poundsPer7Quarts, poundsPer9Pints, fieldUnit, poundsPerJar }: (typeof CANNER_LOAD_WEIGHTS)[number]): string {
  const field =
    fieldUnit && `${fieldUnit.name} ${fieldUnit.pounds} lb ${fieldUnit.yields.low}-${fieldUnit.yields.high} ${fieldUnit.yields.jar}`
  const jar = poundsPerJar && `${poundsPerJar.pounds} ${poundsPerJar.jar}`
  return `${id}: ${poundsPer7Quarts ?? '-'} ${poundsPer9Pints ?? '-'} | ${field ?? '-'} | ${jar ?? '-'}`
}

const sayYield = ({ batch }: Recipe): string => `${batch.yield.low}-${batch.yield.high} ${batch.jar}`

function sayAmount({ amount, unit }: Ingredient): string {
  const figure = typeof amount === 'number' ? (amount === 1 / 3 ? '1/3' : amount) : `${amount.low}..${amount.high}`
  return `${figure} ${unit}`
}

function take(list: string[], wanted: string): string | undefined {
  const at = list.indexOf(wanted)
  return at < 0 ? undefined : list.splice(at, 1)[0]
}
