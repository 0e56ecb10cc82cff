import { describe, expect, it } from 'vitest'
import { celsiusFromFahrenheit, convert, fahrenheitFromCelsius } from '@/shared/units/convert'
import { UNITS, type UnitId } from '@/shared/units/units'

/**
 * Unit, base and factor as NIST prints them (Handbook 44 Appendix C; SP 811 Appendix B; SP 430), and 21 CFR 101.9(b)(5)(viii) for labels.
 * "rounded" marks a factor that is not exact.
 */
const FACTORS = `
in3 mL 16.387064
us-gal mL 3785.411784
us-qt mL 946.352946
us-pt mL 473.176473
us-cup mL 236.5882365
us-half-pint mL 236.5882365
us-floz mL 29.5735295625
us-tbsp mL 14.78676478125
us-tsp mL 4.92892159375
us-dry-bu L 35.23907016688
us-peck L 8.80976754172
us-dry-qt mL 1101.220942715
us-dry-pt mL 550.6104713575
imp-gal mL 4546.09
imp-qt mL 1136.5225
imp-pt mL 568.26125
imp-floz mL 28.4130625
imp-bu L 36.36872
imp-cup mL 284.130625
metric-cup mL 250
metric-tbsp mL 15
metric-tsp mL 5
au-tbsp mL 20
us-label-cup mL 240
us-label-floz mL 30
us-label-tbsp mL 15
us-label-tsp mL 5
us-label-oz g 28
lb g 453.59237
oz g 28.349523125
in mm 25.4
ft m 0.3048
psi kPa 6.894757293168361336722673445 rounded
inHg kPa 3.386389 rounded
mmHg Pa 133.3224 rounded
atm Pa 101325
bar Pa 100000
`

const lines = FACTORS.trim()
  .split('\n')
  .map((line) => line.split(' ') as [UnitId, UnitId, string, string?])

describe('unit factors', () => {
  it.each(lines)('%s is the printed number of %s', (unit, base, factor, rounded) => {
    const converted = convert(1, unit, base)
    const digits = rounded === undefined ? 14 : 7
    expect(converted.ok && converted.value.toPrecision(digits)).toBe(Number(factor).toPrecision(digits))
  })

  it.each(lines.filter(([, , factor, rounded]) => rounded === undefined && factor.length < 18))(
    '%s is exact as a fraction',
    (unit, base, factor) => {
      const [top, bottom] = UNITS[unit].factor
      const [baseTop, baseBottom] = UNITS[base].factor
      const [whole = '', decimals = ''] = factor.split('.')
      // factor = top/bottom over baseTop/baseBottom, cross-multiplied in whole numbers
      expect(top * baseBottom * 10n ** BigInt(decimals.length)).toBe(BigInt(whole + decimals) * bottom * baseTop)
    },
  )
})

describe('unit checks', () => {
  it.each([
    [1, 'us-cup', 'mL', 236.5882365, 0],
    [1, 'us-tbsp', 'mL', 14.78676478125, 0],
    [1, 'us-tsp', 'mL', 4.92892159375, 0],
    [7, 'us-qt', 'mL', 6624.470622, 0],
    [0.5, 'us-dry-bu', 'L', 17.61953508344, 0],
    [53, 'lb', 'kg', 24.04039561, 0],
    [11, 'psi', 'kPa', 75.84233, 1e-5],
    [15, 'psi', 'kPa', 103.421359, 1e-5],
    [5280, 'ft', 'm', 1609.344, 0],
    [1, 'imp-pt', 'mL', 568.26125, 0],
    [3, 'us-tsp', 'us-tbsp', 1, 0],
    [16, 'us-tbsp', 'us-cup', 1, 0],
    [4, 'us-cup', 'us-qt', 1, 0],
    [2.625, 'in', 'mm', 66.675, 0],
  ] as const)('%f %s in %s', (value, from, to, expected, tolerance) => {
    const converted = convert(value, from, to)
    expect(converted.ok && Math.abs(converted.value - expected)).toBeLessThanOrEqual(Math.max(tolerance, Math.abs(expected) * 1e-15))
  })

  it('reads 240 F as 115.6 C, 100 C as 212 F, and meets itself at -40', () => {
    expect(celsiusFromFahrenheit(240)).toBeCloseTo(115.5555555555556, 12)
    expect(fahrenheitFromCelsius(100)).toBe(212)
    expect(fahrenheitFromCelsius(-40)).toBe(-40)
    expect(celsiusFromFahrenheit(-40)).toBe(-40)
  })

  it('tells the cups apart', () => {
    const millilitres = (['us-cup', 'us-label-cup', 'metric-cup', 'imp-cup'] as const).map((cup) => convert(1, cup, 'mL'))
    expect(millilitres.map((each) => each.ok && each.value)).toEqual([236.5882365, 240, 250, 284.130625])
  })

  it('never turns volume into mass, nor one count into another', () => {
    expect(convert(1, 'us-cup', 'lb')).toEqual({ ok: false, problem: { kind: 'different-dimensions', from: 'us-cup', to: 'lb' } })
    expect(convert(1, 'pouch', 'clove').ok).toBe(false)
    expect(convert(3, 'pouch', 'pouch')).toEqual({ ok: true, value: 3 })
  })
})
