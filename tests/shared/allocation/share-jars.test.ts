import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decimalOf } from '@/shared/allocation/largest-remainder'
import { shareJars } from '@/shared/allocation/share-jars'
import type { Claim, ShareRule, ShareTable } from '@/shared/allocation/share-table'

const claimsOf = (asked: Record<string, number>): Claim[] =>
  Object.entries(asked).map(([name, jars]) => ({ householdId: `h-${name}`, householdName: name, jars }))

function share(sealed: number, claims: readonly Claim[], rule: ShareRule = { kind: 'in-proportion' }): ShareTable {
  const shared = shareJars(sealed, claims, rule)
  if (!shared.ok) throw new Error(JSON.stringify(shared.problem))
  return shared.value
}

const jarsByName = (table: ShareTable) => Object.fromEntries(table.shares.map((each) => [each.householdName, each.jars]))
const shareOf = (table: ShareTable, name: string) => table.shares.find((each) => each.householdName === name)

const JAM = { Alderby: 10, Brightwater: 8, Copperfold: 6, Dunmarrow: 8, Elmsway: 10, Fennick: 6 }
const PICKLES = { Alderby: 6, Brightwater: 4, Copperfold: 8, Dunmarrow: 0, Elmsway: 6, Fennick: 8 }

describe('the small evening', () => {
  it('shares 46 half-pints of plum jam, 48 asked for', () => {
    const table = share(46, claimsOf(JAM))
    expect(jarsByName(table)).toEqual({ Alderby: 9, Brightwater: 8, Copperfold: 6, Dunmarrow: 8, Elmsway: 9, Fennick: 6 })
    expect(table).toMatchObject({ sealed: 46, asked: 48, given: 46, left: 0 })
    expect(shareOf(table, 'Alderby')).toMatchObject({
      sum: { pool: 46, weight: 10, weights: 48, quota: { whole: 9, over: 28, of: 48 } },
      reason: { kind: 'rounded-down', isTie: false },
    })
    expect(shareOf(table, 'Brightwater')?.reason).toEqual({ kind: 'rounded-up', isTie: false })
  })

  it('shares 28 pints of dill pickles, 32 asked for, and offers none to the mustard allergy', () => {
    const table = share(28, claimsOf(PICKLES))
    expect(jarsByName(table)).toEqual({ Alderby: 5, Brightwater: 4, Copperfold: 7, Dunmarrow: 0, Elmsway: 5, Fennick: 7 })
    expect(shareOf(table, 'Copperfold')?.reason).toEqual({ kind: 'exact' })
    expect(shareOf(table, 'Dunmarrow')?.reason).toEqual({ kind: 'asked-for-none' })
  })

  it('gives a household with a blocking allergen none, with the reason, and its jars to the others', () => {
    const claims = claimsOf({ ...PICKLES, Dunmarrow: 5 }).map((claim) =>
      claim.householdName === 'Dunmarrow' ? { ...claim, allergens: ['mustard'] } : claim,
    )
    const table = share(28, claims)
    expect(jarsByName(table)).toEqual(jarsByName(share(28, claimsOf(PICKLES))))
    expect(shareOf(table, 'Dunmarrow')).toMatchObject({
      asked: 5,
      jars: 0,
      sum: null,
      reason: { kind: 'allergen', allergens: ['mustard'] },
    })
    expect(table.asked).toBe(32)
  })
})

