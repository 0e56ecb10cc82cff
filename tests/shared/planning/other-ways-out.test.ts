import { describe, expect, it } from 'vitest'
import { otherWays } from '@/shared/day/other-ways'
import { spareByCanner } from '@/shared/planning/canner-spare'
import { movedToPressure, otherJars } from '@/shared/planning/other-ways-out'
import { recipeById } from '@/shared/recipes/recipe-library'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'
import { s2ShiftsCapped } from '@/tests/fixtures/s2-day-problem'

const tomatoes = recipeById('tomato-halved')
if (!tomatoes) throw new Error('the library has no halved tomatoes')
const product = {
  ...{ id: 't', recipe: tomatoes, letter: 'T', jarSize: 'quart' as const, method: 'boiling-water' as const },
  ...{ jarTreatment: 'washed-hot' as const, claimed: 84, spareJars: 0 },
}
const dial = { method: 'pressure', gauge: 'dial' }

describe('other published ways to put a food up', () => {
  it('are 10 min at 13 psi for quarts of halved tomatoes under a dial gauge at 4,300 ft, and pints for quarts', () => {
    const ways = otherWays(product, { elevationFeet: 4300, canners: [dial] })
    expect(ways.map((way) => [way.method, way.gauge, way.jarSize, way.process.minutes, way.process.psi])).toEqual([
      ['pressure', 'dial', 'quart', 10, 13], // Complete Guide to Home Canning, Guide 3
      ['boiling-water', null, 'pint', 50, null],
    ])
    for (const way of ways) expect(way.process.minutes).toBe(way.process.publishedMinutes)
  })

  it('are none where the kitchen has no canner with that gauge, or no row is printed', () => {
    expect(otherWays(product, { elevationFeet: 4300, canners: [] }).filter((way) => way.method === 'pressure')).toEqual([])
    const jam = recipeById('plum-jam')
    if (!jam) throw new Error('the library has no plum jam')
    const ways = otherWays({ ...product, recipe: jam, jarSize: 'half-pint' }, { elevationFeet: 650, canners: [dial] })
    expect(ways.filter((way) => way.method === 'pressure')).toEqual([])
  })
})

describe('moving food to pressure canners that would stand idle', () => {
  it('takes one load of 101 min into 177 spare minutes and none into 81', () => {
    expect([...spareByCanner(s2ShiftsCapped, 'pressure')]).toEqual([
      ['PC-A', 177],
      ['PC-B', 81],
    ])
    const [moves] = movedToPressure(s2ShiftsCapped)
    expect(moves?.map((move) => move.change)).toEqual([
      { kind: 'move-to-pressure', preparationId: 'tomatoes', loads: 1, jars: 7, cannerIds: ['PC-A'] },
    ])
  })

  it('moves nothing without a published process, and nothing into the canner of another gauge', () => {
    expect(movedToPressure(s1DayProblem)).toEqual([])
    const weighted = {
      ...s2ShiftsCapped,
      canners: s2ShiftsCapped.canners.map((canner) => ({ ...canner, gauge: canner.gauge && ('weighted' as const) })),
    }
    expect(movedToPressure(weighted)).toEqual([])
  })

  it('keeps every jar', () => {
    for (const move of movedToPressure(s2ShiftsCapped).flat()) {
      const jars = move.problem.preparations
        .filter((entry) => entry.recipeId === 'tomatoes')
        .reduce((sum, entry) => sum + entry.jarsWanted, 0)
      expect(jars).toBe(84)
    }
  })

  it('turns 84 quarts into 168 pints', () => {
    const [tomato] = s2ShiftsCapped.preparations
    if (!tomato) throw new Error('no tomatoes')
    const pints = { ...tomato, gauge: null, jarSize: 'pint' as const }
    const [way] = otherJars({ ...s2ShiftsCapped, preparations: [{ ...tomato, alternatives: [pints] }] })
    expect(way?.change).toEqual({ kind: 'other-jars', preparationId: 'tomatoes', jarSize: 'pint', jars: 168 })
  })
})
