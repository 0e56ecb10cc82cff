import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chanceOfJars, type ForecastDay, forecastDay } from '@/shared/day/day-forecast'
import type { ForecastPreparation } from '@/shared/day/preparation-jars'
import { poundsOf, produceKey } from '@/shared/day/produce-amount'
import type { PromisedProduce, WeighedProduce } from '@/shared/day/produce-of-day'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { loadWeightsOf } from '@/shared/recipes/canner-load-weights'
import { recipeById } from '@/shared/recipes/recipe-library'

function preparation(id: string, jarSize: JarSize, offered: number, more: Partial<ForecastPreparation> = {}): ForecastPreparation {
  const recipe = recipeById(id)
  if (!recipe) throw new Error(`no recipe ${id}`)
  return { id, letter: recipe.productLetter, recipe, jarSize, offered, claimed: offered, spareJars: 0, batches: [], process: {}, ...more }
}

const bought = (item: string, quantity: number, unit = 'lb'): PromisedProduce => ({ item, quantity, unit, householdId: null })
const came = (item: string, quantity: number, culled = 0, householdId: string | null = null): WeighedProduce => ({
  ...{ item, quantity, unit: 'lb', householdId, culled },
})

const forecast = (day: Partial<ForecastDay> & Pick<ForecastDay, 'preparations'>) => forecastDay({ promised: [], weighed: [], ...day })
const one = (day: Partial<ForecastDay> & Pick<ForecastDay, 'preparations'>) => {
  const [first] = forecast(day)
  if (!first) throw new Error('nothing forecast')
  return first
}

describe('the harvest day whose tomatoes came short', () => {
  // 84 quarts at 21 lb for 7 are 252 lb; nine batches of salsa at 7 lb are 63 lb; 13 boxes of 25 lb are 325 lb.
  const preparations = [preparation('tomato_halved', 'quart', 84), preparation('salsa', 'pint', 72)]
  const promised = [bought('canning tomatoes', 13, '25 lb box')]

  it('makes 84 quarts and 72 pints of what was bought', () => {
    const [quarts, salsa] = forecast({ preparations, promised })
    expect(quarts).toMatchObject({
      basis: 'promised',
      planned: { typical: 84 },
      now: { typical: 84 },
      produce: { promised: 325, needed: 252 },
    })
    expect(salsa).toMatchObject({ basis: 'promised', now: { typical: 72 }, produce: { needed: 63, forThis: 63, isShared: true } })
  })

  it('makes 70 quarts of the 274 lb that are usable once the salsa has its 63', () => {
    // 301 lb came and 27 were culled: 274; less 63 are 211, at 3 lb a quart 70.3; printed bushels give 59 to 83 of them.
    const [quarts, salsa] = forecast({ preparations, promised, weighed: [came('tomatoes', 301, 27)] })
    expect(quarts).toMatchObject({
      basis: 'weighed',
      now: { typical: 70 },
      produce: { promised: 325, came: 301, culled: 27, usable: 274, outstanding: 0, forThis: 211 },
    })
    expect(salsa).toMatchObject({ now: { typical: 72 }, produce: { forThis: 63 } })
    expect(quarts?.now.low).toBeGreaterThanOrEqual(59)
    expect(quarts?.now.high).toBeLessThanOrEqual(84)
    expect(quarts?.chanceOfClaims).toBeLessThan(0.02)
  })

  it('gives the salsa whole batches alone, and the quarts what is left', () => {
    const [quarts, salsa] = forecast({ preparations, weighed: [came('tomatoes', 40)] })
    expect(salsa).toMatchObject({ now: { typical: 40 }, produce: { forThis: 35 } }) // five batches of 7 lb
    expect(quarts).toMatchObject({ now: { typical: 1 }, produce: { forThis: 5 } })
  })

  it('shares what is left in proportion to need among plain packs', () => {
    const packs = [preparation('tomato_halved', 'quart', 84), preparation('tomato_halved', 'pint', 90, { id: 'pints', letter: 'U' })]
    // 252 lb are needed for quarts; 90 pints at 13 lb for 9 are 130 lb.
    const [quarts, pints] = forecast({ preparations: packs, weighed: [came('tomatoes', 191)] })
    expect(quarts?.produce?.forThis).toBeCloseTo((191 * 252) / 382)
    expect(pints?.produce?.forThis).toBeCloseTo((191 * 130) / 382)
  })
})

