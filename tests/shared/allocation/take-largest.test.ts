import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { takeLargest } from '@/shared/allocation/take-largest'

/** Takes by looking through everything each time. */
function plainly(times: number, values: readonly bigint[], most: readonly number[], fall: bigint): number[] {
  const taken = values.map(() => 0)
  for (let left = times; left > 0; left -= 1) {
    let best = -1
    for (const [index, value] of values.entries()) {
      if ((taken[index] ?? 0) >= (most[index] ?? 0)) continue
      const now = value - BigInt(taken[index] ?? 0) * fall
      if (best < 0 || now > (values[best] ?? 0n) - BigInt(taken[best] ?? 0) * fall) best = index
    }
    if (best < 0) break
    taken[best] = (taken[best] ?? 0) + 1
  }
  return taken
}

function heaped(times: number, values: readonly bigint[], most: readonly number[], fall: bigint): number[] {
  const taken = values.map(() => 0)
  takeLargest(times, {
    size: values.length,
    worthOf: (index) => (values[index] ?? 0n) - BigInt(taken[index] ?? 0) * fall,
    isOpen: (index) => (taken[index] ?? 0) < (most[index] ?? 0),
    take: (index) => {
      taken[index] = (taken[index] ?? 0) + 1
    },
  })
  return taken
}

describe('taking the largest again and again', () => {
  it('takes equal ones from the first on, and no more than is open', () => {
    expect(heaped(3, [5n, 5n, 5n, 5n], [1, 1, 1, 1], 1n)).toEqual([1, 1, 1, 0])
    expect(heaped(9, [5n, 1n], [2, 3], 1n)).toEqual([2, 3])
    expect(heaped(4, [], [], 1n)).toEqual([])
  })

  it('takes what looking through everything takes', () => {
    const things = fc.array(fc.record({ value: fc.bigInt(-20n, 20n), most: fc.nat(4) }), { maxLength: 40 })
    fc.assert(
      fc.property(fc.nat(80), things, fc.bigInt(0n, 9n), (times, all, fall) => {
        const [values, most] = [all.map(({ value }) => value), all.map((each) => each.most)]
        expect(heaped(times, values, most, fall)).toEqual(plainly(times, values, most, fall))
      }),
    )
  })
})
