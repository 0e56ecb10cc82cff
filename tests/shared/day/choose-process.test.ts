import { describe, expect, it } from 'vitest'
import { cannerCycle } from '@/shared/day/canner-cycle'
import { chooseProcess, type ProcessWish } from '@/shared/day/choose-process'
import { freeProductLetter } from '@/shared/day/free-product-letter'
import { RECIPES, recipeById } from '@/shared/recipes/recipe-library'
import { sayProcessChoice } from '@/shared/wording/say-process-choice'

const recipe = (id: string) => {
  const found = recipeById(id)
  if (!found) throw new Error(`no recipe ${id}`)
  return found
}
const jam: ProcessWish = {
  recipe: recipe('plum-jam'),
  jarSize: 'half-pint',
  method: 'boiling-water',
  gauge: null,
  jarTreatment: 'washed-hot',
  elevationFeet: 650,
}
const minutes = (wish: ProcessWish) => {
  const chosen = chooseProcess(wish)
  return chosen.ok ? [chosen.value.minutes, chosen.value.published.minutes, chosen.value.isLongerForJars] : chosen.problem.kind
}

describe('the process of a product', () => {
  it.each([
    ['washed-hot', 650, [10, 5, true]],
    ['boiled-in-pot', 650, [5, 5, false]],
    ['boiled-in-canners', 1000, [5, 5, false]],
    ['washed-hot', 1001, [10, 10, false]],
    ['washed-hot', 6001, [15, 15, false]],
  ] as const)('for jam with jars %s at %i ft is %j', (jarTreatment, elevationFeet, expected) => {
    expect(minutes({ ...jam, jarTreatment, elevationFeet })).toEqual(expected)
  })

  it('is never shorter than published, for any recipe, jar and treatment', () => {
    for (const each of RECIPES)
      for (const jarSize of each.jars)
        for (const jarTreatment of ['washed-hot', 'boiled-in-pot', 'boiled-in-canners'] as const) {
          const { method = 'boiling-water', gauge = null } = each.process ?? {}
          const chosen = chooseProcess({ recipe: each, jarSize, method, gauge, jarTreatment, elevationFeet: 650 })
          if (chosen.ok) expect(chosen.value.minutes).toBeGreaterThanOrEqual(chosen.value.published.minutes)
        }
  })

  it('is refused for a jar that the recipe does not name, and says which it names', () => {
    const refused = chooseProcess({ ...jam, jarSize: 'quart' })
    expect(refused.ok ? null : sayProcessChoice('Plum jam', refused.problem).instead).toBe('Use half-pints or pints.')
  })

  it('is refused for a recipe without a verified process: not for the shelf', () => {
    const without = RECIPES.find(({ process }) => process === null)
    expect(without && minutes({ ...jam, recipe: without, jarSize: without.defaultJar })).toBe('no-process-held')
  })
})

it('takes 37 min of a canner for jam at 10 min, and 47 for raw pickles', () => {
  const taken = (pack: 'hot' | 'raw') => {
    const { loadMinutes, comeUpMinutes, restMinutes, unloadMinutes } = cannerCycle('boiling-water', pack, 'pint')
    return loadMinutes + comeUpMinutes + 10 + restMinutes + unloadMinutes
  }
  expect([taken('hot'), taken('raw')]).toEqual([37, 47])
})

it('gives the recipe’s own letter while it is free, then one of its title', () => {
  const plum = recipe('plum-jam')
  expect(freeProductLetter(plum, new Set())).toBe('J')
  expect(freeProductLetter(plum, new Set(['J', 'D']))).not.toBe('J')
})
