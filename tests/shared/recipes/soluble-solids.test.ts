import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dilutedBrix, fruitBrix } from '@/shared/recipes/fruit-solids'
import { boilDown, FINISH_BRIX, jarsToHold, jarsToSterilise } from '@/shared/recipes/soluble-solids'

const ABOUT_11 = { low: 9, typical: 11, high: 13 }

describe('boiling down to 65 degrees Brix', () => {
  // common practice: 4 L of juice and water with 1.25 kg of sugar end at about half the volume, about 2 L
  it('leaves about 2 litres of 4 litres of juice and water with 1.25 kg of sugar', () => {
    const left = boilDown({ juiceLitres: 4, juiceBrix: ABOUT_11, sugarKilograms: 1.25 })
    if (!left.ok) return expect.unreachable()
    // 4 L at 11 Brix are 4.176 kg with 0.459 kg solids; 1.709 kg solids are 2.630 kg at 65 %, 1.99 L
    expect(left.value.kilograms.typical).toBeCloseTo(2.63, 2)
    expect(left.value.litres.typical).toBeCloseTo(1.99, 2)
    expect(left.value.litres.low < 2 && 2 < left.value.litres.high).toBe(true)
    expect(left.value.volumeLeft.typical).toBeCloseTo(0.416, 3) // of 4.79 L, the sugar dissolved
    expect(left.value.finishBrix).toBe(65)
    expect(left.value.inputs).toEqual({ juiceLitres: 4, juiceBrix: ABOUT_11, sugarKilograms: 1.25 })
  })

  // common practice: nine half-pint or smaller jars, and a fifth more jars sterilised
  it('fills nine half-pints with those two litres, and asks for eleven sterile jars', () => {
    expect(jarsToHold(2, 237)).toBe(9)
    expect(jarsToHold(1.896, 237)).toBe(8)
    expect(jarsToSterilise(9)).toBe(11)
    expect(jarsToSterilise(10)).toBe(12)
    expect(jarsToSterilise(0)).toBe(0)
  })

  it('keeps every gram of solids', () => {
    const litres = fc.integer({ min: 1, max: 80 }).map((each) => each / 4)
    fc.assert(
      fc.property(litres, fc.integer({ min: 5, max: 18 }), fc.integer({ min: 0, max: 8 }), (juiceLitres, brix, sugarKilograms) => {
        const left = boilDown({ juiceLitres, juiceBrix: { low: brix, typical: brix, high: brix }, sugarKilograms })
        if (!left.ok) {
          expect(left.problem.kind).toBe('already-past-finish')
          return
        }
        const solids = (juiceLitres * (1 + 0.004 * brix) * brix) / 100 + sugarKilograms
        expect((left.value.kilograms.typical * FINISH_BRIX) / 100).toBeCloseTo(solids, 9)
        expect(left.value.volumeLeft.typical).toBeLessThan(1)
      }),
    )
  })

  it('is refused where the sugar alone passes the finish, and without juice', () => {
    expect(boilDown({ juiceLitres: 1, juiceBrix: ABOUT_11, sugarKilograms: 3 })).toMatchObject({ problem: { kind: 'already-past-finish' } })
    expect(boilDown({ juiceLitres: 0, juiceBrix: ABOUT_11, sugarKilograms: 1 })).toEqual({ ok: false, problem: { kind: 'not-positive' } })
    expect(boilDown({ juiceLitres: 1, juiceBrix: ABOUT_11, sugarKilograms: -1 }).ok).toBe(false)
    expect(boilDown({ juiceLitres: 1, juiceBrix: { ...ABOUT_11, low: -1 }, sugarKilograms: 1 }).ok).toBe(false)
  })
})

describe('the solids of fruit', () => {
  // 21 CFR 150.140(b): apple 7.5, plum 7.0, strawberry 12.5; 100 / factor is the average percent
  it('are a hundred over the factor of the standard of identity, give or take two', () => {
    expect(fruitBrix('apple').typical).toBeCloseTo(13.33, 2)
    expect(fruitBrix('plum').typical).toBeCloseTo(14.29, 2)
    expect(fruitBrix('strawberry')).toEqual({ low: 6, typical: 8, high: 10 })
  })

  it('thin out with added water', () => {
    expect(dilutedBrix({ low: 6, typical: 8, high: 10 }, 3, 1)).toEqual({ low: 4.5, typical: 6, high: 7.5 })
  })
})
