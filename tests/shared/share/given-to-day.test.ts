import { describe, expect, it } from 'vitest'
import { recipeById } from '@/shared/recipes/recipe-library'
import { minutesGiven, produceGiven } from '@/shared/share/given-to-day'

const recipes = ['plum-jam', 'tomato-halved'].flatMap((id) => recipeById(id) ?? [])
const line = (item: string, quantity: number, unit: string, householdId: string | null) => ({ item, quantity, unit, householdId })

describe('what households give to a day', () => {
  it('is hours as they were counted, and as promised where nobody has counted', () => {
    const hours = [
      { householdId: 'ash', minutes: 90, promisedMinutes: 240 },
      { householdId: 'birch', minutes: null, promisedMinutes: 150.4 },
      { householdId: 'cedar', minutes: 0, promisedMinutes: 60 },
    ]
    expect([...minutesGiven(hours)]).toEqual([
      ['ash', 90],
      ['birch', 150],
      ['cedar', 0],
    ])
  })

  it('is the produce of the day’s recipes: weighed in less what was sorted out, promised where that crop has not come', () => {
    expect(recipes).toHaveLength(2)
    const promised = [line('plums', 20, 'lb', 'ash'), line('tomatoes', 1, 'bushel', 'birch'), line('plums', 4, 'lb', null)]
    const weighed = [
      { ...line('plums', 18.25, 'lb', 'ash'), culled: 1 },
      { ...line('sugar', 25, 'lb', 'ash'), culled: 0 },
      { ...line('plums', 2, 'crates', 'cedar'), culled: 0 },
    ]
    expect([...produceGiven(recipes, promised, weighed)]).toEqual([
      ['ash', 1725],
      ['birch', 5300], // 53 lb a bushel
      ['cedar', 0], // a crate says no weight
    ])
    expect(produceGiven(recipes, [], weighed).get('birch')).toBeUndefined()
  })

  it('is nothing where the day makes nothing, or of what it does not make', () => {
    expect([...produceGiven([], [line('plums', 20, 'lb', 'ash')], [])]).toEqual([['ash', 0]])
    expect([...produceGiven(recipes, [line('beans', 20, 'lb', 'ash')], [])]).toEqual([['ash', 0]])
  })
})