describe('a forecast', () => {
  const jam = preparation('plum_jam', 'half-pint', 48)

  it('rests on the plan while nothing is promised, and its chance falls with the jars asked for', () => {
    const plan = one({ preparations: [jam] })
    expect(plan).toMatchObject({ basis: 'plan', produce: null, planned: plan.now })
    expect(chanceOfJars(plan, 40)).toBeGreaterThan(chanceOfJars(plan, 47))
    expect(chanceOfJars(plan, 48)).toBe(plan.chanceOfClaims)
    expect(chanceOfJars(plan, 0)).toBe(1)
  })

  it('makes no more than planned of more produce', () => {
    const plan = one({ preparations: [jam] })
    expect(one({ preparations: [jam], weighed: [came('plums', 900)] }).now).toEqual(plan.now)
    const quarts = one({ preparations: [preparation('peach', 'quart', 63)], weighed: [came('peaches', 900)] })
    expect(quarts.now).toMatchObject({ typical: 63, high: 63 })
  })

  it('makes nothing of produce that came and was culled altogether', () => {
    const none = one({ preparations: [jam], weighed: [came('plums', 30, 30)] })
    expect(none).toMatchObject({ now: { low: 0, typical: 0, high: 0 }, sealed: { high: 0 }, chanceOfClaims: 0 })
  })

  it('counts a promise until its household has brought something, and no longer', () => {
    const promised = [
      { ...bought('plums', 20), householdId: 'a' },
      { ...bought('damson plums', 10), householdId: 'b' },
    ]
    expect(one({ preparations: [jam], promised }).produce).toMatchObject({ promised: 30, outstanding: 30, usable: 30 })
    const half = one({ preparations: [jam], promised, weighed: [came('plums', 12, 2, 'a')] })
    expect(half).toMatchObject({ basis: 'weighed', produce: { promised: 30, came: 12, culled: 2, outstanding: 10, usable: 20 } })
  })

  it('takes the jars that are filled as they are, and reckons the rest', () => {
    const batch = (jarsFilled: number | null) => ({ plannedJars: 8, jarsFilled })
    const begun = one({ preparations: [{ ...jam, batches: [batch(6), batch(6), batch(null)] }] })
    expect(begun.now.typical).toBe(12 + (begun.planned.typical - 12))
    const over = one({ preparations: [{ ...jam, batches: [batch(6), batch(6)] }], weighed: [came('plums', 1)] })
    expect(over.now).toEqual({ low: 12, typical: 12, high: 12 })
    const quarts = preparation('peach', 'quart', 14, { batches: [batch(7), { plannedJars: 6, jarsFilled: null }] })
    expect(one({ preparations: [quarts] }).now.high).toBeLessThanOrEqual(14)
    expect(one({ preparations: [quarts], weighed: [came('peaches', 17.5)] }).now.typical).toBe(7) // 17.5 lb are one canner of quarts
  })

  it('learns from earlier batches of the same jar', () => {
    const logged = new Map([[jam.id, Array.from({ length: 30 }, () => 6)]])
    expect(one({ preparations: [jam], logged }).sealed.typical).toBeLessThan(one({ preparations: [jam] }).sealed.typical)
  })

  it('loses more jars where more do not seal', () => {
    expect(one({ preparations: [jam], losses: { unsealed: 0.2 } }).sealed.typical).toBeLessThan(one({ preparations: [jam] }).sealed.typical)
  })

  it('loses none of the jars that no canner takes', () => {
    const losses = { unsealed: 0.2 }
    const cold = one({ preparations: [{ ...jam, process: null }], losses })
    const { low, high } = cold.now
    expect(cold.sealed).toMatchObject({ low, high })
    expect(one({ preparations: [jam], losses }).sealed.low).toBeLessThan(low)
  })

  it('is not held down by produce that the recipe gives no weight for, or that says no weight', () => {
    const mixed = preparation('plum_jam', 'half-pint', 48)
    const noWeight = { ...mixed, recipe: { ...mixed.recipe, batch: { ...mixed.recipe.batch, producePounds: null } } }
    expect(one({ preparations: [noWeight], weighed: [came('plums', 1)] })).toMatchObject({ basis: 'plan', produce: null })
    const both = { ...mixed, recipe: { ...mixed.recipe, batch: { ...mixed.recipe.batch, produce: 'plums and grapes' } } }
    expect(one({ preparations: [both], weighed: [came('plums', 1)] }).basis).toBe('plan')
    expect(one({ preparations: [mixed], promised: [bought('plums', 3, 'boxes')] }).basis).toBe('plan')
    const pack = preparation('peach', 'quart', 63)
    const own = { ...pack, recipe: { ...pack.recipe, process: null, batch: { ...pack.recipe.batch, producePounds: null } } }
    expect(one({ preparations: [own], weighed: [came('peaches', 1)] })).toMatchObject({ basis: 'plan', now: { typical: 63 } })
  })

  it('reckons jars that no weight is printed for by the batch of the recipe', () => {
    const halves = preparation('peach', 'half-pint', 40)
    const given = { ...halves, recipe: { ...halves.recipe, batch: { ...halves.recipe.batch, producePounds: 17.5 } } }
    expect(one({ preparations: [given], weighed: [came('peaches', 8.75)] }).now.typical).toBe(14) // a canner of 7 quarts is 28 half-pints
  })

  it('gives out no more than there is, in ranges that stay in order, and less of less produce', () => {
    const preparations = [preparation('tomato_halved', 'quart', 84), preparation('salsa', 'pint', 72)]
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 0, max: 50 }), (pounds, less) => {
        const full = forecast({ preparations, weighed: [came('tomatoes', pounds)] })
        const short = forecast({ preparations, weighed: [came('tomatoes', pounds, Math.min(less, pounds))] })
        for (const { now, sealed, chances } of short) {
          expect(now.low).toBeLessThanOrEqual(now.typical)
          expect(sealed.low).toBeLessThanOrEqual(sealed.high)
          expect(chances.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1)
        }
        const given = short.reduce((sum, { produce }) => sum + (produce?.forThis ?? 0), 0)
        expect(given).toBeLessThanOrEqual((short[0]?.produce?.usable ?? 0) + 1e-6)
        // The salsa comes first: the quarts may gain a little where it loses a whole batch.
        expect(short[1]?.now.typical).toBeLessThanOrEqual(full[1]?.now.typical ?? 0)
        const alone = (culled: number) => one({ preparations: preparations.slice(0, 1), weighed: [came('tomatoes', pounds, culled)] })
        expect(alone(Math.min(less, pounds)).now.typical).toBeLessThanOrEqual(alone(0).now.typical)
      }),
      { numRuns: 60 },
    )
  })
})

