import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { listStock } from '@/lib/queries/list-stock'
import { freshDatabase } from '../../../support/fresh-database'
import { done, makeGroup, outcome, send, type TestGroup } from '../../../support/two-groups'

const fresh = freshDatabase()
let ours: TestGroup
let theirs: TestGroup

beforeAll(async () => {
  ours = await makeGroup(fresh.client, 'ours')
  theirs = await makeGroup(fresh.client, 'theirs')
})

const lids = (lotCode: string, more: object = {}) => ({ kind: 'lid', lotCode, count: '96', boughtOn: '2026-08-01', ...more })
const lotOf = async (lotCode: string) => (await listStock(ours.as.organiser, '2027-08-26')).find((lot) => lot.lotCode === lotCode)

describe('stock', () => {
  it('is entered by organiser and station lead, and by nobody else', async () => {
    const roles = ['organiser', 'station-lead', 'operator', 'member', 'helper', 'visitor'] as const
    const answers = await Promise.all(roles.map((role) => send(ours.as[role], 'add-supply', lids(`By ${role}`))))
    expect(answers.map(outcome)).toEqual(['saved', 'saved', ...Array(4).fill('403 not-allowed')])
  })

  it('says which lids are too old, by whose guidance', async () => {
    await done(ours.as.organiser, 'add-supply', lids('LID-OLD', { boughtOn: '2020-08-01' }))
    await done(ours.as.organiser, 'add-supply', lids('LID-NEW'))
    await done(ours.as.organiser, 'add-supply', lids('LID-UNKNOWN', { boughtOn: undefined }))
    await done(ours.as.organiser, 'add-supply', { kind: 'jar', jarSize: 'pint', lotCode: 'PINTS', count: '38' })
    expect((await lotOf('LID-OLD'))?.verdict).toMatchObject({ isUsable: false, why: 'too-old', rule: { id: 'three-years' } })
    expect((await lotOf('LID-NEW'))?.verdict).toMatchObject({ isUsable: true })
    expect((await lotOf('LID-UNKNOWN'))?.verdict).toEqual({ isUsable: false, why: 'age-unknown' })
    expect((await lotOf('PINTS'))?.verdict).toBeNull()
  })

  it.each([
    ['fewer than none', { count: '-1' }, 'count'],
    ['half a lid', { count: '1.5' }, 'count'],
    ['a count that nobody typed', { count: '' }, 'count'],
    ['no count at all', { count: null }, 'count'],
    ['a list for a count', { count: [] }, 'count'],
    ['more than anybody owns', { count: '100001' }, 'count'],
    ['a size for lids', { jarSize: 'pint' }, 'jarSize'],
    ['jars without a size', { kind: 'jar' }, 'jarSize'],
    ['a size that no table names', { kind: 'jar', jarSize: '18-oz' }, 'jarSize'],
    ['a mouth that no jar has', { mouth: 'narrow' }, 'mouth'],
    ['a purchase that has not come yet', { boughtOn: '2999-01-01' }, 'boughtOn'],
    ['a date in words', { boughtOn: 'last summer' }, 'boughtOn'],
    ['a lot of a million letters', { lotCode: 'x'.repeat(1_000_000) }, 'lotCode'],
    ['a version of its own', { version: 3 }, 'version'],
  ])('is refused with %s', async (_, wrong, field) => {
    const answer = await send(ours.as.organiser, 'add-supply', lids(`R ${randomUUID().slice(0, 8)}`, wrong))
    expect(outcome(answer)).toBe('422 bad-input')
    expect(Object.keys((!answer.ok && answer.problem.fields) || {})).toEqual([field])
  })

  it('is lent by a household of this group only', async () => {
    expect(outcome(await send(ours.as.organiser, 'add-supply', lids('LENT', { householdId: theirs.ash })))).toBe('404 not-found')
    await done(ours.as.organiser, 'add-supply', lids('LENT', { householdId: ours.birch }))
    expect((await lotOf('LENT'))?.household).toBe('Birch')
  })

  it('has a lot once of each kind', async () => {
    await done(ours.as.organiser, 'add-supply', lids('TWICE'))
    expect(outcome(await send(ours.as.organiser, 'add-supply', lids('TWICE')))).toBe('422 bad-input')
    expect(outcome(await send(ours.as.organiser, 'add-supply', { kind: 'band', lotCode: 'TWICE', count: '5' }))).toBe('saved')
  })
})

describe('counting again', () => {
  it('keeps one of four who count at the same moment and tells the others, in each of twenty rounds', async () => {
    const { supplyId } = await done(ours.as.organiser, 'add-supply', lids('COUNTED'))
    for (let version = 1; version <= 20; version++) {
      const counts = [10, 20, 30, 40]
      const answers = await Promise.all(counts.map((count) => send(ours.as.organiser, 'change-supply', { supplyId, version, count })))
      expect(answers.map(outcome).sort()).toEqual([...Array(3).fill('409 changed-meanwhile'), 'saved'])
      const winner = counts[answers.findIndex((answer) => answer.ok)]
      expect(await lotOf('COUNTED')).toMatchObject({ version: version + 1, count: winner })
    }
  })

  it('to nothing takes the lot out of stock and keeps its code', async () => {
    const { supplyId } = await done(ours.as.organiser, 'add-supply', lids('GONE'))
    await done(ours.as.organiser, 'change-supply', { supplyId, version: '1', count: '0' })
    expect((await lotOf('GONE'))?.count).toBe(0)
    expect(outcome(await send(ours.as.organiser, 'add-supply', lids('GONE')))).toBe('422 bad-input')
  })

  it('of another group’s stock finds nothing', async () => {
    const { supplyId } = await done(theirs.as.organiser, 'add-supply', lids('THEIRS'))
    const foreign = await send(ours.as.organiser, 'change-supply', { supplyId, version: 1, count: 0 })
    expect(foreign).toEqual(await send(ours.as.organiser, 'change-supply', { supplyId: 'nowhere', version: 1, count: 0 }))
    expect(outcome(foreign)).toBe('404 not-found')
    expect(await lotOf('THEIRS')).toBeUndefined()
  })

  it('sent twice with one key is done once', async () => {
    const { supplyId } = await done(ours.as.organiser, 'add-supply', lids('TAPPED'))
    const [key, input] = [randomUUID(), { supplyId, version: 1, count: 7 }]
    const answers = await Promise.all([1, 2, 3].map(() => send(ours.as.organiser, 'change-supply', input, key)))
    expect(answers.map(outcome)).toEqual(['saved', 'saved', 'saved'])
    expect((await lotOf('TAPPED'))?.version).toBe(2)
  })
})
