import { beforeAll, describe, expect, it } from 'vitest'
import { writeCsv } from '@/lib/print/write-csv'
import { importPage } from '@/lib/queries/imports'
import { freshDatabase } from '../../../support/fresh-database'
import { as, must, S1, seedS1Evening } from '../../../support/s1-floor'
import { enterImport } from '@/lib/services/import/enter-import'
import { readImport } from '@/lib/services/import/read-import'

const fresh = freshDatabase()
const { groupId, dayId } = S1

beforeAll(() => seedS1Evening(fresh.client))

const read = (kind: string, text: string, more: object = {}) => must(as('Ada', readImport, { kind, name: `${kind}.csv`, text, ...more }))
const enter = (importId: unknown) => as('Ada', enterImport, { importId })
const code = async (answer: ReturnType<typeof as>) => {
  const done = await answer
  return done.ok ? 'done' : done.problem.code
}

describe('a file', () => {
  it('of 20,000 households is read, shown and entered whole, once', async () => {
    const text = writeCsv(
      ['Name', 'People', 'Contact'],
      Array.from({ length: 20_000 }, (_, index) => [`House ${index}`, 1 + (index % 6), index === 7 ? '=cmd()' : '']),
    )
    const { importId, rowCount, problems } = await read('households', text)
    expect([rowCount, problems]).toEqual([20_000, 0])
    const page = await importPage(groupId, String(importId))
    expect(page).toMatchObject({ rowCount: 20_000, isEntered: false, problemCount: 0, header: ['Name', 'People', 'Contact'] })
    expect(page?.first[0]).toEqual({ line: 2, cells: ['House 0', '1', ''] })
    const before = await fresh.client.household.count()
    const answers = await Promise.all([1, 2, 3, 4].map(() => enter(importId)))
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
    expect(await fresh.client.household.count()).toBe(before + 20_000)
    expect(await fresh.client.household.findFirst({ where: { name: 'House 7' } })).toMatchObject({ contact: '=cmd()', headcount: 2 })
    expect(await code(enter(importId))).toBe('entered-already')
    expect(await importPage(groupId, String(importId))).toMatchObject({ isEntered: true })
  })

  it('of 20,000 lines with broken ones names each, and nothing of it is entered', async () => {
    const lines = Array.from({ length: 20_000 }, (_, index) => (index % 1000 === 499 ? `,${index}` : `Home ${index},2`))
    const before = await fresh.client.household.count()
    const { importId, problems } = await read('households', `Name,People\r\n${lines.join('\r\n')}\r\n`)
    expect(problems).toBe(40) // twenty lines without a name, whose people are too many as well
    const page = await importPage(groupId, String(importId))
    expect(page?.problems[0]).toEqual({ line: 501, field: 'Name', say: 'Give the household a name.' })
    expect(new Set(page?.problems.map(({ line }) => line)).size).toBe(20)
    expect(await code(enter(importId))).toBe('broken-lines')
    expect(await fresh.client.household.count()).toBe(before)
  })

  it('is refused as a whole when the group has changed since it was read', async () => {
    const { importId } = await read('supplies', 'What,Lot,Count\nlid,NEW-1,12\nlid,NEW-2,12\n')
    await fresh.client.supplyLot.create({ data: { groupId, id: 'twin', kind: 'lid', lotCode: 'NEW-2', count: 5 } })
    expect(await code(enter(importId))).toBe('changed-meanwhile')
    expect(await fresh.client.supplyLot.count({ where: { lotCode: 'NEW-1' } })).toBe(0)
  })

  it('of supplies puts lent jars into the ledger', async () => {
    const { importId } = await read(
      'supplies',
      'What;Size;Mouth;Lot;Count;Lent by;Shop jars\njar;pint;wide;LENT;12;Alderby;\njar;quart;;MAYO;11;;yes\n',
    )
    await must(enter(importId))
    expect(await fresh.client.jarMovement.findMany({ select: { householdId: true, jars: true, mouth: true, kind: true } })).toEqual([
      { householdId: 'Alderby', jars: 12, mouth: 'wide', kind: 'brought' },
    ])
    expect(await fresh.client.supplyLot.findFirst({ where: { lotCode: 'MAYO' } })).toMatchObject({ isShopJar: true })
  })

  it('of equipment and of deliveries goes where it belongs', async () => {
    const equipment =
      'Kitchen,What,Label,Method,Pints,Litres,Material\nAlder Lane Hall,canner,BW9,boiling-water,9,,\nAlder Lane Hall,kettle,K9,,,12,stainless\n'
    await must(enter((await read('equipment', equipment)).importId))
    expect(await fresh.client.kettle.findFirst({ where: { label: 'K9' } })).toMatchObject({ millilitres: 12_000, kitchenId: S1.kitchenId })
    const deliveries = 'Item,Quantity,Unit,Brought by,Condition\nplums,9,lb,Copperfold,"ripe,\nsome soft"\nplums,4.5,lb,Elmsway,\n'
    const { importId } = await read('deliveries', deliveries, { dayId })
    await must(enter(importId))
    const lots = await fresh.client.ingredientLot.findMany({ orderBy: { code: 'asc' }, select: { code: true, householdId: true } })
    expect(lots).toEqual([
      { code: 'PL1', householdId: 'Copperfold' },
      { code: 'PL2', householdId: 'Elmsway' },
    ])
  })

  it('counts lines as the table does, also behind a cell of several lines, and says where a quote is left open', async () => {
    const { importId } = await read('households', '\uFEFFName,People,Contact\r\nOak,2,"call\r\nlate"\r\nPine,none,\r\n')
    expect((await importPage(groupId, String(importId)))?.problems).toEqual([{ line: 4, field: 'People', say: 'How many people?' }])
    const open = await read('households', 'Name,People\nYew,2\n"Rowan,3\n')
    expect((await importPage(groupId, String(open.importId)))?.problems[0]).toMatchObject({
      line: 3,
      say: expect.stringContaining('quote'),
    })
  })

  it('is read for the organiser alone, for a day that is open, and never longer than 4 million characters', async () => {
    const file = { kind: 'households', name: 'x.csv', text: 'Name,People\nX,1\n' }
    expect(await code(as('Cleo', readImport, file))).toBe('not-allowed')
    expect(await code(as('Ada', readImport, { ...file, kind: 'deliveries' }))).toBe('bad-input')
    expect(await code(as('Ada', readImport, { ...file, kind: 'deliveries', dayId: 'no-such-day' }))).toBe('not-found')
    expect(await code(as('Ada', readImport, { ...file, text: 'x'.repeat(4_000_001) }))).toBe('bad-input')
  })
})
