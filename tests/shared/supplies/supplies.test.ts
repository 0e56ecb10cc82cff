import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { balanceJars, type DayCount, NOTHING_COUNTED } from '@/shared/supplies/balance-jars'
import { FIVE_YEARS, judgeLids, type LidLot } from '@/shared/supplies/lid-age'
import { type JarStock, jarsNeeded, supplyNeed } from '@/shared/supplies/supplies-needed'
import { sayDifference } from '@/shared/wording/say-balance'

const DAY = '2027-08-26'

describe('lids', () => {
  const lids = (since: string | null, isUsed = false): LidLot => ({ mouth: 'regular', count: 24, since, isUsed })

  it('are out at about seven years, by either guidance', () => {
    expect(judgeLids(lids('2020-08-01'), DAY)).toMatchObject({
      isUsable: false,
      why: 'too-old',
      ageMonths: 85,
      rule: { id: 'three-years' },
    })
    expect(judgeLids(lids('2020-08-01'), DAY, FIVE_YEARS)).toMatchObject({ isUsable: false, why: 'too-old' })
  })

  it('are judged by the stricter guidance unless told otherwise', () => {
    expect(judgeLids(lids('2023-05-01'), DAY)).toMatchObject({ isUsable: false, why: 'too-old' })
    expect(judgeLids(lids('2023-05-01'), DAY, FIVE_YEARS)).toMatchObject({ isUsable: true })
  })

  it('pass on the last day of the third year and not on the day after', () => {
    expect(judgeLids(lids('2024-08-26'), DAY)).toMatchObject({ isUsable: true, ageMonths: 36 })
    expect(judgeLids(lids('2024-08-25'), DAY)).toMatchObject({ isUsable: false, ageMonths: 37 })
    expect(judgeLids(lids(DAY), DAY)).toMatchObject({ isUsable: true, ageMonths: 0 })
  })

  it('are for one use, and their age has to be known', () => {
    expect(judgeLids(lids('2027-08-01', true), DAY)).toEqual({ isUsable: false, why: 'used' })
    expect(judgeLids(lids(null), DAY)).toEqual({ isUsable: false, why: 'age-unknown' })
  })
})

describe('what a day needs', () => {
  it('is 88 lids for 80 jars, eight boxes of twelve', () => {
    expect(supplyNeed(80, 0)).toEqual({ planned: 80, withSpare: 88, usable: 0, missing: 88, boxes: 8, over: 8 })
  })

  it('is no box when there is enough', () => {
    expect(supplyNeed(80, 100)).toMatchObject({ missing: 0, boxes: 0, over: 12 })
    expect(supplyNeed(0, 0)).toMatchObject({ withSpare: 0, boxes: 0, over: 0 })
  })

  it('always covers plan and spare with the fewest whole boxes', () => {
    fc.assert(
      fc.property(fc.nat(5000), fc.nat(5000), fc.nat(50), fc.integer({ min: 1, max: 24 }), (planned, usable, spare, boxOf) => {
        const need = supplyNeed(planned, usable, spare, boxOf)
        expect(need.withSpare * 100).toBeGreaterThanOrEqual(planned * (100 + spare))
        expect((need.withSpare - 1) * 100).toBeLessThan(planned * (100 + spare))
        expect(usable + need.boxes * boxOf).toBe(need.withSpare + need.over)
        if (need.boxes > 0) expect(usable + (need.boxes - 1) * boxOf).toBeLessThan(need.withSpare)
      }),
      { examples: [[80, 0, 10, 12]] },
    )
  })

  it('leaves chipped jars out, and shop jars wherever there is pressure', () => {
    const stock: JarStock[] = [
      { size: 'pint', count: 20, chipped: 2, isShopJar: false },
      { size: 'pint', count: 18, chipped: 1, isShopJar: true },
      { size: 'half-pint', count: 52, chipped: 0, isShopJar: false },
    ]
    const [halfPints, pints] = jarsNeeded(
      [
        { size: 'pint', jars: 32, method: 'boiling-water' },
        { size: 'half-pint', jars: 48, method: 'boiling-water' },
      ],
      stock,
    )
    // 48 and 10 % is 52.8, so 53; 32 and 10 % is 35.2, so 36 against 38 less 3 chipped.
    expect(halfPints).toMatchObject({ size: 'half-pint', withSpare: 53, usable: 52, missing: 1, boxes: 1 })
    expect(pints).toMatchObject({ size: 'pint', withSpare: 36, usable: 35, chippedOut: 3, shopJarsOut: 0, missing: 1 })

    const [underPressure] = jarsNeeded([{ size: 'pint', jars: 10, method: 'pressure' }], stock)
    expect(underPressure).toMatchObject({ usable: 18, chippedOut: 3, shopJarsOut: 17 })
  })

  it('refuses half jars', () => {
    expect(() => supplyNeed(1.5, 0)).toThrow(RangeError)
    expect(() => supplyNeed(1, -1)).toThrow(RangeError)
    expect(() => supplyNeed(1, 0, 10, 0)).toThrow(RangeError)
  })
})

