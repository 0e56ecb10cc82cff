import { describe, expect, it } from 'vitest'
import { ALSO_CALLED, findFood, FOODS } from '@/shared/process/food-names'
import { PUBLISHED_ROWS } from '@/shared/process/published-rows'
import { UNVERIFIED_ROWS } from '@/shared/process/unverified-rows'

const idOf = (name: string) => {
  const found = findFood(name)
  return found.ok ? found.value.id : found.problem.kind
}

describe('naming a food', () => {
  it.each([...PUBLISHED_ROWS, ...UNVERIFIED_ROWS])('works by process id, food id and printed name of $id', (row) => {
    expect([idOf(row.id), idOf(row.foodId), idOf(row.food), idOf(row.food.toUpperCase())]).toEqual([
      row.foodId,
      row.foodId,
      row.foodId,
      row.foodId,
    ])
  })

  it.each(Object.entries(ALSO_CALLED))('knows %s as %s', (name, foodId) => {
    expect(idOf(name)).toBe(foodId)
  })

  it.each([
    ['Plums', 'plums'],
    ['plum, halved or whole', 'plums'],
    ['cherry', 'cherries'],
    ['PEACHES', 'peaches'],
    ['  Dill   pickles ', 'dill-pickles-fresh-pack'],
    ['Snap beans', 'green-beans'],
    ['green bean', 'green-beans'],
    ['Jam with added pectin', 'jam-jelly-added-pectin'],
    ['dilly beans', 'dilled-beans'],
    ['Purée of fruit', 'ambiguous'],
    ['Fruit purées', 'fruit-puree'],
    ['tomato', 'ambiguous'],
    ['potato', 'potatoes-white'],
    ['salmon', 'fish-pints'],
    ['beans', 'ambiguous'],
    ['corn', 'ambiguous'],
    ['chicken or rabbit', 'ambiguous'],
    ['strips', 'ambiguous'],
    ['beans or peas', 'ambiguous'],
    ['salsa', 'ambiguous'],
    ['strawberries', 'ambiguous'],
    ['pumpkin butter', 'pureed-squash'],
    ['Mashed winter squash', 'pureed-squash'],
    ['butter', 'dairy'],
    ['Milk', 'dairy'],
    ['cheese', 'dairy'],
    ['granite', 'unknown'],
    ['', 'unknown'],
    ['constructor', 'unknown'],
    ['toString', 'unknown'],
  ])('reads %j as %s', (name, id) => {
    expect(idOf(name)).toBe(id)
  })

  it('keeps the exclusion of strawberries from whole berries: the name alone picks nothing', () => {
    expect(findFood('strawberries')).toMatchObject({
      problem: { candidates: expect.arrayContaining(['Berries, whole (not strawberries)']) },
    })
  })

  it('suggests at most five near names: most shared words first (4, 3, 3, 2, 2), then by the alphabet', () => {
    const found = findFood('plum jelly with added packaged pectin')
    expect(found.ok ? [] : found.problem).toEqual({
      kind: 'unknown',
      nearest: [
        'Jams and jellies with added packaged pectin',
        'Jelly without added pectin',
        'Plum preserves (tart plums, no added pectin)',
        'Grape-plum jelly',
        'Jam without added pectin (apricot, berry, strawberry, peach)',
      ],
    })
    expect(findFood('granite')).toEqual({ ok: false, problem: { kind: 'unknown', nearest: [] } })
  })

  it('suggests nothing for a word that only joins others', () => {
    for (const name of ['garlic in oil', 'cake with and without', 'not a the'])
      expect(findFood(name)).toEqual({ ok: false, problem: { kind: 'unknown', nearest: [] } })
  })

  it('suggests what an item prints under its title, and picks nothing: berries for the raw pack alone, meat in pieces or ground', () => {
    for (const berry of ['raspberries', 'Blackberries', 'mulberry'])
      expect(findFood(berry)).toEqual({ ok: false, problem: { kind: 'ambiguous', candidates: ['Berries, whole (not strawberries)'] } })
    for (const animal of ['venison', 'Beef', 'pork']) {
      const found = findFood(animal)
      expect(found.ok ? [] : found.problem).toEqual({
        kind: 'ambiguous',
        candidates: expect.arrayContaining(['Ground or chopped meat', 'Strips, cubes or chunks of meat']),
      })
    }
  })

  it('holds an acidity for every food', () => {
    expect(new Set([...FOODS.values()].map(({ acidity }) => acidity))).toEqual(new Set(['acid', 'acidified', 'low-acid']))
  })
})
