import { describe, expect, it } from 'vitest'
import { boilingPointAt, gelPoint } from '@/shared/instruments/boiling-point'
import { checkThermometer } from '@/shared/instruments/check-thermometer'
import { fahrenheitFromCelsius } from '@/shared/units/convert'

describe('a thermometer', () => {
  it('that shows 98 C where water boils at 99.5 must be read 1.5 higher', () => {
    expect(checkThermometer({ iceCelsius: null, boilCelsius: 98 }, 99.5)).toEqual({
      ok: true,
      value: { addAtIce: null, addAtBoil: 1.5, addNearBoil: 1.5, usable: true },
    })
  })

  it('is judged by ice alone where it was not boiled', () => {
    expect(checkThermometer({ iceCelsius: 1, boilCelsius: null }, 99.5)).toEqual({
      ok: true,
      value: { addAtIce: -1, addAtBoil: null, addNearBoil: -1, usable: true },
    })
  })

  it('takes the boil for work near the boil', () => {
    expect(checkThermometer({ iceCelsius: 1, boilCelsius: 100 }, 99.5)).toMatchObject({
      value: { addAtIce: -1, addAtBoil: -0.5, addNearBoil: -0.5 },
    })
  })

  it('more than 2 C off at either end is not used', () => {
    const usable = (iceCelsius: number, boilCelsius: number) => {
      const check = checkThermometer({ iceCelsius, boilCelsius }, 100)
      return check.ok && check.value.usable
    }
    expect([usable(0, 98), usable(0, 97.9), usable(2, 100), usable(-2.1, 100)]).toEqual([true, false, true, false])
  })

  it('without a reading is not checked', () => {
    expect(checkThermometer({ iceCelsius: null, boilCelsius: null }, 100)).toEqual({ ok: false, problem: { kind: 'no-reading' } })
  })
})

describe('the gel point', () => {
  it('stands 8 F above boiling water: 220 F at the sea', () => {
    const sea = boilingPointAt(0)
    expect(sea.ok && fahrenheitFromCelsius(gelPoint(sea.value))).toBeCloseTo(219.95, 2)
    expect(fahrenheitFromCelsius(gelPoint(100))).toBeCloseTo(220, 9)
  })
})
