import { beforeAll, describe, expect, it } from 'vitest'
import { sharesFile } from '@/lib/print/shares-file'
import { jarLedgerPage } from '@/lib/queries/jar-ledger'
import { sharesPage } from '@/lib/queries/shares'
import { fillBatch } from '@/lib/services/floor/fill-batch'
import { startBatch } from '@/lib/services/floor/start-batch'
import { awardJars } from '@/lib/services/share/award-jars'
import { giveLeftJars } from '@/lib/services/share/give-left-jars'
import { handOver } from '@/lib/services/share/hand-over'
import { nameOwnGlass } from '@/lib/services/share/name-own-glass'
import { releaseJars } from '@/lib/services/share/release-jars'
import { setPickUp } from '@/lib/services/share/set-pick-up'
import { wishOwnGlass } from '@/lib/services/share/wish-own-glass'
import { LOADS } from '../../../fixtures/s1-day-actuals'
import { freshDatabase } from '../../../support/fresh-database'
import { receiveS1Ingredients, runS1Evening } from '../../../support/run-s1-evening'
import { actorNamed, as, must, S1, seedS1Evening } from '../../../support/s1-floor'

const fresh = freshDatabase()
const { dayId, groupId } = S1
const code = async (answer: ReturnType<typeof as>) => {
  const done = await answer
  return done.ok ? 'done' : `${done.problem.code} ${Object.keys(done.problem.fields ?? {})}`.trim()
}
const page = () => sharesPage(groupId, dayId, 'in-proportion')
const jam = async () => (await page()).products.find(({ preparationId }) => preparationId === 'jam')

beforeAll(async () => {
  await seedS1Evening(fresh.client)
})

