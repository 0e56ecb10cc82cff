import { expect, it } from 'vitest'
import { sayQuantity } from '@/shared/wording/say-quantity'

it.each([
  [6, 'pouch', '6 pouches'],
  [1, 'pouch', '1 pouch'],
  [1, 'tubs', '1 tub'],
  [2, 'tubs', '2 tubs'],
  [0.5, 'bushel', '0.5 bushels'],
  [12, 'lb', '12 lb'],
  [1, 'qt', '1 qt'],
  [3, 'USD', '3 USD'],
])('says %d of %s as %s', (quantity, unit, said) => {
  expect(sayQuantity(quantity, unit)).toBe(said)
})
