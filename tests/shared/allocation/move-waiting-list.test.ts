import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { moveWaitingList, type Waiting } from '@/shared/allocation/move-waiting-list'

const wish = (name: string, jars: number, place: number, takesFewer = true): Waiting => ({
  householdId: name,
  householdName: name,
  jars,
  place,
  takesFewer,
})

describe('a waiting list', () => {
  it('serves first who came first, and leaves the rest of a wish in its place', () => {
    const moved = moveWaitingList(5, [wish('Copse', 2, 3), wish('Ash', 4, 1), wish('Brook', 3, 2)])
    expect(moved.given).toEqual([
      { householdId: 'Ash', jars: 4 },
      { householdId: 'Brook', jars: 1 },
    ])
    expect(moved.waiting).toEqual([wish('Brook', 2, 2), wish('Copse', 2, 3)])
    expect(moved.free).toBe(0)
  })

  it('passes over who wants all or nothing, and does not make the others wait', () => {
    const moved = moveWaitingList(3, [wish('Ash', 4, 1, false), wish('Brook', 2, 2)])
    expect(moved).toEqual({ given: [{ householdId: 'Brook', jars: 2 }], waiting: [wish('Ash', 4, 1, false)], free: 1 })
  })

  it('neither makes nor loses a jar or a wish', () => {
    const someList = fc.array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.boolean()), { maxLength: 9 })
    fc.assert(
      fc.property(fc.nat(40), someList, (free, list) => {
        const wishes = list.map(([jars, takesFewer], index) => wish(`h${index}`, jars, index, takesFewer))
        const moved = moveWaitingList(free, wishes)
        const sum = (items: readonly { jars: number }[]) => items.reduce((total, { jars }) => total + jars, 0)
        expect(sum(moved.given) + moved.free).toBe(free)
        expect(sum(moved.given) + sum(moved.waiting)).toBe(sum(wishes))
        expect(moveWaitingList(0, moved.waiting).given).toEqual([])
        // Nobody is left behind who could have been served with what is free now.
        for (const each of moved.waiting) expect(each.takesFewer ? moved.free : Math.max(0, moved.free - each.jars + 1)).toBe(0)
      }),
    )
  })

  it('keeps the order of the taps, however the list is handed over, and gives nobody behind what somebody in front could have had', () => {
    const someList = fc.array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.boolean()), { maxLength: 9 })
    fc.assert(
      fc.property(fc.nat(30), someList, fc.nat(), (free, list, turn) => {
        const wishes = list.map(([jars, takesFewer], index) => wish(`h${index}`, jars, index, takesFewer))
        const turned = wishes.map((_, index) => wishes[(index + turn) % wishes.length] as Waiting)
        const moved = moveWaitingList(free, wishes)
        expect(moveWaitingList(free, turned)).toEqual(moved)
        const places = moved.waiting.map(({ place }) => place)
        expect(places).toEqual([...places].sort((a, b) => a - b))
        // In its turn, each got what it takes of what those in front had left.
        let left = free
        for (const { householdId, jars, takesFewer } of wishes) {
          const got = moved.given.find((each) => each.householdId === householdId)?.jars ?? 0
          expect(got).toBe(jars <= left ? jars : takesFewer ? left : 0)
          left -= got
        }
      }),
    )
  })
})