describe('glass that is kept apart', () => {
  it('from a shop is refused for what goes under pressure, and by the database too', async () => {
    const { client } = fresh
    await client.supplyLot.createMany({
      data: [
        { groupId, id: 'mayo', kind: 'jar', jarSize: 'half-pint', lotCode: 'MAYO', count: 11, isShopJar: true },
        { groupId, id: 'lent', kind: 'jar', jarSize: 'half-pint', lotCode: 'GIL’S', count: 12, chipped: 4, householdId: 'Fennick' },
      ],
    })
    const lots = await receiveS1Ingredients()
    const [first] = LOADS.filter(({ batch }) => batch.startsWith('J'))
    if (!first) return expect.unreachable()
    const fill = { dayId, batchId: first.batch, jars: 8, at: '17:58' }
    await must(as('Cleo', startBatch, { dayId, batchId: first.batch, kettleId: 'K1', lotIds: lots.jam, at: '17:20' }))
    await client.preparation.updateMany({ where: { id: 'jam' }, data: { method: 'pressure' } })
    expect(await code(as('Cleo', fillBatch, { ...fill, jarLotId: 'mayo' }))).toBe('shop-jars-under-pressure')
    await client.preparation.updateMany({ where: { id: 'jam' }, data: { method: 'boiling-water' } })
    expect(await code(as('Cleo', fillBatch, { ...fill, jarLotId: 'pints' }))).toBe('bad-input jarLotId')
    expect(await code(as('Cleo', fillBatch, { ...fill, jars: 9, countedAgain: 'yes', jarLotId: 'lent' }))).toBe('bad-input jarLotId')
    await must(as('Cleo', fillBatch, { ...fill, jarLotId: 'lent' }))

    const jar = await client.jar.findFirstOrThrow({ where: { jarLotId: 'lent' } })
    await client.canner.create({
      data: { groupId, id: 'PC', kitchenId: S1.kitchenId, label: 'PC', method: 'pressure', gauge: 'weighted', pints: 9 },
    })
    await client.cannerLoad.create({
      data: { groupId, id: 'L99', dayId, code: 'L99', cannerId: 'PC', plannedLoadAt: 1100, plannedEmptyAt: 1200 },
    })
    await client.jar.update({ where: { serial: jar.serial }, data: { jarLotId: 'mayo' } })
    await expect(client.jarLoad.create({ data: { groupId, jarId: jar.id, loadId: 'L99' } })).rejects.toThrow('under pressure')
    await client.jar.update({ where: { serial: jar.serial }, data: { jarLotId: 'lent' } })
    // What was tried here is taken away again, so that the evening can be run as it was.
    await fresh.asOwner('DELETE FROM jar; DELETE FROM batch_ingredient; DELETE FROM ingredient_lot')
    await fresh.asOwner(
      `UPDATE kettle_batch SET state = 'planned', started_at = NULL, filled_at = NULL, jars_filled = NULL, kettle_id = NULL`,
    )
    await client.cannerLoad.delete({ where: { groupId_id: { groupId, id: 'L99' } } })
  })

  it('goes back to whoever lent it and wishes for it', async () => {
    await runS1Evening(fresh.client)
    const some = await fresh.client.jar.findMany({
      where: { state: 'sealed', batch: { preparationId: 'jam' } },
      orderBy: { shortName: 'asc' },
      take: 4,
    })
    await fresh.client.jar.updateMany({ where: { id: { in: some.map(({ id }) => id) } }, data: { jarLotId: 'lent' } })
    await must(as('Ada', awardJars, { dayId }))
    const ownersOf = async () =>
      (await fresh.client.jar.findMany({ where: { jarLotId: 'lent' }, select: { householdId: true } })).map(
        ({ householdId }) => householdId,
      )
    expect(new Set(await ownersOf())).toEqual(new Set(['Alderby']))
    expect(await code(as('Dov', wishOwnGlass, { dayId, householdId: 'Fennick', wish: 'yes' }))).toBe('not-allowed')
    await must(as('Gil', wishOwnGlass, { dayId, householdId: 'Fennick', wish: 'yes' }))
    await must(as('Ada', awardJars, { dayId }))
    expect(new Set(await ownersOf())).toEqual(new Set(['Fennick']))
    await fresh.client.jar.updateMany({ where: { jarLotId: 'lent' }, data: { jarLotId: null } })
  })

  it('is named at the store too, as many jars as were lent and are sound', async () => {
    const { client } = fresh
    const name = (jars: string, who = 'Cleo') => code(as(who, nameOwnGlass, { dayId, householdId: 'Fennick', jars }))
    expect(await name('J1-01', 'Dov')).toBe('not-allowed')
    expect(await name(' ')).toBe('bad-input jars')
    expect(await name('J1-01, J9-99')).toBe('no-such-jar jars')
    expect(await name('D2-01')).toBe('bad-input jars') // Fennick lent half-pints, and pickles are in pints.
    const jars = await client.jar.findMany({
      where: { state: 'sealed', batch: { preparationId: 'jam' } },
      select: { shortName: true },
      orderBy: { shortName: 'desc' },
      take: 9,
    })
    const names = jars.map(({ shortName }) => shortName)
    expect(await name(names.join(' '))).toBe('bad-input jars') // 12 lent, 4 of them chipped
    expect(await client.jar.count({ where: { jarLotId: 'lent' } })).toBe(0)
    expect(await name(`${names.slice(0, 3).join(', ').toLowerCase()};${names[0]}`)).toBe('done')
    expect(await name(names.slice(0, 8).join(' '))).toBe('done')
    expect(await name(names[8] ?? '')).toBe('bad-input jars')
    await must(as('Ada', awardJars, { dayId }))
    const owners = await client.jar.findMany({
      where: { householdId: 'Fennick', batch: { preparationId: 'jam' } },
      select: { shortName: true },
    })
    expect(owners).toHaveLength(6)
    expect(owners.every(({ shortName }) => names.slice(0, 8).includes(shortName))).toBe(true)
    const fennick = (await page()).households.find(({ id }) => id === 'Fennick')
    expect([...(fennick?.ownGlass ?? [])].sort()).toEqual(names.slice(0, 8).sort())
  })
})

