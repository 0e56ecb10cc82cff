import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bestWorstDeviation, type SizedClaim, shareSizes } from '@/shared/allocation/share-sizes'
import { JAR_MILLILITRES, JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'

type Sealed = Partial<Record<JarSize, number>>

/** Households A, B, C … that are entitled to parts of everything, by claiming the same multiple of each size. */
const entitled = (parts: readonly number[], sizes: readonly JarSize[]): SizedClaim[] =>
  parts.map((part, index) => {
    const name = String.fromCharCode(65 + index)
    return { householdId: name, householdName: name, jars: Object.fromEntries(sizes.map((size) => [size, part * 12])) }
  })

describe('several sizes of one product', () => {
  // Expected figures worked out by exhaustive search over all sharings, apart from this code.
  const CASES: readonly [string, Sealed, readonly number[], number, number][] = [
    ['three equal households, quarts, pints and half-pints', { quart: 2, pint: 4, 'half-pint': 4 }, [1, 1, 1], 157.333, 157.334],
    ['three to two to one, pints and half-pints', { pint: 8, 'half-pint': 5 }, [3, 2, 1], 117.5, 118.6],
    ['one size', { pint: 7 }, [5, 3, 2], 236.5, 236.5],
  ]

  it.each(CASES)('%s', (_title, sealed, parts, best, most) => {
    const claims = entitled(parts, Object.keys(sealed) as JarSize[])
    const { worstDeviation } = shareSizes(sealed, claims)
    expect(bestWorstDeviation(sealed, claims)).toBeCloseTo(best, 2)
    expect(worstDeviation).toBeGreaterThanOrEqual(best - 0.001)
    expect(worstDeviation).toBeLessThanOrEqual(most)
  })

  it('carries the odd quart of one household forward to its pints, where size by size one household would lose three times', () => {
    const { shares } = shareSizes({ quart: 2, pint: 4, 'half-pint': 4 }, entitled([1, 1, 1], ['quart', 'pint', 'half-pint']))
    expect(shares.map(({ jars }) => jars)).toEqual([
      { quart: 1, pint: 1, 'half-pint': 1 },
      { quart: 1, pint: 1, 'half-pint': 1 },
      { quart: 0, pint: 2, 'half-pint': 2 },
    ])
    expect(shares.map(({ millilitres }) => millilitres)).toEqual([1656, 1656, 1420])
    for (const { target } of shares) expect(target).toBeCloseTo(1577.333, 2)
  })

  const someClaims = fc
    .array(fc.record({ pint: fc.nat(9), quart: fc.nat(9), 'half-pint': fc.nat(9) }), { minLength: 1, maxLength: 7 })
    .map((all) => all.map((jars, index): SizedClaim => ({ householdId: `h${index}`, householdName: `House ${index}`, jars })))
  const someSealed = fc.record({ pint: fc.nat(40), quart: fc.nat(40), 'half-pint': fc.nat(40) })

  it('neither makes nor loses a jar of any size, keeps to the claims, and does not look at their order', () => {
    fc.assert(
      fc.property(someSealed, someClaims, (sealed, claims) => {
        const table = shareSizes(sealed, claims)
        for (const size of ['pint', 'quart', 'half-pint'] as const) {
          const asked = claims.reduce((sum, claim) => sum + (claim.jars[size] ?? 0), 0)
          const given = table.shares.reduce((sum, share) => sum + (share.jars[size] ?? 0), 0)
          expect(given).toBe(Math.min(asked, sealed[size]))
          for (const share of table.shares) {
            expect(share.jars[size] ?? 0).toBeLessThanOrEqual(
              claims.find(({ householdId }) => householdId === share.householdId)?.jars[size] ?? 0,
            )
          }
        }
        const volume = JAR_SIZES.reduce(
          (sum, size) => sum + table.shares.reduce((all, share) => all + (share.jars[size] ?? 0), 0) * JAR_MILLILITRES[size],
          0,
        )
        expect(table.shares.reduce((sum, { target }) => sum + target, 0)).toBeCloseTo(volume, 4)
        expect(shareSizes(sealed, [...claims].reverse())).toEqual(table)
      }),
      { numRuns: 500 },
    )
  })

  it('is never better than the best there is', () => {
    const few = someClaims.map((claims) => claims.slice(0, 3))
    fc.assert(
      fc.property(someSealed, few, (sealed, claims) => {
        const best = bestWorstDeviation(sealed, claims, 300_000)
        if (best !== undefined) expect(shareSizes(sealed, claims).worstDeviation).toBeGreaterThanOrEqual(best - 1e-6)
      }),
      { numRuns: 30 },
    )
  })

  it('gives up the search for the best when there is too much to try, and refuses half jars', () => {
    expect(bestWorstDeviation({ pint: 30, quart: 30 }, entitled([5, 4, 3, 2, 1], ['pint', 'quart']), 1000)).toBeUndefined()
    expect(() => shareSizes({ pint: 1.5 }, entitled([1], ['pint']))).toThrow(RangeError)
  })
})
