import { describe, expect, it } from 'vitest'
import { shareJars } from '@/shared/allocation/share-jars'
import { parseMoney } from '@/shared/reckoning/money'
import { type DayMoney, reckonDay } from '@/shared/reckoning/reckon-day'
import { settle } from '@/shared/reckoning/settle'

/** Figures of the practice scenarios S1 and S2, copied from the file that they are published in, to be met jar by jar and cent by cent. */

const cents = (dollars: string): number => {
  const read = parseMoney(dollars, 'USD')
  if (!read.ok) throw new Error(dollars)
  return read.value
}

type Receipt = readonly [item: string, packs: number, price: string, cost: string, paidBy: string, pool: string]
type Table = Readonly<Record<string, readonly number[]>>

/** Shares of one column of a table of claims. */
function shares(claims: Table, column: number, sealed: number): Record<string, number> {
  const asked = Object.entries(claims).map(([name, jars]) => ({ householdId: name, householdName: name, jars: jars[column] ?? 0 }))
  const shared = shareJars(sealed, asked, { kind: 'in-proportion' })
  if (!shared.ok) throw new Error(shared.problem.kind)
  return Object.fromEntries(shared.value.shares.map(({ householdId, jars }) => [householdId, jars]))
}

const column = (table: Table, index: number) => Object.fromEntries(Object.entries(table).map(([name, jars]) => [name, jars[index] ?? 0]))

function reckoned(money: DayMoney) {
  const done = reckonDay(money)
  if (!done.ok) throw new Error(JSON.stringify(done.problem))
  return done.value
}

// ---------------------------------------------------------------- S1, six households, plum jam and dill pickles

const S1_CLAIMS: Table = {
  Alderby: [10, 6],
  Brightwater: [8, 4],
  Copperfold: [6, 8],
  Dunmarrow: [8, 0],
  Elmsway: [10, 6],
  Fennick: [6, 8],
}

const S1_SHARES: Table = {
  Alderby: [9, 5],
  Brightwater: [8, 4],
  Copperfold: [6, 7],
  Dunmarrow: [8, 0],
  Elmsway: [9, 5],
  Fennick: [6, 7],
}

const S1_RECEIPTS: readonly Receipt[] = [
  ['sugar', 5, '3.60', '18.00', 'Brightwater', 'jam'],
  ['liquid pectin', 3, '6.50', '19.50', 'Brightwater', 'jam'],
  ['plums', 7.5, '1.80', '13.50', 'Brightwater', 'jam'],
  ['vinegar 5%', 2, '4.20', '8.40', 'Dunmarrow', 'pickle'],
  ['canning salt', 1, '4.50', '4.50', 'Dunmarrow', 'pickle'],
  ['pickling cucumbers', 14, '1.50', '21.00', 'Dunmarrow', 'pickle'],
  ['mustard seed', 1, '5.00', '5.00', 'Dunmarrow', 'pickle'],
  ['pickling spice', 1, '4.80', '4.80', 'Dunmarrow', 'pickle'],
  ['fresh dill', 14, '1.25', '17.50', 'Dunmarrow', 'pickle'],
  ['flat lids, regular', 8, '4.00', '32.00', 'Alderby', 'common'],
  ['hall hire', 1, '30.00', '30.00', 'Alderby', 'common'],
  ['fuel', 1, '6.00', '6.00', 'Fennick', 'common'],
]

const S1_GIFTS: readonly (readonly [household: string, pounds: number, perPound: string, pool: string])[] = [
  ['Copperfold', 9, '1.00', 'jam'],
  ['Alderby', 12, '1.00', 'pickle'],
  ['Fennick', 8, '1.00', 'pickle'],
]

/** Share of the cost, paid or credited, balance. */
const S1_SETTLEMENT: Readonly<Record<string, readonly [share: string, paid: string, balance: number]>> = {
  Alderby: ['39.10', '74.00', 3490],
  Brightwater: ['33.06', '51.00', 1794],
  Copperfold: ['40.07', '9.00', -3107],
  Dunmarrow: ['17.79', '61.20', 4341],
  Elmsway: ['39.10', '0.00', -3910],
  Fennick: ['40.07', '14.00', -2607],
}

// ---------------------------------------------------------------- S2, eighteen households: tomatoes, salsa, peaches, beans

const S2_SEALED = [68, 68, 62, 86] as const

