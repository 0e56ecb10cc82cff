import { describe, expect, it } from 'vitest'
import { sayQuantity } from '@/shared/units/say-quantity'
import type { UnitId } from '@/shared/units/units'

describe('a quantity', () => {
  it.each([
    [2.5, 'lb', '2.5 lb (1.13 kg)'],
    [8, 'oz', '8 oz (227 g)'],
    [4.5, 'us-cup', '4.5 cup (1.06 L)'],
    [2, 'us-tbsp', '2 tbsp (29.6 mL)'],
    [1, 'metric-cup', '1 metric cup (250 mL)'],
    [0.25, 'in', '0.25 in. (6.35 mm)'],
    [4300, 'ft', '4300 ft (1311 m)'],
    [11, 'psi', '11 psi (75.8 kPa)'],
    [250, 'g', '250 g (8.82 oz)'],
    [2, 'L', '2 L (2.11 qt)'],
    [500, 'mL', '500 mL (16.9 fl oz)'],
    [1.5, 'kg', '1.5 kg (3.31 lb)'],
    [6, 'mm', '6 mm (0.236 in.)'],
    [1000, 'm', '1000 m (3281 ft)'],
    [100, 'kPa', '100 kPa (14.5 psi)'],
    [1, 'pouch', '1 pouch'],
    [6, 'each', '6'],
  ] as [number, UnitId, string][])('%f %s is said as %s', (amount, unit, said) => {
    expect(sayQuantity({ amount, unit })).toBe(said)
  })
})
