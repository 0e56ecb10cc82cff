import { describe, expect, it } from 'vitest'
import { splitMoney } from '@/shared/reckoning/money'
import { type Balance, settle } from '@/shared/reckoning/settle'

const balancesOf = (cents: Record<string, number>): Balance[] =>
  Object.entries(cents).map(([name, balance]) => ({ id: name, name, balance }))

function settled(cents: Record<string, number>) {
  const result = settle(balancesOf(cents))
  if (!result.ok) throw new Error(JSON.stringify(result.problem))
  const after = new Map(Object.entries(cents))
  for (const { fromId, toId, amount } of result.value.transfers) {
    expect(amount).toBeGreaterThan(0)
    after.set(fromId, (after.get(fromId) ?? 0) + amount)
    after.set(toId, (after.get(toId) ?? 0) - amount)
  }
  expect([...after.values()].every((balance) => balance === 0)).toBe(true)
  return result.value
}

// Fewest transfers: number of parties less the largest number of groups that add up to 0 (the problem is NP-hard, by subset sum). The expected numbers were
// worked out by two independent searches, a partition of sets and a depth-first search.
describe('settlement examples with a known fewest number of transfers', () => {
  it.each([
    [{ A: 6000, B: -3000, C: -3000 }, 2],
    [{ A: 1000, B: -1000, C: 2500, D: -2500 }, 2],
    [{ A: 0, B: 0, C: 0 }, 0],
    [{ A: 500, B: 400, C: -300, D: -300, E: -200, F: -100 }, 4],
    [{ A: 901, B: -450, C: -451 }, 2],
    [{ A: 700, B: -400, C: -300, D: 600, E: -350, F: -250, G: -100, H: 100 }, 5],
    [{ A: 1300, B: -700, C: -600, D: 1100, E: -900, F: -200 }, 4],
    [{ A: 12345, B: -2345, C: -4000, D: -6000 }, 3],
    [{ A: -500, B: 300, C: -800, D: -700, E: 800, F: 900 }, 4],
    [{ Ana: 3978, Ben: -181, Cy: -1955, Dee: -1842 }, 3],
  ] as const)('%o takes %d', (cents, fewest) => {
    const { transfers, isFewest, lowerBound } = settled(cents)
    expect(transfers).toHaveLength(fewest)
    expect(isFewest).toBe(true)
    expect(lowerBound).toBeLessThanOrEqual(fewest)
  })
})

describe('splitting examples: largest remainders, ties to the lower index', () => {
  it.each([
    [10000, [1, 1, 1], [3334, 3333, 3333]],
    [1, [1, 1, 1], [1, 0, 0]],
    [4799, [3, 2, 2, 1], [1799, 1200, 1200, 600]],
    [0, [1, 2], [0, 0]],
    [9999, [1, 1, 1, 1, 1, 1, 1], [1429, 1429, 1429, 1428, 1428, 1428, 1428]],
    [12550, [7, 0, 5], [7321, 0, 5229]],
    [100, [33, 33, 34], [33, 33, 34]],
    [6421, [1, 1, 1, 1], [1606, 1605, 1605, 1605]],
    [1899, [3, 2, 2, 1], [712, 475, 475, 237]],
    [250, [1, 0, 1, 0], [125, 0, 125, 0]],
  ])('%d by %o', (cents, weights, parts) => {
    expect(splitMoney(cents, weights)).toEqual(parts)
  })

  it('a refund undoes the payment to the cent', () => {
    expect(splitMoney(-10000, [1, 1, 1])).toEqual([-3334, -3333, -3333])
  })
})