const S2_CLAIMS: Table = {
  Aspenrow: [6, 5, 5, 7],
  'Birdwell Gate': [3, 3, 2, 3],
  Cairnhollow: [7, 6, 6, 8],
  Drybrook: [4, 4, 3, 0],
  Eastlea: [2, 0, 1, 2],
  Foxglove: [6, 5, 5, 7],
  Gannet: [4, 4, 0, 5],
  Hearthside: [3, 3, 2, 3],
  Inkwell: [9, 8, 7, 10],
  Jasperton: [6, 5, 5, 7],
  Kestrel: [3, 3, 2, 3],
  Larkspur: [4, 4, 3, 5],
  Millrace: [7, 6, 6, 8],
  Nettlefold: [1, 0, 1, 2],
  Oxbow: [6, 5, 5, 6],
  Pennywhistle: [3, 2, 2, 3],
  Quillwort: [4, 4, 3, 5],
  Rushmere: [6, 5, 5, 6],
}

const S2_SHARES: Table = {
  Aspenrow: [5, 5, 5, 7],
  'Birdwell Gate': [3, 3, 2, 3],
  Cairnhollow: [6, 5, 6, 7],
  Drybrook: [3, 4, 3, 0],
  Eastlea: [2, 0, 1, 2],
  Foxglove: [5, 5, 5, 7],
  Gannet: [3, 4, 0, 5],
  Hearthside: [2, 3, 2, 3],
  Inkwell: [7, 7, 6, 9],
  Jasperton: [5, 5, 5, 6],
  Kestrel: [2, 3, 2, 3],
  Larkspur: [3, 4, 3, 5],
  Millrace: [6, 5, 6, 7],
  Nettlefold: [1, 0, 1, 2],
  Oxbow: [5, 5, 5, 6],
  Pennywhistle: [2, 2, 2, 3],
  Quillwort: [3, 4, 3, 5],
  Rushmere: [5, 4, 5, 6],
}

const S2_RECEIPTS: readonly Receipt[] = [
  ['canning tomatoes', 13, '21.00', '273.00', 'organiser float', 'tomato+salsa'],
  ['peaches', 8, '24.00', '192.00', 'Foxglove', 'peach'],
  ['snap beans', 5, '16.00', '80.00', 'organiser float', 'bean'],
  ['onions', 1, '7.00', '7.00', 'Kestrel', 'salsa'],
  ['jalapeno', 3, '2.50', '7.50', 'Kestrel', 'salsa'],
  ['long green chile', 4, '2.80', '11.20', 'Kestrel', 'salsa'],
  ['tomato paste', 18, '1.90', '34.20', 'Kestrel', 'salsa'],
  ['bottled lemon juice', 8, '4.40', '35.20', 'Kestrel', 'tomato+salsa'],
  ['sugar', 2, '9.50', '19.00', 'Foxglove', 'peach'],
  ['canning salt', 2, '4.50', '9.00', 'Kestrel', 'common'],
  ['ascorbic acid', 1, '11.00', '11.00', 'Foxglove', 'peach'],
  ['flat lids, regular', 16, '4.00', '64.00', 'Aspenrow', 'common'],
  ['flat lids, wide', 14, '5.50', '77.00', 'Aspenrow', 'common'],
  ['hall hire and fuel', 1, '140.00', '140.00', 'organiser float', 'common'],
]

