import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { shoppingFile } from '@/lib/print/shopping-file'
import { reckoningPage } from '@/lib/queries/reckoning'
import { shoppingPage } from '@/lib/queries/shopping'
import { addPurchase } from '@/lib/services/share/add-purchase'
import { addPack } from '@/lib/services/shopping/add-pack'
import { assignErrand } from '@/lib/services/shopping/assign-errand'
import { buyItem } from '@/lib/services/shopping/buy-item'
import { coverItem } from '@/lib/services/shopping/cover-item'
import { editPack } from '@/lib/services/shopping/edit-pack'
import { keepLeftOver } from '@/lib/services/shopping/keep-left-over'
import { putBack } from '@/lib/services/shopping/put-back'
import type { ShoppingItem, ShoppingPage } from '@/shared/supplies/day-list'
import { sayPacks } from '@/shared/wording/say-shopping'
import { countStatements } from '../../../support/count-statements'
import { freshDatabase } from '../../../support/fresh-database'
import { actorNamed, as, must, S1, seedS1Evening } from '../../../support/s1-floor'

const fresh = freshDatabase()
const { dayId } = S1

beforeAll(() => seedS1Evening(fresh.client, { state: 'planned' }))

async function list(): Promise<ShoppingPage> {
  const page = await shoppingPage(actorNamed('Ada'), dayId)
  if (!page) throw new Error('no such day')
  return page
}
const line = async (key: string): Promise<ShoppingItem | undefined> => (await list()).items.find((item) => item.key === key)
const refused = async (answer: ReturnType<typeof as>) => {
  const done = await answer
  return done.ok ? 'done' : `${done.problem.code} ${Object.keys(done.problem.fields ?? {})}`.trim()
}
const sugar = { dayId, item: 'sugar', householdId: 'Brightwater', packs: 5, pack: '4 lb bag', cost: '18.00', holds: 10, unit: 'us-cup' }

describe('the shopping list of the plum and pickle evening', () => {
  it('is made of the ten planned batches: 46 cups of sugar, 7.5 lb of plums beside the gift, eight boxes of lids', async () => {
    expect(await line('sugar')).toMatchObject({ needed: 46, missing: 46, unit: 'us-cup', pool: 'common' })
    expect(await line('plums')).toMatchObject({ needed: 16.5, given: 9, missing: 7.5, pool: 'plum-jam' })
    expect(await line('pickling cucumbers, 3-5 in.')).toMatchObject({ needed: 35.2, given: 20, missing: 15.2, pool: 'dill-pickle' })
    const lids = await line('lids, regular mouth')
    expect(lids).toMatchObject({ needed: 88, onTop: 8, inStock: 96, leftOut: 24, missing: 0 })
    await fresh.client.supplyLot.updateMany({ where: { lotCode: 'LID-27' }, data: { count: 0 } })
    const bought = await line('lids, regular mouth')
    expect(bought?.plan.choice && sayPacks(bought.plan.choice)).toBe('8 × box of 12')
    expect(await line('half-pint jars, regular mouth')).toMatchObject({ needed: 48, inStock: 52, missing: 0, over: 4 })
  })

  it('asks as many statements for a long list as for a short one', async () => {
    expect(await countStatements(list)).toBeLessThanOrEqual(17)
  })

  it('knows packs, takes the next when one is short, and refuses a price that is none', async () => {
    const pack = { item: 'sugar', holds: 10, unit: 'us-cup' }
    await must(as('Ada', addPack, { ...pack, label: '4 lb bag', price: '3.60' }))
    const { packId } = await must(as('Ada', addPack, { ...pack, label: '20 lb sack', holds: 50, price: '14.00' }))
    const choice = async () => {
      const found = (await line('sugar'))?.plan.choice
      return found && [sayPacks(found), found.price, found.over]
    }
    expect(await choice()).toEqual(['1 × 20 lb sack', 1400, 4])
    await must(as('Ada', editPack, { packId, holds: 50, unit: 'us-cup', price: '14.00', isShort: 'yes' }))
    expect(await choice()).toEqual(['5 × 4 lb bag', 1800, 4])
    expect(await refused(as('Ada', addPack, { ...pack, label: '4 lb bag' }))).toBe('bad-input label')
    expect(await refused(as('Ada', addPack, { ...pack, label: 'x', price: '1e308' }))).toBe('bad-input price')
    expect(await refused(as('Ada', addPack, { ...pack, label: 'x', price: '30000000.00' }))).toBe('bad-input price')
    expect(await refused(as('Ada', addPack, { ...pack, label: 'x', holds: 1e308 }))).toBe('bad-input holds')
    expect(await refused(as('Ada', addPack, { ...pack, label: 'x', holds: 0 }))).toBe('bad-input holds')
    expect(await refused(as('Cleo', addPack, { ...pack, label: 'x' }))).toBe('not-allowed')
  })

  it('lets a household take a line that nobody has taken, and no other', async () => {
    await must(as('Esme', assignErrand, { dayId, item: 'mustard seed', householdId: 'Dunmarrow', run: 'Mill Street, Thursday' }))
    expect(await line('mustard seed')).toMatchObject({ buyer: { name: 'Dunmarrow' }, run: 'Mill Street, Thursday' })
    expect(await refused(as('Dov', assignErrand, { dayId, item: 'mustard seed', householdId: 'Copperfold' }))).toBe('taken')
    expect(await refused(as('Dov', assignErrand, { dayId, item: 'dill heads', householdId: 'Dunmarrow' }))).toBe('not-found')
    await must(as('Ada', assignErrand, { dayId, item: 'sugar', householdId: 'Brightwater', pool: 'plum-jam' }))
  })
})

