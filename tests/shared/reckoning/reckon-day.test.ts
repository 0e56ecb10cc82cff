import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type DayMoney, type Outlay, type Reckoning, reckonDay, type Taken } from '@/shared/reckoning/reckon-day'
import { settle } from '@/shared/reckoning/settle'

const HOUSEHOLDS = ['Alderby', 'Brightwater', 'Copperfold', 'Dunmarrow', 'Elmsway', 'Fennick']

const paid = (item: string, partyId: string, poolId: string, amount: number): Outlay => ({
  kind: 'paid',
  item,
  partyId,
  poolId,
  amount,
  currency: 'USD',
})
const gave = (item: string, partyId: string, poolId: string, amount: number): Outlay => ({
  kind: 'credited',
  item,
  partyId,
  poolId,
  amount,
  currency: 'USD',
})
const took = (product: string, size: Taken['size'], jars: readonly number[]): Taken[] =>
  jars.map((each, index) => ({ partyId: HOUSEHOLDS[index] ?? '', product, size, jars: each }))

const EVENING: DayMoney = {
  currency: 'USD',
  parties: HOUSEHOLDS.map((name) => ({ householdId: name, householdName: name })),
  pools: [
    { id: 'jam', products: ['plum-jam'], by: 'volume' },
    { id: 'pickle', products: ['dill-pickle'], by: 'volume' },
    { id: 'common', products: ['plum-jam', 'dill-pickle'], by: 'jars' },
  ],
  outlays: [
    paid('sugar', 'Brightwater', 'jam', 1800),
    paid('liquid pectin', 'Brightwater', 'jam', 1950),
    paid('plums', 'Brightwater', 'jam', 1350),
    paid('vinegar', 'Dunmarrow', 'pickle', 840),
    paid('canning salt', 'Dunmarrow', 'pickle', 450),
    paid('cucumbers', 'Dunmarrow', 'pickle', 2100),
    paid('mustard seed', 'Dunmarrow', 'pickle', 500),
    paid('pickling spice', 'Dunmarrow', 'pickle', 480),
    paid('fresh dill', 'Dunmarrow', 'pickle', 1750),
    paid('lids', 'Alderby', 'common', 3200),
    paid('hall hire', 'Alderby', 'common', 3000),
    paid('fuel', 'Fennick', 'common', 600),
    gave('9 lb plums', 'Copperfold', 'jam', 900),
    gave('12 lb cucumbers', 'Alderby', 'pickle', 1200),
    gave('8 lb cucumbers', 'Fennick', 'pickle', 800),
  ],
  taken: [...took('plum-jam', 'half-pint', [9, 8, 6, 8, 9, 6]), ...took('dill-pickle', 'pint', [5, 4, 7, 0, 5, 7])],
}

function reckoned(day: DayMoney): Reckoning {
  const result = reckonDay(day)
  if (!result.ok) throw new Error(JSON.stringify(result.problem))
  return result.value
}