describe('the medium day, eighteen households', () => {
  const NAMES =
    'Aspenrow,Birdwell Gate,Cairnhollow,Drybrook,Eastlea,Foxglove,Gannet,Hearthside,Inkwell,Jasperton,Kestrel,Larkspur,Millrace,Nettlefold,Oxbow,Pennywhistle,Quillwort,Rushmere'
  const byName = (numbers: readonly number[]) => Object.fromEntries(NAMES.split(',').map((name, index) => [name, numbers[index] ?? 0]))

  it.each([
    ['tomato quarts', 68, [6, 3, 7, 4, 2, 6, 4, 3, 9, 6, 3, 4, 7, 1, 6, 3, 4, 6], [5, 3, 6, 3, 2, 5, 3, 2, 7, 5, 2, 3, 6, 1, 5, 2, 3, 5]],
    ['salsa pints', 68, [5, 3, 6, 4, 0, 5, 4, 3, 8, 5, 3, 4, 6, 0, 5, 2, 4, 5], [5, 3, 5, 4, 0, 5, 4, 3, 7, 5, 3, 4, 5, 0, 5, 2, 4, 4]],
    ['peach quarts', 62, [5, 2, 6, 3, 1, 5, 0, 2, 7, 5, 2, 3, 6, 1, 5, 2, 3, 5], [5, 2, 6, 3, 1, 5, 0, 2, 6, 5, 2, 3, 6, 1, 5, 2, 3, 5]],
    ['bean pints', 86, [7, 3, 8, 0, 2, 7, 5, 3, 10, 7, 3, 5, 8, 2, 6, 3, 5, 6], [7, 3, 7, 0, 2, 7, 5, 3, 9, 6, 3, 5, 7, 2, 6, 3, 5, 6]],
  ])('shares %s, ties by household name', (_product, sealed, asked, expected) => {
    expect(jarsByName(share(sealed, claimsOf(byName(asked))))).toEqual(byName(expected))
  })
})

describe('in proportion', () => {
  it('gives the left-over jar of a tie to the earlier name, case and accents aside, and says that it was a tie', () => {
    const table = share(1, claimsOf({ Élm: 1, dunmarrow: 1, Fennick: 1 }))
    expect(table.shares.map((each) => [each.householdName, each.jars])).toEqual([
      ['dunmarrow', 1],
      ['Élm', 0],
      ['Fennick', 0],
    ])
    expect(shareOf(table, 'Élm')?.reason).toEqual({ kind: 'rounded-down', isTie: true })
  })

  it('goes by id when two households have one name', () => {
    const twins: Claim[] = ['h-2', 'h-1'].map((householdId) => ({ householdId, householdName: 'Ash', jars: 1 }))
    expect(share(1, twins).shares.map((each) => [each.householdId, each.jars])).toEqual([
      ['h-1', 1],
      ['h-2', 0],
    ])
  })

  it('gives everybody all they asked for when there is enough, and keeps the rest', () => {
    const table = share(60, claimsOf(JAM))
    expect(table).toMatchObject({ given: 48, left: 12 })
    expect(table.shares.every((each) => each.reason.kind === 'all' && each.jars === each.asked)).toBe(true)
    expect(share(48, claimsOf(JAM)).shares.every((each) => each.reason.kind === 'all' && each.jars === each.asked)).toBe(true)
  })
})

describe('one each, then in proportion', () => {
  it('gives one jar to each before anybody gets a second', () => {
    // 10 sealed, 4 first, 6 left over 9+4+1+0 = 14 still wanted: 3.86, 1.71, 0.43, 0.
    const table = share(10, claimsOf({ Ash: 10, Brook: 5, Copse: 2, Dale: 1 }), { kind: 'one-each-first' })
    expect(jarsByName(table)).toEqual({ Ash: 5, Brook: 3, Copse: 1, Dale: 1 })
    expect(shareOf(table, 'Ash')).toMatchObject({ first: 1, sum: { pool: 6, weight: 9, weights: 14, quota: { whole: 3, over: 12 } } })
    expect(shareOf(table, 'Dale')).toMatchObject({ first: 1, reason: { kind: 'all' } })
  })

  it('gives them to the larger claims when there are fewer jars than households', () => {
    const table = share(2, claimsOf({ Ash: 1, Brook: 3, Copse: 2 }), { kind: 'one-each-first' })
    expect(jarsByName(table)).toEqual({ Ash: 0, Brook: 1, Copse: 1 })
  })
})

describe('by hours or produce', () => {
  it('goes by what was brought, at most what was asked for', () => {
    // 300:180:60 of 12 jars are 6.67, 4, 1.33. Ash asked for 4 only, so 8 jars go by 180:60, 6 and 2.
    const claims = claimsOf({ Ash: 4, Brook: 8, Copse: 8 }).map((claim, index) => ({ ...claim, contribution: [300, 180, 60][index] }))
    const table = share(12, claims, { kind: 'by-contribution', of: 'hours' })
    expect(jarsByName(table)).toEqual({ Ash: 4, Brook: 6, Copse: 2 })
    expect(shareOf(table, 'Ash')?.reason).toEqual({ kind: 'all' })
  })

  it('leaves to those who brought nothing what the others do not take', () => {
    const claims = claimsOf({ Ash: 4, Brook: 6, Copse: 3 }).map((claim, index) => ({ ...claim, contribution: [60, 0, 0][index] }))
    const table = share(7, claims, { kind: 'by-contribution', of: 'produce' })
    expect(jarsByName(table)).toEqual({ Ash: 4, Brook: 2, Copse: 1 })
  })
})

