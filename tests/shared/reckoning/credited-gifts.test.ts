import { describe, expect, it } from 'vitest'
import { creditedQuantities } from '@/shared/reckoning/credited-gifts'

const gift = (id: string, householdId: string, item: string, quantity: number, unit = 'lb') => ({ id, householdId, item, quantity, unit })
const lot = (householdId: string | null, item: string, quantity: number, unit = 'lb') => ({ householdId, item, quantity, unit })
const credited = (...of: Parameters<typeof creditedQuantities>) => Object.fromEntries(creditedQuantities(...of))

describe('gifts for a credit', () => {
  const plums = gift('plums', 'ash', 'plums', 12)

  it('count as promised until the kettles are done, and afterwards only if they came', () => {
    expect(credited([plums], [], false)).toEqual({ plums: 12 })
    expect(credited([plums], [], true)).toEqual({ plums: 0 })
    expect(credited([plums], [lot('birch', 'plums', 12), lot(null, 'plums', 12), lot('ash', 'beans', 12)], true)).toEqual({ plums: 0 })
  })

  it('count by what was weighed in, less or more, in whatever unit of weight', () => {
    expect(credited([plums], [lot('ash', 'ripe plums', 9.5)], false)).toEqual({ plums: 9.5 })
    expect(credited([plums], [lot('ash', 'plums', 10), lot('ash', 'plums', 4)], true)).toEqual({ plums: 14 })
    expect(credited([plums], [lot('ash', 'plums', 160, 'oz')], true)).toEqual({ plums: 10 })
  })

  it('stand as promised where the units say nothing of each other', () => {
    expect(credited([plums], [lot('ash', 'plums', 2, 'crates')], true)).toEqual({ plums: 12 })
    expect(credited([gift('crates', 'ash', 'plums', 2, 'crates')], [lot('ash', 'plums', 3, 'Crates')], true)).toEqual({ crates: 3 })
  })

  it('of two promises fill the first, and credit no pound twice', () => {
    const two = [gift('first', 'ash', 'plums', 10), gift('second', 'ash', 'plums', 5)]
    expect(credited(two, [lot('ash', 'plums', 12)], true)).toEqual({ first: 10, second: 2 })
    expect(credited(two, [lot('ash', 'plums', 8)], true)).toEqual({ first: 8, second: 0 })
    expect(credited(two, [lot('ash', 'plums', 4), lot('ash', 'plums', 16)], true)).toEqual({ first: 10, second: 10 })
  })
})
