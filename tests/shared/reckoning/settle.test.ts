import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Balance, settle } from '@/shared/reckoning/settle'

const someBalances = (maxLength: number, most: number): fc.Arbitrary<Balance[]> =>
  fc.array(fc.integer({ min: -most, max: most }), { minLength: 1, maxLength }).map((cents) => {
    const sum = cents.reduce((a, b) => a + b, 0)
    return [...cents, -sum].map((balance, index) => ({ id: `h${index}`, name: `House ${index}`, balance: balance === 0 ? 0 : balance }))
  })

function settled(balances: readonly Balance[]) {
  const result = settle(balances)
  if (!result.ok) throw new Error('not balanced')
  return result.value
}

/** The fewest transfers by trying every way to split the parties into groups that add up to 0. */
function fewestByTrying(cents: readonly number[]): number {
  const open = cents.filter((each) => each !== 0)
  const mostGroups = (left: readonly number[]): number => {
    const [first, ...others] = left
    if (first === undefined) return 0
    let best = Number.NEGATIVE_INFINITY
    for (let set = 0; set < 1 << others.length; set += 1) {
      const inside = others.filter((_, index) => set & (1 << index))
      if (first + inside.reduce((a, b) => a + b, 0) !== 0) continue
      best = Math.max(best, 1 + mostGroups(others.filter((_, index) => !(set & (1 << index)))))
    }
    return best
  }
  return open.length - mostGroups(open)
}

describe('a settlement', () => {
  it('leaves everybody even, moves no more than is owed, and nobody both pays and receives', () => {
    fc.assert(
      fc.property(fc.oneof(someBalances(30, 20), someBalances(60, 100_000)), (balances) => {
        const { transfers, lowerBound } = settled(balances)
        const after = new Map(balances.map(({ id, balance }) => [id, balance]))
        for (const { fromId, toId, amount } of transfers) {
          after.set(fromId, (after.get(fromId) ?? 0) + amount)
          after.set(toId, (after.get(toId) ?? 0) - amount)
        }
        expect([...after.values()].every((each) => each === 0)).toBe(true)
        const owed = balances.reduce((sum, { balance }) => sum + Math.max(0, balance), 0)
        expect(transfers.reduce((sum, { amount }) => sum + amount, 0)).toBe(owed)
        const open = balances.filter(({ balance }) => balance !== 0).length
        expect(transfers.length).toBeLessThanOrEqual(Math.max(0, open - 1))
        expect(transfers.length).toBeGreaterThanOrEqual(lowerBound)
        const payers = new Set(transfers.map(({ fromId }) => fromId))
        expect(transfers.some(({ toId }) => payers.has(toId))).toBe(false)
      }),
      { numRuns: 200 },
    )
  })

  it('takes the fewest transfers there are, against trying every grouping', () => {
    fc.assert(
      fc.property(someBalances(8, 6), (balances) => {
        const { transfers, isFewest } = settled(balances)
        expect(isFewest).toBe(true)
        expect(transfers).toHaveLength(fewestByTrying(balances.map(({ balance }) => balance)))
      }),
      { numRuns: 300 },
    )
  })

  it('does not look at the order of the balances', () => {
    fc.assert(
      fc.property(someBalances(12, 9), (balances) => {
        expect(settled([...balances].reverse())).toEqual(settled(balances))
      }),
    )
  })

  it('says so when a large group was not searched', () => {
    // 25 parties, no two opposite: 24 odd debts against one creditor are provably fewest, 12 against 13 are not.
    const one = Array.from({ length: 24 }, (_, index) => -(2 * index + 1))
    const star = [...one, 576].map((balance, index) => ({ id: `h${index}`, name: `h${index}`, balance }))
    expect(settled(star)).toMatchObject({ isFewest: true, lowerBound: 24 })
    const half = Array.from({ length: 13 }, (_, index) => 1000 + 7 * index)
    const many = [...half, ...Array.from({ length: 11 }, (_, index) => -(900 + 11 * index))]
    const rest = many.reduce((a, b) => a + b, 0)
    const large = [...many, -rest].map((balance, index) => ({ id: `h${index}`, name: `h${index}`, balance }))
    expect(settled(large).isFewest).toBe(false)
    expect(settled(large).transfers.length).toBeLessThanOrEqual(24)
  })

  it('refuses balances that do not add up to 0', () => {
    expect(settle([{ id: 'a', name: 'a', balance: 1 }])).toEqual({ ok: false, problem: { kind: 'not-balanced', sum: 1 } })
    expect(settle([])).toMatchObject({ ok: true, value: { transfers: [] } })
  })
})
