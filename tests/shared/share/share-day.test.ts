import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { offerLeftJars } from '@/shared/allocation/offer-left-jars'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { pickJars } from '@/shared/share/pick-jars'
import { shareDay, type ToShare } from '@/shared/share/share-day'
import { sayShareReason } from '@/shared/wording/say-share'

const NAMES = ['Ash', 'Birch', 'Cherry', 'Dogwood']
const claims = (jars: readonly number[], allergens: Readonly<Record<string, string[]>> = {}) =>
  jars.map((count, index) => ({
    householdId: NAMES[index] ?? '',
    householdName: NAMES[index] ?? '',
    jars: count,
    allergens: allergens[NAMES[index] ?? ''] ?? [],
  }))
const size = (jarSize: JarSize, jars: number, asked: readonly number[], recipeId = 'peach', allergens = {}): ToShare => ({
  ...{ id: `${recipeId} ${jarSize}`, recipeId, jarSize, jars, claims: claims(asked, allergens) },
})
function shared(products: readonly ToShare[], rule: Parameters<typeof shareDay>[1] = { kind: 'in-proportion' }) {
  const done = shareDay(products, rule)
  if (!done.ok) throw new Error(done.problem.kind)
  return done.value
}
const jarsOf = (products: ReturnType<typeof shared>) => products.map(({ table }) => table.shares.map(({ jars }) => jars))

describe('sizes of one product', () => {
  it('are shared together: who got the odd quart gets fewer pints', () => {
    // 3 quarts and 3 pints for two who ask for 2 and 2: parts of 1.5 quarts and 1.5 pints, 2128.5 mL each.
    const products = [size('pint', 3, [2, 2]), size('quart', 3, [2, 2])]
    expect(jarsOf(shared(products))).toEqual([
      [1, 2],
      [2, 1],
    ])
    const [pints] = shared(products)
    expect(pints?.fit).toEqual({ worst: 236.5, best: 236.5 }) // 2 quarts and 1 pint are 2365 mL
    const [ash, birch] = pints?.table.shares ?? []
    expect(ash && sayShareReason(ash)).toBe(
      '2 × 3 ÷ 4 = 1.50 of this size, and 473 mL ahead in larger jars: 1, so that all sizes together come nearest to the part.',
    )
    expect(birch && sayShareReason(birch)).toContain('473 mL short in larger jars: 2')
  })

  it('of two recipes, or under another rule, are tables of their own', () => {
    const apart = shared([size('pint', 3, [2, 2]), size('quart', 3, [2, 2], 'tomato')])
    expect(jarsOf(apart)).toEqual([
      [2, 1],
      [2, 1],
    ])
    expect(apart.every(({ fit }) => fit === null)).toBe(true)
    expect(shared([size('pint', 3, [2, 2]), size('quart', 3, [2, 2])], { kind: 'equal' }).every(({ fit }) => fit === null)).toBe(true)
  })

  it('give nothing to whoever must not have it, and all to everybody when there is enough', () => {
    const products = shared([
      size('pint', 9, [2, 2, 2], 'peach', { Birch: ['peach'] }),
      size('quart', 2, [2, 2, 2], 'peach', { Birch: ['peach'] }),
    ])
    expect(jarsOf(products)).toEqual([
      [2, 0, 2],
      [1, 0, 1],
    ])
    expect(products.map(({ table: { left } }) => left)).toEqual([5, 0])
  })

  it('neither make nor lose a jar, nor give more than was asked for, in whatever order they come', () => {
    const someJars = fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 4, maxLength: 4 })
    fc.assert(
      fc.property(
        someJars,
        someJars,
        fc.integer({ min: 0, max: 30 }),
        fc.integer({ min: 0, max: 30 }),
        (pints, quarts, sealedPints, sealedQuarts) => {
          const products = [size('pint', sealedPints, pints), size('quart', sealedQuarts, quarts)]
          const done = shared(products)
          for (const [index, { table }] of done.entries()) {
            const asked = products[index]?.claims.map(({ jars }) => jars) ?? []
            expect(table.given + table.left).toBe(products[index]?.jars)
            expect(table.given).toBe(
              Math.min(
                table.sealed,
                asked.reduce((sum, jars) => sum + jars, 0),
              ),
            )
            for (const [place, share] of table.shares.entries()) expect(share.jars).toBeLessThanOrEqual(asked[place] ?? 0)
          }
          expect(shared([...products].reverse()).reverse()).toEqual(done)
          const fit = done[0]?.fit
          if (fit?.best != null) expect(fit.best).toBeLessThanOrEqual(fit.worst + 1e-6)
        },
      ),
      { numRuns: 60 },
    )
  })
})

describe('jars that are left', () => {
  const house = (name: string, asked: number, got: number, avoids = false) => ({
    householdId: name,
    householdName: name,
    asked,
    got,
    avoids,
  })

  it('are offered to those who were cut, the largest lack first, then down the waiting list', () => {
    const households = [
      house('Ash', 10, 10),
      house('Cherry', 10, 8),
      house('Birch', 10, 8),
      house('Dogwood', 10, 4),
      house('Elder', 10, 1, true),
    ]
    const wish = (name: string, place: number) => ({ householdId: name, householdName: name, jars: 2, place })
    const order = offerLeftJars(households, [wish('Fir', 2), wish('Ash', 1), wish('Birch', 3), wish('Elder', 4)])
    expect(order.map(({ householdName, why }) => [householdName, why.kind])).toEqual([
      ['Dogwood', 'cut'],
      ['Birch', 'cut'],
      ['Cherry', 'cut'],
      ['Ash', 'waiting'],
      ['Fir', 'waiting'],
    ])
  })
})

describe('own glass', () => {
  const portions = [
    { householdId: 'ash', jars: 2 },
    { householdId: 'birch', jars: 2 },
  ]

  it('goes to whoever lent it and wishes for it, and never changes how many anybody gets', () => {
    const picked = pickJars(
      ['1', '2', '3', '4', '5'],
      portions,
      new Map([
        ['1', 'birch'],
        ['4', 'birch'],
        ['5', 'birch'],
      ]),
    )
    expect(Object.fromEntries(picked)).toEqual({ ash: ['2', '3'], birch: ['1', '4'] })
  })

  it('leaves the picking as it was where nobody wishes', () => {
    expect(Object.fromEntries(pickJars(['1', '2', '3', '4'], portions))).toEqual({ ash: ['1', '2'], birch: ['3', '4'] })
  })
})

describe('a day of five thousand households', () => {
  it('shares two sizes together, and looks for no nearest sharing among so many', () => {
    const households = Array.from({ length: 5000 }, (_, index) => ({ householdId: `h${index}`, householdName: `House ${index}` }))
    const asked = (by: number) => households.map((household, index) => ({ ...household, jars: (index * by) % 9 }))
    const of = (jarSize: JarSize, jars: number, by: number): ToShare => ({
      id: jarSize,
      recipeId: 'peach',
      jarSize,
      jars,
      claims: asked(by),
    })
    const done = shared([of('quart', 9000, 7), of('pint', 11_000, 5)])
    expect(done.map(({ table }) => [table.given, table.left])).toEqual([
      [9000, 0],
      [11_000, 0],
    ])
    expect(done[0]?.fit?.best).toBeNull()
    // Nobody is further from the exact part than a rounding of one size: half a quart or so.
    expect(done[0]?.fit?.worst).toBeLessThan(946)
  })
})
