import { describe, expect, it } from 'vitest'
import { bandTable } from '@/shared/finder/band-table'
import { cardSteps } from '@/shared/finder/card-steps'
import { knownAllergens } from '@/shared/finder/known-allergens'
import { publishedWays } from '@/shared/finder/published-ways'
import { FOODS } from '@/shared/process/food-names'
import { lookUpProcess } from '@/shared/process/look-up-process'
import type { ProcessQuery } from '@/shared/process/process-query'

const processOf = (query: Partial<ProcessQuery>) => {
  const found = lookUpProcess({
    food: 'dill pickles',
    pack: null,
    jar: 'pint',
    method: 'boiling-water',
    gauge: null,
    elevation: { feet: 650 },
    ...query,
  })
  if (!found.ok) throw new Error(found.problem.code)
  return found.value
}

describe('the table on a card', () => {
  it('prints every jar and band of the row, the own band marked', () => {
    // Michigan State University Extension, Preserving Food Safely (1997), Guide 6:20.
    const table = bandTable(processOf({}))
    expect(table.jars).toEqual(['pint', 'quart'])
    expect(table.rows.map(({ isHere, figures }) => [isHere, ...figures.map((figure) => figure?.minutes)])).toEqual([
      [true, 10, 15],
      [false, 15, 20],
      [false, 20, 25],
    ])
  })

  it('shows the table of the larger jar to a jar that borrows its time', () => {
    const table = bandTable(processOf({ jar: '12-oz' }))
    expect(table.jars).toEqual(['pint', 'quart'])
  })

  it('shows no time where a steam canner would run over 45 min', () => {
    // USDA AIB No. 539, Guide 3: tomatoes in water, 40 min for pints to 1,000 ft, 45 for quarts.
    const table = bandTable(processOf({ food: 'tomatoes in water', method: 'atmospheric-steam', pack: 'hot' }))
    expect(table.rows[0]?.figures.map((figure) => figure?.minutes)).toEqual([40, 45])
    expect(table.rows.at(-1)?.figures).toEqual([null, null])
  })

  it('holds the answer itself, for every food and way', () => {
    for (const { id } of FOODS.values()) {
      for (const [feet, { method, gauge, pack, jars }] of [650, 1001, 6001].flatMap((each) =>
        publishedWays(id, each).map((way) => [each, way] as const),
      )) {
        for (const jar of jars) {
          const process = processOf({ food: id, method, gauge, pack, jar, elevation: { feet } })
          const table = bandTable(process)
          expect(table.rows.findIndex(({ isHere }) => isHere)).toBe(
            table.rows.findIndex(({ band }) => band.maxFeet === null || feet <= band.maxFeet),
          )
          const here = table.rows.filter(({ isHere }) => isHere)
          expect(here).toHaveLength(1)
          expect(here[0]?.figures[table.jars.indexOf(process.jarRow)]).toEqual({ minutes: process.minutes, psi: process.psi })
        }
      }
    }
  })
})

describe('the steps of a card', () => {
  it('ask for 2 in of water when the process is longer than 30 min, 1 in otherwise', () => {
    const water = (query: Partial<ProcessQuery>) => cardSteps(processOf(query)).find(({ symbol }) => symbol === 'canner')?.text
    expect(water({})).toContain('1 in (2.5 cm)')
    expect(water({ food: 'tomatoes in water', pack: 'hot' })).toContain('2 in (5 cm)')
  })

  it('say both ways with the jars where the process is under 10 min', () => {
    const [first] = cardSteps(processOf({ food: 'piccalilli', elevation: { feet: 650 } }))
    expect(first?.text).toBe('Boil the empty jars 10 min first. Jars only washed: 10 min in the canner, not 5.')
    expect(cardSteps(processOf({})).some(({ text }) => text.startsWith('Boil the empty jars'))).toBe(false)
  })

  it('name the acid of the jar that is filled', () => {
    const acid = cardSteps(processOf({ food: 'tomatoes in water', pack: 'hot', jar: 'quart' }))[0]?.text
    expect(acid).toContain('Into each quart: 2 tbsp (30 mL) bottled lemon juice, or ½ tsp (2.5 mL) citric acid, or 4 tbsp (59 mL) vinegar')
  })

  it('start the clock at pressure and let the canner cool by itself', () => {
    const texts = cardSteps(processOf({ food: 'green beans', method: 'pressure', gauge: 'dial', pack: 'raw' })).map(({ text }) => text)
    expect(texts.join(' ')).toMatch(/needle stands at 11 psi.*Pressure falls by itself/)
  })
})

describe('allergens of a food', () => {
  it('are those of its tested recipes', () => {
    expect(knownAllergens('dill-pickles-fresh-pack')).toEqual({ always: ['mustard'], sometimes: [] })
    expect(knownAllergens('figs')).toEqual({ always: [], sometimes: [] })
  })
})