describe('produce', () => {
  it.each([
    ['canning tomatoes', 'tomato'],
    ['Slicing Tomatoes', 'tomato'],
    ['pickling cucumbers, 3-5 in.', 'cucumber'],
    ['corn in husk', 'corn'],
    ['green tomatoes', 'green tomato'],
    ['green beans', 'bean'],
    ['dried beans', 'dried bean'],
    ['tart cherries (pitted)', 'cherry'],
    ['peaches', 'peach'],
    ['tomato paste', 'paste'],
    ['a constructor', 'constructor'],
    ['plums and grapes', null],
    ['  ', null],
    ['7', null],
  ])('%j is %j', (text, key) => {
    expect(produceKey(text)).toBe(key)
  })

  it.each([
    [13, '25 lb box', 325],
    [2, 'Bushels', 106],
    [1, 'bu.', 53],
    [16, 'oz', 1],
    [1, 'kg', 2.2046],
    [2, '22lb lug', 44],
    [3, 'box', null],
    [3, 'box of 12', null],
    [1, 'crate', null],
  ])('%d %s of tomatoes are %j lb', (quantity, unit, pounds) => {
    const found = poundsOf(quantity, unit, loadWeightsOf('tomatoes-whole-water'))
    if (pounds === null) expect(found).toBeNull()
    else expect(found).toBeCloseTo(pounds, 3)
  })

  it('of which no field unit is printed counts no bushels', () => {
    expect(poundsOf(1, 'bushel')).toBeNull()
  })
})