describe('jars that nobody claimed', () => {
  it('are offered and given, never more than are left, and to nobody with an allergy', async () => {
    const { client } = fresh
    await client.claim.updateMany({ where: { preparationId: 'jam', householdId: { in: ['Alderby', 'Elmsway'] } }, data: { jars: 7 } })
    await client.claim.updateMany({ where: { preparationId: 'pickles', householdId: 'Fennick' }, data: { jars: 12 } })
    await must(as('Ada', awardJars, { dayId }))
    const product = await jam()
    expect(product).toMatchObject({ left: 4 })
    expect(product?.offers[0]).toMatchObject({ householdName: 'Fennick', why: { kind: 'cut' } })
    const give = { dayId, preparationId: 'jam', householdId: 'Fennick' }
    expect(await code(as('Ada', giveLeftJars, { ...give, jars: 5 }))).toBe('bad-input jars')
    for (const jars of [0, -1, 0.5, 1e308]) expect(await code(as('Ada', giveLeftJars, { ...give, jars }))).toBe('bad-input jars')
    expect(await code(as('Ada', giveLeftJars, { ...give, preparationId: 'pickles', householdId: 'Dunmarrow', jars: 1 }))).toBe(
      'bad-input householdId',
    )
    const answers = await Promise.all([1, 2, 3, 4, 5, 6].map(() => as('Ada', giveLeftJars, { ...give, jars: 1 })))
    expect(answers.filter(({ ok }) => ok).length).toBeLessThanOrEqual(4)
    const left = (await jam())?.left ?? 0
    if (left > 0) await must(as('Ada', giveLeftJars, { ...give, jars: left }))
    expect(await jam()).toMatchObject({ left: 0, cells: { Fennick: { jars: 10 } } }) // 6 and 4 more
    expect(await client.jar.count({ where: { householdId: 'Fennick', state: 'sealed', batch: { preparationId: 'jam' } } })).toBe(10)
    const award = await client.award.findFirstOrThrow({ where: { preparationId: 'jam', householdId: 'Fennick' } })
    expect(award).toMatchObject({ jars: 10, extra: 4, reason: expect.stringContaining('nobody claimed') })
  })
})

describe('jars that nobody fetches', () => {
  it('wait until the date that was said, and are then nobody’s again', async () => {
    const { client } = fresh
    const release = { dayId, householdId: 'Alderby' }
    expect(await code(as('Ada', releaseJars, release))).toBe('no-last-date')
    expect(await code(as('Cleo', setPickUp, { dayId, place: 'Hall', until: '2027-08-26', contact: 'Ada' }))).toBe('bad-input until')
    await must(as('Cleo', setPickUp, { dayId, place: 'The hall’s cellar', until: '2027-09-12', contact: 'Ada, 555 0100' }))
    expect((await page()).pickUp).toEqual({ place: 'The hall’s cellar', until: '2027-09-12', contact: 'Ada, 555 0100' })
    await client.group.update({ where: { id: groupId }, data: { isDemo: false } })
    expect(await code(as('Ada', releaseJars, release))).toBe('still-time')
    await client.group.update({ where: { id: groupId }, data: { isDemo: true } })
    const before = (await page()).households.find(({ id }) => id === 'Alderby')?.inStore
    expect(await must(as('Ada', releaseJars, release))).toMatchObject({ jars: before })
    expect(await jam()).toMatchObject({
      left: 7,
      cells: { Alderby: { jars: 0, reason: expect.stringContaining('not fetched by 2027-09-12') } },
    })
    expect(await code(as('Ada', releaseJars, release))).toBe('not-found')
  })

  it('go to somebody who comes late, whose glass the ledger then names', async () => {
    await must(as('Ada', giveLeftJars, { dayId, preparationId: 'jam', householdId: 'Brightwater', jars: 2 }))
    await must(as('Cleo', handOver, { dayId, householdId: 'Brightwater' }))
    await must(as('Ada', giveLeftJars, { dayId, preparationId: 'jam', householdId: 'Brightwater', jars: 1 }))
    expect(await must(as('Cleo', handOver, { dayId, householdId: 'Brightwater' }))).toMatchObject({ jars: 1 })
    const lines = (await jarLedgerPage(actorNamed('Cleo'))).lines.filter(({ householdId }) => householdId === 'Brightwater')
    expect(lines.map(({ size, balance }) => [size, balance])).toEqual([
      ['half-pint', -11], // 8, 2 and 1
      ['pint', -3], // 4 × 28 ÷ 36 = 3.11
    ])
    expect(await code(as('Ada', awardJars, { dayId }))).toBe('handed-over')
  })
})

describe('the share tables as a file', () => {
  it('name quota, jars and reason, and whose allergy it is only to those who may see it', async () => {
    const shares = await page()
    const all = sharesFile(shares, '2027-08-26', () => true).text
    expect(all.split('\r\n')[0]).toBe('Product,Size,Household,Asked,Sealed,Asked by all,First,Exact part,Jars,Reason,Jar numbers')
    expect(all).toMatch(/Fresh-pack dill pickles,pint,Copperfold,8,28,36,0,6\.2222,6,/)
    const lines = all.split('\r\n').filter((line) => line.includes('Elmsway'))
    expect(lines).toHaveLength(2)
    expect(sharesFile(shares, '2027-08-26', () => false).text).not.toContain('mustard')
  })
})
