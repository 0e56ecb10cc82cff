import { beforeAll, describe, expect, it } from 'vitest'
import { ledgerFile } from '@/lib/print/ledger-file'
import { jarLedgerPage } from '@/lib/queries/jar-ledger'
import { freshDatabase } from '../../../support/fresh-database'
import { done, makeGroup, outcome, send, type TestGroup } from '../../../support/two-groups'

const fresh = freshDatabase()
let ours: TestGroup
let theirs: TestGroup

beforeAll(async () => {
  ours = await makeGroup(fresh.client, 'ours')
  theirs = await makeGroup(fresh.client, 'theirs')
})

const moved = (more: object = {}) => ({ householdId: ours.birch, kind: 'brought', jarSize: 'pint', jars: 12, ...more })
const balances = async (actor = ours.as.organiser) =>
  (await jarLedgerPage(actor)).lines.map(({ household, size, mouth, balance }) => [household, size, mouth, balance])

describe('the ledger of jars lent and returned', () => {
  it('runs over the seasons and is taken back by an entry that names the wrong one, once', async () => {
    await done(ours.as.organiser, 'note-jars', moved({ movedOn: '2025-08-30' }))
    const { movementId } = await done(ours.as['station-lead'], 'note-jars', moved({ kind: 'went-back-empty', jars: 30 }))
    expect(await balances()).toEqual([['Birch', 'pint', 'regular', -18]])
    await done(ours.as.organiser, 'take-back-jars', { movementId, note: 'it was 3' })
    expect(outcome(await send(ours.as.organiser, 'take-back-jars', { movementId }))).toBe('409 taken-back')
    await done(ours.as.organiser, 'note-jars', moved({ kind: 'went-back-empty', jars: 3 }))
    expect(await balances()).toEqual([['Birch', 'pint', 'regular', 9]])
  })

  it('has four callers take the same entry back once, twenty times over', async () => {
    for (let round = 0; round < 20; round += 1) {
      const { movementId } = await done(ours.as.organiser, 'note-jars', moved({ jars: 1 }))
      const answers = await Promise.all([1, 2, 3, 4].map(() => send(ours.as.organiser, 'take-back-jars', { movementId })))
      expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
    }
    expect(await balances()).toEqual([['Birch', 'pint', 'regular', 9]])
  })

  it('has what a household lends to the stock by itself', async () => {
    const lot = { kind: 'jar', jarSize: 'quart', mouth: 'wide', lotCode: 'Q', count: 7 }
    await done(ours.as.organiser, 'add-supply', { ...lot, householdId: ours.ash })
    await done(ours.as.organiser, 'add-supply', { ...lot, lotCode: 'Q2' })
    expect(await balances()).toEqual([
      ['Ash', 'quart', 'wide', 7],
      ['Birch', 'pint', 'regular', 9],
    ])
  })

  it('shows a household its own lines alone, and another group none', async () => {
    expect(await balances(ours.as.member)).toEqual([['Birch', 'pint', 'regular', 9]])
    expect(await balances(theirs.as.organiser)).toEqual([])
    expect(outcome(await send(theirs.as.organiser, 'note-jars', moved()))).toBe('404 not-found')
  })

  it.each([
    ['half a jar', { jars: 1.5 }, 'jars'],
    ['no jars', { jars: 0 }, 'jars'],
    ['fewer than none', { jars: -2 }, 'jars'],
    ['1e308 jars', { jars: 1e308 }, 'jars'],
    ['a size that no table names', { jarSize: '18-oz' }, 'jarSize'],
    ['a way that jars do not move', { kind: 'stolen' }, 'kind'],
    ['a day that has not come', { movedOn: '2999-01-01' }, 'movedOn'],
  ])('refuses %s', async (_, more, field) => {
    const answer = await send(ours.as.organiser, 'note-jars', moved(more))
    expect(answer).toMatchObject({ ok: false, problem: { code: 'bad-input', fields: { [field]: expect.anything() } } })
  })

  it('is never rewritten by the app', async () => {
    await expect(fresh.client.jarMovement.updateMany({ data: { jars: 1 } })).rejects.toThrow('permission denied')
    await expect(fresh.client.jarMovement.deleteMany()).rejects.toThrow('permission denied')
  })

  it('goes out as a file', async () => {
    const { text } = ledgerFile(await jarLedgerPage(ours.as.organiser), '2027-08-26')
    expect(text).toBe(
      'Household,Size,Mouth,Lent,Back empty,Home full,Returned,Broke here,Broke there,Balance\r\n' +
        'Ash,quart,wide,7,0,0,0,0,0,7\r\nBirch,pint,regular,12,3,0,0,0,0,9\r\n',
    )
  })
})

describe('chipped and shop jars', () => {
  it('are counted with their lot, never more than it has, and never lids', async () => {
    const jars = { kind: 'jar', jarSize: 'pint', count: 11 }
    await done(ours.as.organiser, 'add-supply', { ...jars, lotCode: 'MAYO', chipped: 2, isShopJar: 'yes' })
    expect(await fresh.client.supplyLot.findFirst({ where: { lotCode: 'MAYO' } })).toMatchObject({ chipped: 2, isShopJar: true })
    const wrong = [
      { ...jars, lotCode: 'X', chipped: 12 },
      { kind: 'lid', count: 12, lotCode: 'Y', chipped: 1 },
      { kind: 'band', count: 12, lotCode: 'Z', isShopJar: 'yes' },
    ]
    for (const input of wrong)
      expect(await send(ours.as.organiser, 'add-supply', input)).toMatchObject({
        problem: { code: 'bad-input', fields: { chipped: expect.anything() } },
      })
  })
})