describe('equal up to the claim', () => {
  it('gives small claims all, the others the same', () => {
    // 11 jars: Ash 2 of 2, then 9 over three households.
    expect(jarsByName(share(11, claimsOf({ Ash: 2, Brook: 9, Copse: 9, Dale: 4 }), { kind: 'equal' }))).toEqual({
      Ash: 2,
      Brook: 3,
      Copse: 3,
      Dale: 3,
    })
  })

  it('gives the left-over jar to the larger claim before it goes by name', () => {
    expect(jarsByName(share(5, claimsOf({ Ash: 3, Brook: 9 }), { kind: 'equal' }))).toEqual({ Ash: 2, Brook: 3 })
  })
})

describe('by lot', () => {
  it('takes one jar each in the drawn order, round after round, and says the place', () => {
    const claims = claimsOf({ Ash: 1, Brook: 5, Copse: 5 })
    const table = share(6, claims, { kind: 'by-lot', seed: 7 })
    const places = table.shares.map((each) => (each.reason.kind === 'drawn' ? each.reason.place : 0))
    expect([...places].sort()).toEqual([1, 2, 3])
    // Ash is full after one jar; five are left for two: 3 to the earlier drawn, 2 to the later.
    const [brook, copse] = [shareOf(table, 'Brook'), shareOf(table, 'Copse')]
    const isBrookFirst = (places[1] ?? 0) < (places[2] ?? 0)
    expect([shareOf(table, 'Ash')?.jars, brook?.jars, copse?.jars]).toEqual(isBrookFirst ? [1, 3, 2] : [1, 2, 3])
    expect(share(6, claims, { kind: 'by-lot', seed: 7 })).toEqual(table)
  })

  it('draws every household first about equally often', () => {
    const firsts = new Map<string, number>()
    for (let seed = 0; seed < 6000; seed += 1) {
      const winner = share(1, claimsOf({ Ash: 1, Brook: 1, Copse: 1 }), { kind: 'by-lot', seed }).shares.find((each) => each.jars === 1)
      firsts.set(winner?.householdName ?? '', (firsts.get(winner?.householdName ?? '') ?? 0) + 1)
    }
    // 2,000 expected each, standard deviation 36.5; six of them either way.
    for (const name of ['Ash', 'Brook', 'Copse']) expect(Math.abs((firsts.get(name) ?? 0) - 2000)).toBeLessThan(219)
  })
})

const someRule = (): fc.Arbitrary<ShareRule> =>
  fc.oneof(
    fc.constant<ShareRule>({ kind: 'in-proportion' }),
    fc.constant<ShareRule>({ kind: 'one-each-first' }),
    fc.constant<ShareRule>({ kind: 'by-contribution', of: 'hours' }),
    fc.constant<ShareRule>({ kind: 'equal' }),
    fc.nat(0xffffffff).map((seed): ShareRule => ({ kind: 'by-lot', seed })),
  )

const someClaims = (): fc.Arbitrary<Claim[]> =>
  fc
    .array(
      fc.record({
        householdName: fc.constantFrom('Ash', 'Brook', 'Copse', 'Dale', 'elm', 'Élm', 'Fern'),
        jars: fc.oneof(fc.nat(12), fc.nat(100_000)),
        contribution: fc.oneof(fc.constant(0), fc.nat(600), fc.nat(1_000_000_000)),
        allergens: fc.oneof({ weight: 5, arbitrary: fc.constant([]) }, { weight: 1, arbitrary: fc.constant(['mustard']) }),
      }),
      { maxLength: 12 },
    )
    .map((claims) => claims.map((claim, index) => ({ ...claim, householdId: `h-${index}` })))

const someSealed = () => fc.oneof(fc.nat(60), fc.nat(1_000_000))