// The small evening: 52 half-pints and 38 pints came, 47 and 30 were filled, one pint broke in the canner, one of each did not seal.
const HALF_PINTS: DayCount = {
  ...NOTHING_COUNTED,
  ...{ brought: 52, filled: 47, returnedEmpty: 5, sealed: 46, unsealed: 1, refrigerated: 1, sharedOut: 46 },
}
const PINTS: DayCount = {
  ...NOTHING_COUNTED,
  ...{ brought: 38, filled: 30, returnedEmpty: 8, brokenFilled: 1, sealed: 28, unsealed: 1, refrigerated: 1, sharedOut: 28 },
  ...{ lidsBought: 96, lidsUsed: 77, lidsLeft: 19, bandsBrought: 95, bandsReturned: 94, bandsDiscarded: 1 },
}

describe('the balance of a day', () => {
  it('adds up for the small evening', () => {
    const balance = balanceJars({ pint: PINTS, 'half-pint': HALF_PINTS })
    expect(balance.differences).toEqual([])
    expect(balance.lines).toHaveLength(12)
    expect(balance.lines[0]).toMatchObject({ name: 'empty-jars', size: 'half-pint', difference: 0 })
  })

  it.each([
    [
      { returnedEmpty: 7 },
      'empty-jars',
      1,
      '1 pint missing: 38 brought is not 30 filled + 7 went back empty. Count again, or say where it went.',
    ],
    [
      { sealed: 29 },
      'after-the-canner',
      -1,
      '1 pint too many: 30 filled is not 29 sealed + 1 not sealed + 1 broke with food in them. Count again, or say where it came from.',
    ],
    [{ refrigerated: 0 }, 'unsealed-jars', 1, '1 pint missing: 1 not sealed is not 0. Count again, or say where it went.'],
    [{ sharedOut: 26 }, 'sealed-jars', 2, '2 pints missing: 28 sealed is not 26 shared out. Count again, or say where they went.'],
    [{ lidsLeft: 18 }, 'lids', 1, '1 lid for pints missing: 96 bought is not 77 used + 18 left. Count again, or say where it went.'],
    [
      { bandsReturned: 95 },
      'bands',
      -1,
      '1 band for pints too many: 95 brought is not 95 went back + 1 thrown out. Count again, or say where it came from.',
    ],
  ] as const)('names the difference when %o', (change, name, difference, sentence) => {
    const { differences } = balanceJars({ pint: { ...PINTS, ...change } })
    const named = differences.find((line) => line.name === name)
    expect(named?.difference).toBe(difference)
    expect(named && sayDifference(named)).toBe(sentence)
  })

  it('counts a jar that sealed at the second attempt once', () => {
    const again = { ...PINTS, refrigerated: 0, reprocessed: 1, sharedOut: 29 }
    expect(balanceJars({ pint: again }).differences).toEqual([])
  })

  it('finds every single miscount, whatever the day', () => {
    const keys = Object.keys(NOTHING_COUNTED) as (keyof DayCount)[]
    fc.assert(
      fc.property(fc.constantFrom(...keys), fc.integer({ min: 1, max: 9 }), (key, by) => {
        expect(balanceJars({ pint: { ...PINTS, [key]: PINTS[key] + by } }).differences.length).toBeGreaterThan(0)
      }),
    )
  })

  it('refuses counts that cannot be', () => {
    expect(() => balanceJars({ pint: { ...PINTS, sealed: -1 } })).toThrow('sealed')
    expect(() => balanceJars({ pint: { ...PINTS, lidsUsed: 0.5 } })).toThrow('lidsUsed')
  })
})
