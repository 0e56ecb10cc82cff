import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { batchesWanted } from '@/shared/recipes/batches-wanted'
import { loadWeightsOf } from '@/shared/recipes/canner-load-weights'
import { afterLosses, batchChances, chanceOfAtLeast, expectedJars, jarsAtChance, severalBatches } from '@/shared/recipes/jar-chances'
import { chanceOfPromise, forecastBatches, forecastProduce } from '@/shared/recipes/predict-yield'
import { recipeById } from '@/shared/recipes/recipe-library'

const DILL = { low: 7, typical: 8, high: 9 }
const NO_LOSS = { culls: 0, unsealed: 0 }

function recipe(id: string) {
  const found = recipeById(id)
  if (found === undefined) throw new Error(`No recipe ${id}`)
  return found
}

function weights(foodId: string) {
  const found = loadWeightsOf(foodId)
  if (found === undefined) throw new Error(`No weights for ${foodId}`)
  return found
}

describe('the chances of one batch', () => {
  it('are highest at the typical yield: 7, 8, 9 pints with 1/4, 1/2, 1/4', () => {
    // triangle from 6 to 10 with its top at 8: heights 1/2, 1, 1/2
    expect(batchChances(DILL)).toEqual([0, 0, 0, 0, 0, 0, 0, 0.25, 0.5, 0.25])
  })

  it('fall from the end where the typical yield is the highest: 7, 8 half-pints with 1/3, 2/3', () => {
    const [seven, eight] = batchChances({ low: 7, typical: 8, high: 8 }).slice(7)
    expect([seven, eight]).toEqual([expect.closeTo(1 / 3, 12), expect.closeTo(2 / 3, 12)])
  })

  it('are certain where one yield is printed', () => {
    expect(batchChances({ low: 5, typical: 5, high: 5 })).toEqual([0, 0, 0, 0, 0, 1])
  })

  it('give three logged batches as much weight as the printed range', () => {
    const chances = batchChances(DILL, [6, 6, 10])
    expect([6, 7, 8, 9, 10].map((jars) => chances[jars])).toEqual(
      [1 / 3, 0.125, 0.25, 0.125, 1 / 6].map((each) => expect.closeTo(each, 12)),
    )
  })
})

describe('chances', () => {
  it('of several batches add up: two of 7 to 9 give 16 with 3/8', () => {
    // 7+9, 8+8, 9+7: 1/16 + 1/4 + 1/16
    const two = severalBatches(batchChances(DILL), 2)
    expect(two[16]).toBeCloseTo(3 / 8, 12)
    expect(two[14]).toBeCloseTo(1 / 16, 12)
    expect(severalBatches(batchChances(DILL), 0)).toEqual([1])
  })

  it('after losses thin out: of two jars at one half, 1/4, 1/2, 1/4', () => {
    expect(afterLosses([0, 0, 1], 0.5)).toEqual([0.25, 0.5, 0.25])
    expect(afterLosses([0, 1], 1)).toEqual([0, 1])
  })

  it('of a promise are those at or above it', () => {
    const chances = batchChances(DILL)
    expect([7, 8, 9, 10].map((jars) => chanceOfAtLeast(chances, jars))).toEqual([1, 0.75, 0.25, 0])
    expect([1, 0.75, 0.76, 0.25, 0.1].map((chance) => jarsAtChance(chances, chance))).toEqual([7, 8, 7, 9, 9])
    expect(jarsAtChance([1], 0.5)).toBe(0)
    expect(jarsAtChance([0.5], 0.9)).toBe(0)
  })

  it('always sum to one, and losses lower the mean by their share', () => {
    const someYield = fc.tuple(fc.nat(12), fc.nat(5), fc.nat(5)).map(([low, a, b]) => ({ low, typical: low + a, high: low + a + b }))
    const logs = fc.array(fc.nat(20), { maxLength: 6 })
    fc.assert(
      fc.property(someYield, logs, fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: 100 }), (range, logged, batches, percent) => {
        const whole = severalBatches(batchChances(range, logged), batches)
        const sealed = afterLosses(whole, percent / 100)
        expect(whole.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 9)
        expect(sealed.reduce((sum, each) => sum + each, 0)).toBeCloseTo(1, 9)
        expect(expectedJars(sealed)).toBeCloseTo((expectedJars(whole) * percent) / 100, 6)
      }),
    )
  })
})

