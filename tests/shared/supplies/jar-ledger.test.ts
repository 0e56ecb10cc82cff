import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type JarMovement, jarLedger, MOVEMENT_KINDS } from '@/shared/supplies/jar-ledger'
import { sayBalance } from '@/shared/wording/say-ledger'

const entry = (id: string, kind: JarMovement['kind'], jars: number, more: Partial<JarMovement> = {}): JarMovement => ({
  ...{ id, householdId: 'alderby', size: 'pint', mouth: 'regular', kind, jars, corrects: null },
  ...more,
})

describe('the jar ledger', () => {
  it('says who owes how many back: 12 lent, 9 home with food and 2 back empty leave 1', () => {
    const [line] = jarLedger([entry('a', 'brought', 12), entry('b', 'went-home-full', 9), entry('c', 'went-back-empty', 2)])
    expect(line).toMatchObject({ balance: 1, sums: { brought: 12, 'went-home-full': 9, 'went-back-empty': 2 } })
    expect(sayBalance(line?.balance ?? 0)).toBe('gets 1 back')
  })

  it('counts glass of the group that went home full until it comes back', () => {
    const home = entry('a', 'went-home-full', 9)
    expect(jarLedger([home])[0]?.balance).toBe(-9)
    expect(jarLedger([home, entry('b', 'came-back-empty', 7), entry('c', 'broke-there', 2)])[0]?.balance).toBe(0)
    expect([sayBalance(-9), sayBalance(0)]).toEqual(['owes 9 back', 'even'])
  })

  it('keeps sizes, mouths and households apart', () => {
    const lines = jarLedger([
      entry('a', 'brought', 3),
      entry('b', 'brought', 4, { mouth: 'wide' }),
      entry('c', 'brought', 5, { size: 'quart' }),
      entry('d', 'brought', 6, { householdId: 'fennick' }),
    ])
    expect(lines.map(({ householdId, size, mouth, balance }) => [householdId, size, mouth, balance])).toEqual([
      ['alderby', 'pint', 'regular', 3],
      ['alderby', 'pint', 'wide', 4],
      ['alderby', 'quart', 'regular', 5],
      ['fennick', 'pint', 'regular', 6],
    ])
  })

  it('forgets an entry that was taken back, whatever it was', () => {
    fc.assert(
      fc.property(fc.constantFrom(...MOVEMENT_KINDS), fc.integer({ min: 1, max: 500 }), (kind, jars) => {
        const kept = entry('a', 'brought', 3)
        const wrong = entry('b', kind, jars)
        expect(jarLedger([kept, wrong, { ...wrong, id: 'c', corrects: 'b' }])).toEqual(jarLedger([kept]))
      }),
    )
  })
})
