import { describe, expect, it } from 'vitest'
import { drawOrder } from '@/shared/allocation/draw-order'
import { meetAllergens } from '@/shared/allocation/meet-allergens'
import { predictShares } from '@/shared/allocation/predict-shares'
import type { Claim } from '@/shared/allocation/share-table'

const claimsOf = (asked: Record<string, number>): Claim[] =>
  Object.entries(asked).map(([name, jars]) => ({ householdId: name, householdName: name, jars }))

describe('a prediction', () => {
  it('says what a household gets if only the low number of jars seal', () => {
    const predicted = predictShares(
      { low: 42, typical: 48, high: 48 },
      claimsOf({ Alderby: 10, Brightwater: 8, Copperfold: 6, Dunmarrow: 8, Elmsway: 10, Fennick: 6 }),
      { kind: 'in-proportion' },
    )
    // 10 x 42/48 = 8.75, 8 x 42/48 = 7, 6 x 42/48 = 5.25; two jars left, both to .75.
    expect(predicted.ok && predicted.value.map((each) => [each.householdName, each.atLow, each.atTypical])).toEqual([
      ['Alderby', 9, 10],
      ['Brightwater', 7, 8],
      ['Copperfold', 5, 6],
      ['Dunmarrow', 7, 8],
      ['Elmsway', 9, 10],
      ['Fennick', 5, 6],
    ])
  })

  it('knows that one jar more in all can mean one fewer for somebody', () => {
    const predicted = predictShares({ low: 10, typical: 10, high: 11 }, claimsOf({ Ben: 54, Paul: 243, Ryan: 703 }), {
      kind: 'in-proportion',
    })
    expect(predicted.ok && predicted.value[0]).toMatchObject({ atLow: 1, least: 0, most: 1 })
  })

  it('passes on why it could not be made', () => {
    expect(predictShares({ low: -1, typical: 1, high: 1 }, [], { kind: 'equal' })).toMatchObject({
      ok: false,
      problem: { kind: 'jars-not-whole' },
    })
  })
})

describe('allergens', () => {
  it('meet whatever their case and spaces, and only the same ones', () => {
    expect(meetAllergens(['Mustard', 'celery'], [' mustard '])).toEqual(['Mustard'])
    expect(meetAllergens(['mustard'], ['must'])).toEqual([])
    expect(meetAllergens([], ['mustard'])).toEqual([])
  })
})

describe('a drawn order', () => {
  it('has everybody once and depends on the seed and the names only', () => {
    const ids = ['a', 'b', 'c', 'd', 'e', 'f', 'g']
    expect([...drawOrder(42, ids)].sort()).toEqual(ids)
    expect(drawOrder(42, [...ids].reverse())).toEqual(drawOrder(42, ids))
    expect(new Set(Array.from({ length: 50 }, (_, seed) => drawOrder(seed, ids).join(''))).size).toBeGreaterThan(40)
  })
})