describe('a forecast', () => {
  it('of six batches of plum jam promises 42 half-pints almost surely and 48 hardly ever', () => {
    const forecast = forecastBatches(recipe('plum-jam'), 'half-pint', 6)
    if (!forecast.ok) return expect.unreachable()
    expect(chanceOfPromise(forecast.value, 42)).toBeGreaterThan(0.98)
    expect(chanceOfPromise(forecast.value, 48)).toBeLessThan(0.04)
    expect(forecast.value).toMatchObject({ jar: 'half-pint', low: 43, typical: 45, high: 47 })
    expect(forecast.value.inputs).toEqual([
      '6 x Plum jam with liquid pectin, printed 7 to 8 jars, typically 8 a batch',
      '0 logged batches',
      '2 % of jars do not seal',
    ])
  })

  it('of four batches of dill pickles spreads from 28 to 36 pints', () => {
    const forecast = forecastBatches(recipe('dill-pickle'), 'pint', 4, NO_LOSS)
    if (!forecast.ok) return expect.unreachable()
    expect([28, 29, 36, 37].map((jars) => chanceOfPromise(forecast.value, jars))).toEqual([
      1,
      expect.closeTo(1 - 0.25 ** 4, 12),
      expect.closeTo(0.25 ** 4, 12),
      0,
    ])
    expect(forecast.value.typical).toBe(32)
  })

  it('learns from what was logged', () => {
    const short = forecastBatches(recipe('dill-pickle'), 'pint', 4, NO_LOSS, [6, 6, 6, 6, 6, 6])
    const printed = forecastBatches(recipe('dill-pickle'), 'pint', 4, NO_LOSS)
    expect(short.ok && printed.ok && short.value.typical < printed.value.typical).toBe(true)
  })

  it('of a bushel of tomatoes lies in its printed 15 to 21 quarts', () => {
    const forecast = forecastProduce(weights('tomatoes-whole-water'), 'quart', 53, NO_LOSS)
    if (!forecast.ok) return expect.unreachable()
    // 7 quarts for 21 lb: 53 lb give 17 and a part
    expect(forecast.value).toMatchObject({ low: 16, typical: 18, high: 20 })
    expect(chanceOfPromise(forecast.value, 15)).toBe(1)
    expect(chanceOfPromise(forecast.value, 22)).toBe(0)
  })

  it('takes culls off before and lost seals off after', () => {
    const all = forecastProduce(weights('peaches'), 'quart', 175, NO_LOSS)
    const culled = forecastProduce(weights('peaches'), 'quart', 175, { culls: 0.1, unsealed: 0.05 })
    // 58, 70, 87 quarts of 175 lb have the mean (57 + 70 + 88) / 3; 52, 63, 78 of 157.5 lb have 64.3, of which 95 % seal
    expect(all.ok && culled.ok && [all.value.typical, culled.value.typical]).toEqual([72, 61])
  })

  it('turns a yield in quarts into pints', () => {
    const forecast = forecastProduce(weights('tomatoes-whole-water'), 'pint', 53, NO_LOSS)
    expect(forecast.ok && forecast.value.inputs[1]).toContain('30 to 42 jars, typically 36')
  })

  it('is refused without sense in its inputs', () => {
    const kind = (answer: { ok: boolean; problem?: { kind: string } }) => answer.problem?.kind
    const peppers = weights('peppers')
    expect(kind(forecastBatches(recipe('plum-jam'), 'half-pint', 0))).toBe('nothing-to-reckon-with')
    expect(kind(forecastBatches(recipe('plum-jam'), 'half-pint', 1.5))).toBe('nothing-to-reckon-with')
    expect(forecastBatches(recipe('plum-jam'), 'half-pint', 1, { culls: 0, unsealed: 1 })).toEqual({
      ok: false,
      problem: { kind: 'share-out-of-range', share: 1 },
    })
    expect(kind(forecastProduce(peppers, 'quart', 25))).toBe('no-printed-weight')
    expect(kind(forecastProduce(peppers, 'pint', 0))).toBe('nothing-to-reckon-with')
    expect(kind(forecastProduce(peppers, 'pint', 25, { culls: -0.1, unsealed: 0 }))).toBe('share-out-of-range')
    expect(loadWeightsOf('granite')).toBeUndefined()
  })
})

describe('the batches for a promise', () => {
  it('are the fewest that keep it', () => {
    const wanted = batchesWanted(recipe('plum-jam'), 'half-pint', 48, 0.9)
    expect(wanted.ok && [wanted.value.batches, wanted.value.chance > 0.99]).toEqual([7, true])
    const certain = batchesWanted(recipe('plum-jam'), 'half-pint', 42, 1, NO_LOSS)
    expect(certain.ok && certain.value.batches).toBe(6)
  })

  it('end at sixty, with the chance that those give', () => {
    const wanted = batchesWanted(recipe('dilly-beans-small'), 'pint', 1000, 0.9)
    expect(wanted.ok && [wanted.value.batches, wanted.value.chance]).toEqual([60, 0])
  })

  it('are refused with the losses', () => {
    expect(batchesWanted(recipe('plum-jam'), 'half-pint', 48, 0.9, { culls: 0, unsealed: 2 }).ok).toBe(false)
  })
})
