import { describe, expect, it } from 'vitest'
import { loadWeightsOf } from '@/shared/recipes/canner-load-weights'
import { fruitBrix } from '@/shared/recipes/fruit-solids'
import { JELLY_PRACTICE } from '@/shared/recipes/jelly-practice'
import { chanceOfPromise, forecastProduce } from '@/shared/recipes/predict-yield'
import { produceWanted } from '@/shared/recipes/produce-wanted'
import { boilDown, jarsToSterilise } from '@/shared/recipes/soluble-solids'

function weights(foodId: string) {
  const found = loadWeightsOf(foodId)
  if (found === undefined) throw new Error(`No weights for ${foodId}`)
  return found
}

const NO_LOSS = { culls: 0, unsealed: 0 }

describe('produce for jars wanted', () => {
  it('is the fewest pounds that keep the promise', () => {
    const tomatoes = weights('tomatoes-whole-water')
    const wanted = produceWanted(tomatoes, 'quart', 42, 0.9)
    if (!wanted.ok) return expect.unreachable()
    const { pounds, chance } = wanted.value
    expect(chance).toBeGreaterThanOrEqual(0.9)
    const less = forecastProduce(tomatoes, 'quart', pounds - 1)
    expect(less.ok && chanceOfPromise(less.value, 42)).toBeLessThan(0.9)
    // six loads of 21 lb are 126 lb; nine days in ten, with two jars of a hundred unsealed, ask for a sixth more
    expect(pounds).toBeGreaterThan(126)
    expect(pounds).toBeLessThan(160)
  })

  it('is the printed load where the yield has no spread', () => {
    const figs = produceWanted(weights('figs'), 'quart', 7, 0.5, NO_LOSS)
    expect(figs).toEqual({ ok: true, value: { pounds: 16, chance: 1 } })
  })

  it('is more with culls', () => {
    const wanted = (culls: number) => produceWanted(weights('peaches'), 'quart', 28, 0.9, { culls, unsealed: 0 })
    const [sound, culled] = [wanted(0), wanted(0.2)]
    expect(sound.ok && culled.ok && culled.value.pounds / sound.value.pounds).toBeCloseTo(1.25, 1)
  })

  it('is refused without a printed weight, a wish, or a chance below certainty', () => {
    expect(produceWanted(weights('peppers'), 'quart', 7, 0.9)).toEqual({ ok: false, problem: { kind: 'no-printed-weight', jar: 'quart' } })
    expect(produceWanted(weights('peppers'), 'pint', 0, 0.9).ok).toBe(false)
    expect(produceWanted(weights('peppers'), 'pint', 9, 1).ok).toBe(false)
    expect(produceWanted(weights('peppers'), 'pint', 9, 0.9, { culls: 1, unsealed: 0 })).toMatchObject({
      problem: { kind: 'share-out-of-range' },
    })
  })
})

describe('common practice for jelly', () => {
  it('agrees with the reckoning: about half the volume, a fifth more jars, 220 F is 104 C', () => {
    const left = boilDown({ juiceLitres: 4, juiceBrix: fruitBrix('peach'), sugarKilograms: 1.25 })
    expect(left.ok && left.value.litres.typical / 4).toBeCloseTo(JELLY_PRACTICE.volumeLeftAtGelPoint, 1)
    expect(jarsToSterilise(10)).toBe(10 * JELLY_PRACTICE.sterileJarsPerJarExpected)
    expect(Math.round(((JELLY_PRACTICE.gelPointFahrenheit - 32) * 5) / 9)).toBe(JELLY_PRACTICE.gelPointCelsius)
  })
})
