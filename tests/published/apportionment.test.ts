import { describe, expect, it } from 'vitest'
import { exactPart, largestRemainder } from '@/shared/allocation/largest-remainder'

/** Published results of the method of Hamilton (largest remainders): claims, seats, seats each. */
const EXAMPLES: readonly [source: string, claims: readonly number[], seats: number, published: readonly number[]][] = [
  [
    'Balinski and Young, The quota method of apportionment, Amer. Math. Monthly 82 (1975), example 1',
    [5117, 4400, 162, 161, 160],
    100,
    [51, 44, 2, 2, 1],
  ],
  ['the same, example 2', [9061, 7179, 5259, 3319, 1182], 26, [9, 7, 5, 4, 1]],
  ['Birgen, Math of Democracy, apportionment: four-state republic', [69000, 267000, 133000, 331000], 160, [14, 53, 27, 66]],
  ['University of Alabama, Math 103, apportionment paradoxes: Alabama paradox, before', [940, 9030, 10030], 200, [10, 90, 100]],
  ['the same, after', [940, 9030, 10030], 201, [9, 91, 101]],
  ['the same: population paradox, before', [150, 78, 173, 204, 295], 50, [8, 4, 10, 11, 17]],
  ['the same, after', [150, 78, 181, 204, 296], 50, [8, 5, 10, 11, 16]],
  ['the same: new-states paradox, before', [89550, 10450], 100, [90, 10]],
  ['the same, after', [89550, 10450, 5250], 105, [89, 11, 5]],
  ['Saari, Amer. Math. Monthly (Dec 1978), as cited in net.math, 1982: 49 seats', [3, 7, 90], 49, [2, 3, 44]],
  ['the same: 51 seats', [3, 7, 90], 51, [1, 4, 46]],
  ['Birgen, Math of Democracy: ten toys by study minutes', [54, 243, 703], 10, [1, 2, 7]],
  ['the same, eleven toys', [54, 243, 703], 11, [0, 3, 8]],
  ['whole quotas, test suite of the apportionment library of M. Lackner', [14, 28, 7, 35], 12, [2, 4, 1, 5]],
  ['zero claims, the same', [0, 14, 28, 0, 0], 6, [0, 2, 4, 0, 0]],
]

describe('largest remainders against published results', () => {
  it.each(EXAMPLES)('%s', (_source, claims, seats, published) => {
    expect(largestRemainder(seats, claims)).toEqual(published)
  })

  it('keeps the quota rule in every one of them', () => {
    for (const [, claims, seats, published] of EXAMPLES) {
      const sum = claims.reduce((a, b) => a + b, 0)
      for (const [index, share] of published.entries()) {
        const { whole, over } = exactPart(seats, claims[index] ?? 0, sum)
        expect(share === whole || (over > 0 && share === whole + 1)).toBe(true)
      }
    }
  })
})

describe('the paradoxes that theory promises for largest remainders', () => {
  const shares = (seats: number, ...claims: number[]) => largestRemainder(seats, claims)

  it('Alabama: one thing more in all, one fewer for somebody', () => {
    expect([shares(200, 940, 9030, 10030)[0], shares(201, 940, 9030, 10030)[0]]).toEqual([10, 9])
    expect([shares(10, 54, 243, 703)[0], shares(11, 54, 243, 703)[0]]).toEqual([1, 0])
  })

  it('population: a claim that grew loses one to a claim that did not', () => {
    const [before, after] = [shares(50, 150, 78, 173, 204, 295), shares(50, 150, 78, 181, 204, 296)]
    expect([before[4], after[4]]).toEqual([17, 16])
    expect([before[1], after[1]]).toEqual([4, 5])
  })

  it('new states: somebody joins with a fair number and others change places', () => {
    expect(shares(100, 89550, 10450)).toEqual([90, 10])
    expect(shares(105, 89550, 10450, 5250)).toEqual([89, 11, 5])
  })

  it('1880 census: the quotas that made Alabama lose a seat between 299 and 300', () => {
    // Populations and quotas: For All Practical Purposes (10th ed.), chapter 14, example 7; quotas printed to 3 to 5 places from a rounded divisor.
    const POPULATION = 49_373_329
    const quota = (seats: number, state: number) => {
      const { whole, over, of } = exactPart(seats, state, POPULATION)
      return whole + over / of
    }
    expect(quota(299, 1_262_505)).toBeCloseTo(7.646, 3)
    expect(quota(300, 1_262_505)).toBeCloseTo(7.67117, 3)
    expect(quota(299, 3_077_871)).toBeCloseTo(18.6393, 3)
    expect(quota(300, 3_077_871)).toBeCloseTo(18.70159, 3)
    expect(quota(299, 1_591_729)).toBeCloseTo(9.63936, 3)
    expect(quota(300, 1_591_729)).toBeCloseTo(9.67158, 3)
    // Alabama's fraction comes before the other two at 299 and after them at 300.
    const fraction = (seats: number, state: number) => quota(seats, state) % 1
    expect(fraction(299, 1_262_505)).toBeGreaterThan(fraction(299, 1_591_729))
    expect(fraction(299, 1_262_505)).toBeGreaterThan(fraction(299, 3_077_871))
    expect(fraction(300, 1_262_505)).toBeLessThan(fraction(300, 1_591_729))
    expect(fraction(300, 1_262_505)).toBeLessThan(fraction(300, 3_077_871))
  })
})

describe('exactness', () => {
  it('decides a tie by the order given, where binary fractions would decide by chance', () => {
    expect(largestRemainder(50, [3, 7, 90])).toEqual([2, 3, 45]) // 1.5, 3.5, 45
    expect(largestRemainder(50, [7, 3, 90])).toEqual([4, 1, 45])
    expect(largestRemainder(1, [1, 1, 1])).toEqual([1, 0, 0])
  })

  it('is exact where products pass 2^53', () => {
    const large = 2 ** 50
    expect(largestRemainder(2 ** 40 + 1, [large, large + 1])).toEqual([2 ** 39, 2 ** 39 + 1])
  })

  it('refuses what cannot be shared', () => {
    expect(() => largestRemainder(3, [0, 0])).toThrow(RangeError)
    expect(() => largestRemainder(3, [])).toThrow(RangeError)
    expect(() => largestRemainder(0.5, [1])).toThrow(RangeError)
    expect(() => largestRemainder(3, [-1, 2])).toThrow(RangeError)
    expect(() => largestRemainder(3, [Number.MAX_SAFE_INTEGER, 1])).toThrow(RangeError)
    expect(largestRemainder(0, [])).toEqual([])
  })
})
