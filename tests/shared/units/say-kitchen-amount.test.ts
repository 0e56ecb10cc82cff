import { describe, expect, it } from 'vitest'
import { sayKitchenAmount, sayNumber } from '@/shared/units/say-kitchen-amount'

describe('a kitchen amount', () => {
  it.each([
    [2.25, 'us-cup', '2¼ cups (532 mL)'], // 2.25 x 236.588 mL
    [0.25, 'us-cup', '¼ cup (59 mL)'],
    [1 / 3, 'us-cup', '1/3 cup (79 mL)'],
    [1.5, 'us-qt', '1½ qt (1.42 L)'], // 1.5 x 946.353 mL
    [0.25, 'us-tsp', '¼ tsp (1.2 mL)'], // 0.25 x 4.92892 mL
    [1, 'us-tbsp', '1 tbsp (15 mL)'],
    [8, 'lb', '8 lb (3.63 kg)'], // 8 x 0.45359237 kg
    [1.75, 'oz', '1¾ oz (50 g)'], // 1.75 x 28.3495 g
    [4, 'L', '4 L (4.23 qt)'], // 4000 / 946.353
    [14, 'head', '14 heads'],
    [1, 'pouch', '1 pouch'],
    [6, 'each', '6'],
    [0.5, 'in', '½ in. (13 mm)'],
  ] as const)('%s %s is said as %s', (amount, unit, said) => {
    expect(sayKitchenAmount(amount, unit)).toBe(said)
  })

  it('says both ends of a printed range', () => {
    expect(sayKitchenAmount({ low: 4, high: 4.5 }, 'us-cup')).toBe('4 to 4½ cups (946 mL to 1.06 L)')
    expect(sayKitchenAmount({ low: 0, high: 0.25 }, 'us-cup')).toBe('0 to ¼ cup (0 mL to 59 mL)')
  })

  it('keeps three figures of what is no kitchen fraction', () => {
    expect(sayNumber(0.35)).toBe('0.35')
    expect(sayNumber(1 + 1 / 3)).toBe('1 1/3')
    expect(sayNumber(1250)).toBe('1,250')
  })
})