describe('whatever the rule', () => {
  it('neither makes nor loses a jar, and gives nobody more than was asked for', () => {
    fc.assert(
      fc.property(someSealed(), someClaims(), someRule(), (sealed, claims, rule) => {
        const table = share(sealed, claims, rule)
        const given = table.shares.reduce((sum, each) => sum + each.jars, 0)
        expect(given).toBe(table.given)
        expect(table.given + table.left).toBe(sealed)
        expect(table.given).toBe(Math.min(sealed, table.asked))
        for (const each of table.shares) {
          expect(each.jars).toBeGreaterThanOrEqual(0)
          expect(each.jars).toBeLessThanOrEqual(each.asked)
          expect(Number.isInteger(each.jars)).toBe(true)
          if (each.reason.kind === 'allergen') expect(each.jars).toBe(0)
          if (each.reason.kind === 'all') expect(each.jars).toBe(each.asked)
        }
      }),
      { numRuns: 1000 },
    )
  })

  it('does not look at the order of the claims', () => {
    fc.assert(
      fc.property(someSealed(), someClaims(), someRule(), fc.nat(), (sealed, claims, rule, turn) => {
        const turned = [...claims.slice(turn % (claims.length + 1)), ...claims.slice(0, turn % (claims.length + 1))]
        expect(share(sealed, turned, rule)).toEqual(share(sealed, claims, rule))
        expect(share(sealed, [...claims].reverse(), rule)).toEqual(share(sealed, claims, rule))
      }),
      { numRuns: 500 },
    )
  })

  it('never gives a larger claim less, where the rule goes by claims', () => {
    const byClaims = fc.constantFrom<ShareRule>({ kind: 'in-proportion' }, { kind: 'one-each-first' }, { kind: 'equal' })
    fc.assert(
      fc.property(someSealed(), someClaims(), byClaims, (sealed, claims, rule) => {
        const taking = share(sealed, claims, rule).shares.filter((each) => each.reason.kind !== 'allergen')
        for (const a of taking) for (const b of taking) if (a.asked > b.asked) expect(a.jars).toBeGreaterThanOrEqual(b.jars)
      }),
      { numRuns: 1000 },
    )
  })

  it('gives every part rounded down or up and nothing else, and by lot nobody two more than another who still wants', () => {
    fc.assert(
      fc.property(someSealed(), someClaims(), someRule(), (sealed, claims, rule) => {
        const table = share(sealed, claims, rule)
        for (const { sum, jars, first } of table.shares) {
          if (!sum) continue
          expect(Math.abs(jars - first - decimalOf(sum.quota))).toBeLessThan(1)
          expect([sum.quota.whole, sum.quota.whole + 1]).toContain(jars - first)
          if (sum.quota.over === 0) expect(jars - first).toBe(sum.quota.whole)
        }
        if (rule.kind !== 'by-lot') return
        for (const a of table.shares)
          for (const b of table.shares) if (b.reason.kind === 'drawn' && b.jars < b.asked) expect(a.jars - b.jars).toBeLessThan(2)
      }),
      { numRuns: 1000 },
    )
  })
})

describe('bad input', () => {
  const one = claimsOf({ Ash: 1 })
  it.each([
    [-1, one, { kind: 'jars-not-whole', jars: -1 }],
    [1.5, one, { kind: 'jars-not-whole', jars: 1.5 }],
    [Number.NaN, one, { kind: 'jars-not-whole', jars: Number.NaN }],
    [1e308, one, { kind: 'jars-not-whole', jars: 1e308 }],
    [1, claimsOf({ Ash: -2 }), { kind: 'claim-not-whole', householdName: 'Ash', jars: -2 }],
    [1, claimsOf({ Ash: 0.5 }), { kind: 'claim-not-whole', householdName: 'Ash', jars: 0.5 }],
    [1, one.map((claim) => ({ ...claim, contribution: -1 })), { kind: 'contribution-not-whole', householdName: 'Ash', contribution: -1 }],
    [1, [...one, ...one], { kind: 'household-twice', householdName: 'Ash' }],
  ])('is refused by name: %d jars', (sealed, claims, problem) => {
    expect(shareJars(sealed, claims, { kind: 'in-proportion' })).toEqual({ ok: false, problem })
  })
})