describe('the small evening', () => {
  const evening = reckoned(EVENING)
  const line = (name: string) => evening.parties.find((party) => party.householdName === name)

  it('spent 180.20 in cash, in pools of 60.00, 81.20 and 68.00', () => {
    expect(evening.cashSpent).toBe(18020)
    expect(evening.pools.map((pool) => [pool.poolId, pool.total])).toEqual([
      ['jam', 6000],
      ['pickle', 8120],
      ['common', 6800],
    ])
  })

  it('costs 2.22 a half-pint of jam and 3.82 a pint of pickles', () => {
    expect(evening.jarCosts).toEqual([
      { product: 'dill-pickle', size: 'pint', cost: 382 },
      { product: 'plum-jam', size: 'half-pint', cost: 222 },
    ])
  })

  it.each([
    ['Alderby', 3910, 7400, 3490],
    ['Brightwater', 3306, 5100, 1794],
    ['Copperfold', 4007, 900, -3107],
    ['Dunmarrow', 1779, 6120, 4341],
    ['Elmsway', 3910, 0, -3910],
    ['Fennick', 4007, 1400, -2607],
  ])('puts %s at %d of cost against %d laid out', (name, nearest, laidOut, balance) => {
    const party = line(name)
    expect(party?.nearest).toBe(nearest)
    expect((party?.paid ?? 0) + (party?.credited ?? 0)).toBe(laidOut)
    expect(laidOut - nearest).toBe(balance)
  })

  it('lands every cent: the rounded shares come to 209.19 of 209.20, and the first of the two largest fractions carries the last one', () => {
    // Alderby and Elmsway both carry 39.103995...; the tie goes by name.
    expect(evening.parties.reduce((sum, party) => sum + party.nearest, 0)).toBe(20919)
    expect(evening.parties.reduce((sum, party) => sum + party.share, 0)).toBe(20920)
    expect(evening.parties.map((party) => party.share - party.nearest)).toEqual([1, 0, 0, 0, 0, 0])
    expect(evening.parties.map((party) => party.balance)).toEqual([3489, 1794, -3107, 4341, -3910, -2607])
  })

  it('settles with five transfers, which is proved to be the fewest', () => {
    const settled = settle(evening.parties.map((party) => ({ id: party.householdId, name: party.householdName, balance: party.balance })))
    expect(settled.ok && settled.value.transfers).toHaveLength(5)
    expect(settled.ok && settled.value.isFewest).toBe(true)
  })
})

describe('a reckoning', () => {
  it('shares a product of two sizes by what the jars hold, and what is common by the jar', () => {
    const day: DayMoney = {
      ...EVENING,
      outlays: [paid('plums', 'Alderby', 'jam', 3000), paid('hall', 'Alderby', 'common', 300)],
      taken: [
        { partyId: 'Alderby', product: 'plum-jam', size: 'pint', jars: 1 },
        { partyId: 'Brightwater', product: 'plum-jam', size: 'half-pint', jars: 2 },
      ],
    }
    // 473 mL against 474 mL of 30.00: 14.984 and 15.016; a third of 3.00 a jar.
    expect(reckoned(day).parties.map((party) => party.share)).toEqual([1498 + 100, 1502 + 200, 0, 0, 0, 0])
    expect(reckoned(day).jarCosts.map((cost) => cost.cost)).toEqual([851, 1598])
  })

  it('passes a surcharge on to the fund', () => {
    const fund = { householdId: 'fund', householdName: 'Equipment fund' }
    const parties = [
      ...EVENING.parties.map((party) => (party.householdName === 'Elmsway' ? { ...party, surchargePercent: 25 } : party)),
      fund,
    ]
    const lines = reckoned({ ...EVENING, parties, fundId: 'fund' }).parties
    expect(lines.find((each) => each.householdId === 'Elmsway')).toMatchObject({ surcharge: 978, balance: -3910 - 978 })
    expect(lines.find((each) => each.householdId === 'fund')).toMatchObject({ share: 0, balance: 978 })
    expect(reckonDay({ ...EVENING, parties })).toMatchObject({ problem: { kind: 'surcharge-without-fund', householdName: 'Elmsway' } })
  })

  it('neither makes nor loses a cent, and stays within a cent of the exact part', () => {
    const someJars = fc.array(fc.nat(30), { minLength: 6, maxLength: 6 })
    const someOutlays = fc.array(
      fc.record({
        kind: fc.constantFrom<Outlay['kind']>('paid', 'credited'),
        item: fc.constant('thing'),
        partyId: fc.constantFrom(...HOUSEHOLDS),
        poolId: fc.constantFrom('jam', 'pickle', 'common'),
        currency: fc.constant('USD'),
        amount: fc.oneof(fc.nat(5000), fc.nat(100_000_000_000)),
      }),
      { maxLength: 12 },
    )
    fc.assert(
      fc.property(someOutlays, someJars, someJars, (outlays, jam, pickles) => {
        fc.pre(jam.some((jars) => jars > 0) && pickles.some((jars) => jars > 0))
        const day = { ...EVENING, outlays, taken: [...took('plum-jam', 'half-pint', jam), ...took('dill-pickle', 'pint', pickles)] }
        const { parties, pools } = reckoned(day)
        expect(parties.reduce((sum, party) => sum + party.share, 0)).toBe(pools.reduce((sum, pool) => sum + pool.total, 0))
        expect(parties.reduce((sum, party) => sum + party.balance, 0)).toBe(0)
        for (const party of parties) expect(Math.abs(party.share - party.nearest)).toBeLessThanOrEqual(1)
        for (const party of parties) if (party.jars === 0) expect(party.share).toBe(0)
        expect(
          reckoned({ ...day, parties: [...day.parties].reverse(), taken: [...day.taken].reverse(), outlays: [...outlays].reverse() })
            .parties,
        ).toEqual(parties)
      }),
    )
  })

  it.each([
    [
      { outlays: [{ ...paid('sugar', 'Alderby', 'jam', 1), currency: 'EUR' }] },
      { kind: 'other-currency', item: 'sugar', currency: 'EUR', expected: 'USD' },
    ],
    [{ outlays: [paid('sugar', 'Alderby', 'jam', 1e308)] }, { kind: 'amount-out-of-range', item: 'sugar', amount: 1e308 }],
    [{ outlays: [paid('sugar', 'Alderby', 'jam', -1)] }, { kind: 'amount-out-of-range', item: 'sugar', amount: -1 }],
    [{ outlays: [paid('sugar', 'Nobody', 'jam', 1)] }, { kind: 'unknown-party', item: 'sugar', partyId: 'Nobody' }],
    [{ outlays: [paid('sugar', 'Alderby', 'jelly', 1)] }, { kind: 'unknown-pool', item: 'sugar', poolId: 'jelly' }],
    [{ taken: took('plum-jam', 'half-pint', [1]) }, { kind: 'pool-without-jars', poolId: 'pickle', total: 8120 }],
    [{ taken: took('plum-jam', 'half-pint', [-1]) }, { kind: 'jars-not-whole', product: 'plum-jam', jars: -1 }],
  ])('refuses %o', (change, problem) => {
    expect(reckonDay({ ...EVENING, ...change })).toEqual({ ok: false, problem })
  })
})