describe('S1', () => {
  it.each([
    ['plum jam, 46 sealed', 0, 46],
    ['dill pickles, 28 sealed', 1, 28],
  ])('shares %s', (_, index, sealed) => {
    expect(shares(S1_CLAIMS, index, sealed)).toEqual(column(S1_SHARES, index))
  })

  const reckoning = reckoned({
    currency: 'USD',
    parties: Object.keys(S1_CLAIMS).map((name) => ({ householdId: name, householdName: name })),
    pools: [
      { id: 'jam', products: ['jam'], by: 'jars' },
      { id: 'pickle', products: ['pickle'], by: 'jars' },
      { id: 'common', products: ['jam', 'pickle'], by: 'jars' },
    ],
    outlays: [
      ...S1_RECEIPTS.map(([item, , , cost, partyId, poolId]) => ({
        kind: 'paid' as const,
        item,
        partyId,
        poolId,
        currency: 'USD',
        amount: cents(cost),
      })),
      ...S1_GIFTS.map(([partyId, pounds, each, poolId]) => ({
        ...{ kind: 'credited' as const, item: 'gift', partyId, poolId, currency: 'USD', amount: pounds * cents(each) },
      })),
    ],
    taken: Object.entries(S1_SHARES).flatMap(([partyId, [jam = 0, pickle = 0]]) => [
      { partyId, product: 'jam', size: 'half-pint' as const, jars: jam },
      { partyId, product: 'pickle', size: 'pint' as const, jars: pickle },
    ]),
  })

  it('spent 180.20 in cash, 60.00, 81.20 and 68.00 by pool, 2.22 a jar of jam and 3.82 a jar of pickles', () => {
    expect(reckoning.cashSpent).toBe(18020)
    expect(reckoning.pools.map(({ total }) => total)).toEqual([6000, 8120, 6800])
    expect(reckoning.jarCosts.map(({ cost }) => cost)).toEqual([222, 382])
    for (const [item, packs, price, cost] of S1_RECEIPTS) expect([item, Math.round(packs * cents(price))]).toEqual([item, cents(cost)])
  })

  it('settles as the file has it, but for one cent that its lines round away', () => {
    const lines = Object.fromEntries(reckoning.parties.map((party) => [party.householdId, party]))
    for (const [name, [, paid, balance]] of Object.entries(S1_SETTLEMENT)) {
      const line = lines[name]
      expect([name, (line?.paid ?? 0) + (line?.credited ?? 0)]).toEqual([name, cents(paid)])
      // The file rounds each share to the nearest cent by itself: its shares add up to 209.19, a cent less than the 209.20 that were spent and given.
      expect([name, line?.nearest]).toEqual([name, cents(S1_SETTLEMENT[name]?.[0] ?? '')])
      expect([name, line?.balance]).toEqual([name, name === 'Alderby' ? balance - 1 : balance])
    }
    expect(Object.values(S1_SETTLEMENT).reduce((sum, [share]) => sum + cents(share), 0)).toBe(20919)
    expect(reckoning.parties.reduce((sum, { share }) => sum + share, 0)).toBe(20920)
    expect(lines.Alderby?.share).toBe(3911)
  })

  it('needs at most five transfers', () => {
    const settled = settle(reckoning.parties.map(({ householdId: id, householdName: name, balance }) => ({ id, name, balance })))
    expect(settled).toMatchObject({ ok: true, value: { isFewest: true } })
    expect(settled.ok && settled.value.transfers.length).toBeLessThanOrEqual(5)
  })
})

describe('S2', () => {
  it.each([
    ['tomatoes', 0],
    ['salsa', 1],
    ['peaches', 2],
    ['beans', 3],
  ])('shares %s', (_, index) => {
    expect(shares(S2_CLAIMS, index, S2_SEALED[index] ?? 0)).toEqual(column(S2_SHARES, index))
  })

  it('gives a jar to everybody who asked before anybody has a second, as its priority asks', () => {
    for (const [index, sealed] of S2_SEALED.entries())
      for (const [name, jars] of Object.entries(shares(S2_CLAIMS, index, sealed)))
        if ((S2_CLAIMS[name]?.[index] ?? 0) > 0) expect(jars).toBeGreaterThan(0)
  })

  it('spent 960.10 in cash, and every cent of it and of the gifts lands on a household', () => {
    const float = 'organiser float'
    const products = ['tomato', 'salsa', 'peach', 'bean']
    const carriedBy = { 'tomato+salsa': ['tomato', 'salsa'], salsa: ['salsa'], peach: ['peach'], bean: ['bean'], common: products }
    const reckoning = reckoned({
      currency: 'USD',
      parties: [...Object.keys(S2_CLAIMS), float].map((name) => ({ householdId: name, householdName: name })),
      pools: Object.entries(carriedBy).map(([id, own]) => ({ id, products: own, by: 'jars' })),
      outlays: [
        ...S2_RECEIPTS.map(([item, , , cost, partyId, poolId]) => ({
          ...{ kind: 'paid' as const, item, partyId, poolId, currency: 'USD', amount: cents(cost) },
        })),
        { kind: 'credited', item: 'snap beans', partyId: 'Oxbow', poolId: 'bean', currency: 'USD', amount: 40 * cents('1.20') },
        { kind: 'credited', item: 'fuel cylinders', partyId: 'Millrace', poolId: 'common', currency: 'USD', amount: cents('24.00') },
      ],
      taken: Object.entries(S2_SHARES).flatMap(([partyId, jars]) =>
        products.map((product, index) => ({ partyId, product, size: 'pint' as const, jars: jars[index] ?? 0 })),
      ),
    })
    expect(reckoning.cashSpent).toBe(96010)
    expect(reckoning.parties.reduce((sum, { share }) => sum + share, 0)).toBe(96010 + 4800 + 2400)
    expect(reckoning.parties.reduce((sum, { balance }) => sum + balance, 0)).toBe(0)
    expect(reckoning.parties.find(({ householdId }) => householdId === float)).toMatchObject({ share: 0, balance: 27300 + 8000 + 14000 })
  })
})
