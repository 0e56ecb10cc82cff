import { describe, expect, it } from 'vitest'
import { InstrumentCheck } from '@/shared/forms/instrument-check'
import { lastDayOfTest } from '@/shared/instruments/dial-gauge-test'
import { type AirPressure, kitchenTemperatures } from '@/shared/instruments/kitchen-temperatures'
import { sayDegrees, sayPrinted, sayTemperature } from '@/shared/wording/say-temperature'

const at = (feet: number, air: AirPressure | null = null) => {
  const found = kitchenTemperatures(feet, air)
  if (!found.ok) throw new Error(found.problem.kind)
  return found.value
}

describe('the temperatures of a kitchen', () => {
  it('are those of the standard atmosphere when no pressure was read', () => {
    const sea = at(0)
    expect(sea.basis).toBe('standard-atmosphere')
    expect(sea.boilingCelsius).toBeCloseTo(99.97, 2) // IAPWS-IF97 at 101,325 Pa
    expect(sea.gelCelsius - sea.boilingCelsius).toBeCloseTo(8 / 1.8, 6)
    // USDA AIB No. 539 (1994), Process adjustments at high altitudes: 203.2 F at 5,000 ft.
    expect(at(5000).boilingCelsius * 1.8 + 32).toBeCloseTo(203.2, 0)
  })

  it('follow a pressure that was read in the kitchen, whatever its elevation', () => {
    expect(at(5000, { pascals: 101_325, reading: 'here' }).boilingCelsius).toBeCloseTo(99.97, 2)
    expect(at(650, { pascals: 99_000, reading: 'here' })).toMatchObject({ basis: 'read-here', isLikelySeaLevel: false })
  })

  it('bring a weather report up to the kitchen', () => {
    const reported = at(5000, { pascals: 101_325, reading: 'sea-level' })
    expect(reported.boilingCelsius).toBeCloseTo(at(5000).boilingCelsius, 6)
    expect(reported.basis).toBe('from-sea-level')
  })

  it('doubt a pressure that no weather brings about at that elevation', () => {
    expect(at(5000, { pascals: 101_325, reading: 'here' }).isLikelySeaLevel).toBe(true)
    expect(at(5000, { pascals: 101_325, reading: 'sea-level' }).isLikelySeaLevel).toBe(false)
  })
})

describe('a check of instruments', () => {
  it('may leave out what was not read', () => {
    expect(InstrumentCheck.parse({ ice: '', boil: '210.5', degrees: 'F', pressure: '', reading: 'here' })).toEqual({
      boil: 210.5,
      degrees: 'F',
      reading: 'here',
    })
  })

  it.each([
    [{ pressure: '990' }, ['reading', 'pressure']],
    [{ pressure: '29.3', pressureUnit: 'hPa', reading: 'here' }, ['pressure']],
    [{ pressure: '1200', pressureUnit: 'hPa', reading: 'here' }, ['pressure']],
    [{ boil: '210' }, ['degrees']],
    [{ boil: '2e2', degrees: 'F' }, ['boil']],
    [{ ice: '', boil: '', degrees: 'F', pressure: '', pressureUnit: 'hPa', reading: 'here' }, ['ice']],
  ])('refuses %j', (typed, wrong) => {
    const read = InstrumentCheck.safeParse(typed)
    expect(read.error?.issues.map(({ path }) => path[0])).toEqual(wrong)
  })

  it('is not one before anything was asked', () => {
    expect(InstrumentCheck.parse({})).toEqual({})
  })

  it('takes inches of mercury', () => {
    expect(InstrumentCheck.safeParse({ pressure: '29.3', pressureUnit: 'inHg', reading: 'here' }).success).toBe(true)
  })
})

describe('a test of a dial gauge', () => {
  it('counts through its anniversary', () => {
    expect(lastDayOfTest('2026-08-26')).toBe('2027-08-26')
    expect(lastDayOfTest('2028-02-29')).toBe('2029-02-28')
  })
})

describe('a temperature', () => {
  it('is said in both systems, a difference without the 32', () => {
    expect(sayTemperature(100)).toBe('212.0\u00a0°F (100.0\u00a0°C)')
    expect(sayPrinted(220)).toBe('220\u00a0°F (104.4\u00a0°C)')
    expect(sayDegrees(-2)).toBe('3.6\u00a0°F (2.0\u00a0°C)')
  })
})