describe('a tick', () => {
  it('becomes a receipt in the pool of its line, shortens the list, and counts once however often it is sent', async () => {
    const [key, purchaseId] = [randomUUID(), randomUUID()]
    const answers = await Promise.all([1, 2, 3, 4].map(() => as('Cleo', buyItem, { ...sugar, purchaseId }, key)))
    expect(answers.filter(({ ok }) => ok).length).toBeGreaterThan(0)
    await must(as('Cleo', buyItem, { ...sugar, purchaseId }, key))
    expect(await fresh.client.purchase.count({ where: { shoppingItem: 'sugar' } })).toBe(1)
    expect(await line('sugar')).toMatchObject({ boughtAmount: 50, missing: 0, over: 4, bought: [{ costMinor: 1800 }] })
    expect(await refused(as('Cleo', buyItem, { ...sugar, purchaseId }))).toBe('ticked-already')
    const page = await reckoningPage(actorNamed('Ada'), dayId)
    expect(page?.outlays).toContainEqual(
      expect.objectContaining({ item: 'sugar', amount: 1800, partyId: 'Brightwater', poolId: 'plum-jam' }),
    )
  })

  it('is taken back by its household, and by nobody else but the organiser', async () => {
    const purchaseId = randomUUID()
    await must(as('Cleo', buyItem, { ...sugar, item: 'pickling spice', purchaseId }))
    expect(await refused(as('Dov', putBack, { dayId, purchaseId }))).toBe('not-found')
    await must(as('Cleo', putBack, { dayId, purchaseId }))
    expect(await refused(as('Cleo', putBack, { dayId, purchaseId }))).toBe('not-found')
    expect((await line('pickling spice'))?.bought).toEqual([])
  })

  it('is refused for another household, for no packs, and for an amount that is none', async () => {
    const tick = { ...sugar, purchaseId: randomUUID() }
    expect(await refused(as('Dov', buyItem, tick))).toBe('not-allowed')
    for (const packs of [0, -1, 1e308]) expect(await refused(as('Cleo', buyItem, { ...tick, packs }))).toBe('bad-input packs')
    for (const cost of ['1e308', '-1', '1.234', 'ten']) expect(await refused(as('Cleo', buyItem, { ...tick, cost }))).toBe('bad-input cost')
    expect(await fresh.client.purchase.count()).toBe(1)
  })
})

describe('a receipt that was entered by itself', () => {
  it('is shown with the line that it may be for, and shortens the list once somebody says so', async () => {
    const receipt = { dayId, item: 'vinegar 5%', packs: 2, pack: '1 gal jug', cost: '8.40', householdId: 'Dunmarrow', pool: 'pickle' }
    const { purchaseId } = await must(as('Ada', addPurchase, receipt))
    expect(await line('vinegar 5%')).toMatchObject({ missing: 6, maybe: [{ id: purchaseId, costMinor: 840 }], bought: [] })
    await must(as('Ada', coverItem, { dayId, purchaseId, item: 'vinegar 5%', covers: 8, unit: 'us-qt' }))
    expect(await line('vinegar 5%')).toMatchObject({ missing: 0, over: 2, maybe: [], bought: [{ id: purchaseId }] })
    expect(await refused(as('Ada', coverItem, { dayId, purchaseId, item: 'vinegar 5%', covers: 8, unit: 'us-qt' }))).toBe('not-found')
  })
})

describe('what is left over', () => {
  it('goes to somebody, and the next list begins with it', async () => {
    await must(as('Ada', keepLeftOver, { dayId, item: 'sugar', amount: 4, unit: 'us-cup', householdId: 'Elmsway' }))
    expect((await list()).pantry).toMatchObject([{ item: 'sugar', amount: 4, household: 'Elmsway', fromDayId: dayId }])
    expect(await line('sugar')).toMatchObject({ inStock: 4 })
  })
})

describe('acid that a process asks for in every jar', () => {
  it('is on the list with its source: a tablespoon of bottled lemon juice for each of at most 36 pints', async () => {
    expect(await line('bottled lemon juice')).toBeUndefined()
    const pints = { groupId: S1.groupId, dayId, recipeId: 'dill-pickle' }
    const { processRowKey } = await fresh.client.preparation.findFirstOrThrow({ where: pints })
    const tomatoes = 'tomatoes-whole-water--boiling-water/boiling-water/hot/pint/0-1000-ft'
    await fresh.client.preparation.updateMany({ where: pints, data: { processRowKey: tomatoes } })
    const source = expect.stringMatching(
      /^Into each pint: 1 tbsp .* Source: USDA Complete Guide to Home Canning.*Guide 3, acidification\.$/,
    )
    expect(await line('bottled lemon juice')).toMatchObject({ missing: 36, unit: 'us-tbsp', pool: 'dill-pickle', printed: [source] })
    await fresh.client.preparation.updateMany({ where: pints, data: { processRowKey } })
  })
})

describe('the list as a file', () => {
  it('has a line for each thing, safe for a spreadsheet', async () => {
    await must(as('Ada', assignErrand, { dayId, item: 'dill heads', householdId: 'Alderby', run: '=HYPERLINK("x")' }))
    const { name, text } = shoppingFile(await list())
    expect(name).toBe('shopping-2027-08-26.csv')
    const rows = text.split('\r\n')
    expect(rows[0]).toMatch(/^Item,For,Unit,Needed/)
    expect(rows.find((row) => row.startsWith('dill heads'))).toContain(`"'=HYPERLINK(""x"")"`)
    expect(rows.find((row) => row.startsWith('sugar'))).toMatch(/^sugar,"Dill pickles, Plum jam",cup,46,0,4,0,50,0,,,Brightwater,,18\.00$/)
  })
})