describe('a pool of whose products no jar came', () => {
  const asked = (product: string, size: Taken['size'], counts: readonly number[], jars: readonly number[] = []): Taken[] =>
    counts.map((each, index) => ({ partyId: HOUSEHOLDS[index] ?? '', product, size, jars: jars[index] ?? 0, asked: each }))

  it('is carried by what was asked for, once the jars are shared out', () => {
    const taken = [
      ...asked('plum-jam', 'half-pint', [6, 0, 2, 0, 0, 0]),
      ...asked('dill-pickle', 'pint', [1, 1, 1, 1, 1, 1], [1, 1, 1, 1, 1, 1]),
    ]
    const money = reckoned({
      ...EVENING,
      outlays: [paid('sugar', 'Fennick', 'jam', 801), paid('vinegar', 'Fennick', 'pickle', 600)],
      taken,
    })
    expect(money.pools.map(({ poolId, isByAsked }) => [poolId, isByAsked])).toEqual([
      ['jam', true],
      ['pickle', false],
      ['common', false],
    ])
    // 801 by 6 and 2 that were asked for: 600.75 and 200.25; and 100 each for the pickles.
    expect(money.parties.map(({ share }) => share)).toEqual([701, 100, 300, 100, 100, 100])
    expect(money.jarCosts.map(({ product, cost }) => [product, cost])).toEqual([['dill-pickle', 100]])
    expect(money.parties.reduce((sum, { balance }) => sum + balance, 0)).toBe(0)
  })

  it('waits as long as nothing is shared out', () => {
    const taken = [...asked('plum-jam', 'half-pint', [6]).map(({ asked: _, ...line }) => line)]
    expect(reckonDay({ ...EVENING, taken })).toMatchObject({ ok: false, problem: { kind: 'pool-without-jars', poolId: 'jam' } })
  })

  it('takes no half jar that was asked for', () => {
    expect(reckonDay({ ...EVENING, taken: asked('plum-jam', 'half-pint', [0.5]) })).toMatchObject({ problem: { kind: 'jars-not-whole' } })
  })
})
