import { describe, expect, it } from 'vitest'
import { forecastDay } from '@/shared/day/day-forecast'
import type { ForecastPreparation } from '@/shared/day/preparation-jars'
import type { PromisedProduce, WeighedProduce } from '@/shared/day/produce-of-day'
import { recipeById } from '@/shared/recipes/recipe-library'
import { sayChance } from '@/shared/wording/say-chance'
import { sayClaimsMet, sayJarRange, sayJarsNow, sayPounds, sayProduceStanding, wantsLook } from '@/shared/wording/say-forecast'

const preparation = (id: string, jarSize: 'pint' | 'quart', offered: number, claimed = offered): ForecastPreparation => {
  const recipe = recipeById(id)
  if (!recipe) throw new Error(`no recipe ${id}`)
  return { id, letter: recipe.productLetter, recipe, jarSize, offered, claimed, spareJars: 0, batches: [], process: {} }
}
const shop = { householdId: null, unit: 'lb' }
const quarts = (promised: PromisedProduce[], weighed: WeighedProduce[] = [], claimed = 84) => {
  const [first] = forecastDay({
    preparations: [preparation('tomato_halved', 'quart', 84, claimed), preparation('salsa', 'pint', 72)],
    promised,
    weighed,
  })
  if (!first) throw new Error('nothing forecast')
  return first
}
const boxes = [{ ...shop, item: 'canning tomatoes', quantity: 13, unit: '25 lb box' }]
const short = quarts(boxes, [{ ...shop, item: 'canning tomatoes', quantity: 301, culled: 27 }])

describe('a forecast in words', () => {
  it('says how many fewer there will be, and of what', () => {
    expect(sayJarsNow(short, 'quart')).toBe('About 70 quarts, not 84: 14 fewer.')
    expect(sayProduceStanding(short)).toBe(
      'Promised 325 lb (147 kg), came 301 lb (137 kg), 27 lb (12.2 kg) sorted out: 274 lb (124 kg) usable. 211 lb (96 kg) of it for this. 252 lb (114 kg) were planned.',
    )
    expect(sayClaimsMet(short, 'quart')).toMatch(
      /^All 84 quarts asked for are met hardly ever; \d+ are sure\. If they come short, shares will follow the rule\.$/,
    )
    expect(wantsLook(short)).toBe(true)
  })

  it('says what is still to find while there are only promises, and what is still to come after the first delivery', () => {
    const some = quarts([{ item: 'tomatoes', quantity: 100, unit: 'lb', householdId: 'a' }])
    expect(sayProduceStanding(some)).toBe(
      'Promised or bought 100 lb (45 kg); 252 lb (114 kg) needed. 37 lb (16.8 kg) of it for this. 215 lb (98 kg) still to find.',
    )
    expect(sayProduceStanding(quarts(boxes))).not.toMatch(/still to find/)
    const begun = quarts(
      [...boxes, { item: 'tomatoes', quantity: 20, unit: 'lb', householdId: 'a' }],
      [{ ...shop, item: 'tomatoes', quantity: 325, culled: 0 }],
    )
    expect(sayProduceStanding(begun)).toMatch(/^Promised 345 lb .*, came 325 lb .*, 20 lb \(9\.1 kg\) still to come: 345 lb/)
    expect(sayProduceStanding(quarts([], [{ ...shop, item: 'tomatoes', quantity: 5, culled: 0 }]))).toMatch(/^Came 5 lb \(2\.3 kg\): 5 lb/)
  })

  it('keeps quiet where all is as planned', () => {
    const [jam] = forecastDay({ preparations: [preparation('salsa', 'pint', 72, 40)], promised: [], weighed: [] })
    if (!jam) return expect.unreachable()
    expect(sayJarsNow(jam, 'pint')).toBe('About 72 pints, as planned.')
    expect(sayProduceStanding(jam)).toBe('By the plan: no produce is promised or here yet.')
    expect(sayClaimsMet(jam, 'pint')).toBe('All 40 pints asked for are met almost surely.')
    expect(wantsLook(jam)).toBe(false)
    expect(sayClaimsMet(quarts([], [], 0), 'quart')).toBe('Nobody has asked for any yet.')
    expect(wantsLook(quarts([], [], 0))).toBe(false)
    expect(sayJarRange(jam)).toMatch(/^\d+ to \d+$/)
  })

  it('gives one number where there is no range', () => {
    const none = quarts([], [{ ...shop, item: 'tomatoes', quantity: 5, culled: 5 }])
    expect(sayJarRange(none)).toBe('0')
    expect(sayJarsNow(none, 'quart')).toBe('About 0 quarts, not 84: 84 fewer.')
  })

  it('rounds pounds as a kitchen scale does', () => {
    expect([sayPounds(0.25), sayPounds(19.96), sayPounds(1234.4)]).toEqual(['0.3 lb (0.1 kg)', '20 lb (9.1 kg)', '1,234 lb (560 kg)'])
  })
})

describe('a chance', () => {
  it.each([
    [1, 'almost surely'],
    [0.995, 'almost surely'],
    [0.99, 'in 99 of 100 such days'],
    [0.95, 'in 95 of 100 such days'],
    [0.949, 'in 9 of 10 such days'],
    [0.9, 'in 9 of 10 such days'],
    [0.3, 'in 3 of 10 such days'],
    [0.1, 'in 1 of 10 such days'],
    [0.099, 'in fewer than 1 of 10 such days'],
    [0.005, 'in fewer than 1 of 10 such days'],
    [0.004, 'hardly ever'],
    [0, 'hardly ever'],
  ])('of %d is said %j', (chance, words) => {
    expect(sayChance(chance)).toBe(words)
  })
})
