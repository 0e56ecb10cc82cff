import type { Minor } from '@/shared/reckoning/money'

/** A pool's total and the weight of each party in it. Whole numbers, 0 or more; all pools have the parties in the same order. */
export interface WeightedPool {
  readonly total: Minor
  readonly weights: readonly number[]
}

/** One party's part of all pools. */
export interface ExactShare {
  /** As it is charged; the shares of all parties add up to the totals of all pools. */
  readonly share: Minor
  /** The exact part to the nearest minor unit, half up. */
  readonly nearest: Minor
}

/**
 * Shares several pools over the same parties, each by its own weights, and rounds once at the end: parts down to whole minor units, and what is left
 * one each to the largest fractions, ties to the lower index.
 *
 * The fractions are kept exactly over one common denominator. Rounding every pool by itself could put a party off by a unit a pool.
 *
 * @throws RangeError when a pool has something to share and all of its weights are 0
 */
export function shareExactly(pools: readonly WeightedPool[]): ExactShare[] {
  const used = pools.filter((pool) => pool.total !== 0)
  const denominators = used.map(({ weights }) => weights.reduce((sum, weight) => sum + BigInt(weight), 0n))
  if (denominators.includes(0n)) throw new RangeError('A pool has nobody to carry it')

  const common = denominators.reduce(leastCommonMultiple, 1n)
  const count = pools[0]?.weights.length ?? 0
  const exact = Array.from({ length: count }, (_, party) =>
    used.reduce(
      (sum, { total, weights }, pool) => sum + BigInt(total) * BigInt(weights[party] ?? 0) * (common / (denominators[pool] ?? 1n)),
      0n,
    ),
  )
  return roundTogether(exact, common)
}

function roundTogether(exact: readonly bigint[], common: bigint): ExactShare[] {
  const all = exact.reduce((sum, part) => sum + part, 0n) / common
  const left = Number(all - exact.reduce((sum, part) => sum + part / common, 0n))
  const byFraction = exact
    .map((part, index) => ({ fraction: part % common, index }))
    .sort((a, b) => compare(b.fraction, a.fraction) || a.index - b.index)
  const up = new Set(byFraction.slice(0, left).map(({ index }) => index))
  return exact.map((part, index) => ({
    share: Number(part / common) + (up.has(index) ? 1 : 0),
    nearest: Number((2n * part + common) / (2n * common)),
  }))
}

const compare = (a: bigint, b: bigint) => (a < b ? -1 : a > b ? 1 : 0)

const leastCommonMultiple = (a: bigint, b: bigint) => (a / greatestCommonDivisor(a, b)) * b

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  let [larger, smaller] = [a, b]
  while (smaller !== 0n) [larger, smaller] = [smaller, larger % smaller]
  return larger
}
