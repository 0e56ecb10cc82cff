import { expect, it } from 'vitest'
import { lotsOfRecipe } from '@/shared/floor/lots-of-recipe'
import { mostJars } from '@/shared/floor/most-jars'
import { lotBatchCode } from '@/shared/floor/lot-letters'
import { dateOf, kitchenTimeOn } from '@/shared/floor/date-and-clock'

const lots = [
  { id: '1', item: 'plums' },
  { id: '2', item: 'pickling cucumbers' },
  { id: '3', item: 'sugar' },
  { id: '4', item: 'mustard seed' },
]

it('ticks the lots that share a word with the recipe', () => {
  expect(lotsOfRecipe(lots, [{ item: 'crushed plums' }, { item: 'sugar' }, { item: 'liquid pectin' }])).toEqual(['1', '3'])
  expect(lotsOfRecipe(lots, [])).toEqual([])
})

it('counts a batch’s most jars by how many tested batches are in the kettle', () => {
  expect(mostJars({ typical: 8, high: 9 }, 8)).toBe(9)
  expect(mostJars({ typical: 8, high: 9 }, 24)).toBe(27)
  expect(mostJars({ typical: 0, high: 1 }, 0)).toBe(1)
})

it('gives each preparation of the day one letter in lot numbers', () => {
  expect(lotBatchCode('J3', 'J', ['J', 'D'])).toBe('J3')
  expect(lotBatchCode('JA12', 'JA', ['J', 'JA', 'D'])).toBe('A12')
  expect(() => lotBatchCode('X1', 'X', ['J'])).toThrow(RangeError)
})

it('places a date and a clock on the canning day and back', () => {
  expect(kitchenTimeOn('2027-08-27', 605, '2027-08-26')).toBe(2045)
  expect(dateOf(2045, '2027-08-26')).toBe('2027-08-27')
  expect(dateOf(-1, '2027-08-26')).toBe('2027-08-25')
})
