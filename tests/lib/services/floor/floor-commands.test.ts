import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import type { AnyCommand } from '@/lib/commands/command'
import { runCommand } from '@/lib/commands/run-command'
import { loadRows } from '@/lib/queries/floor-rows'
import { jarTrace } from '@/lib/queries/jar-trace'
import { abandonBatch } from '@/lib/services/floor/abandon-batch'
import { checkSeals } from '@/lib/services/floor/check-seals'
import { emptyCanner } from '@/lib/services/floor/empty-canner'
import { failLoad } from '@/lib/services/floor/fail-load'
import { fillBatch } from '@/lib/services/floor/fill-batch'
import { finishProcess } from '@/lib/services/floor/finish-process'
import { loadCanner } from '@/lib/services/floor/load-canner'
import { lostTemperature } from '@/lib/services/floor/lost-temperature'
import { noteBrokenJar } from '@/lib/services/floor/note-broken-jar'
import { reachedTemperature } from '@/lib/services/floor/reached-temperature'
import { receiveIngredients } from '@/lib/services/floor/receive-ingredients'
import { relieveOperator } from '@/lib/services/floor/relieve-operator'
import { restDay } from '@/lib/services/floor/rest-day'
import { setJarsAside } from '@/lib/services/floor/set-jars-aside'
import { startBatch } from '@/lib/services/floor/start-batch'
import { startFilling } from '@/lib/services/floor/start-filling'
import { freshDatabase } from '../../../support/fresh-database'
import { receiveS1Ingredients } from '../../../support/run-s1-evening'
import { actorNamed, as, must, S1, seedS1Evening } from '../../../support/s1-floor'

const fresh = freshDatabase()
const { dayId, groupId } = S1
let lots: Readonly<Record<'jam' | 'pickles', string[]>>

beforeAll(async () => {
  await seedS1Evening(fresh.client)
  lots = await receiveS1Ingredients()
})

const code = async (answer: ReturnType<typeof as>) => {
  const done = await answer
  return done.ok ? 'done' : done.problem.code
}
const fields = async (answer: ReturnType<typeof as>) => {
  const done = await answer
  return done.ok ? undefined : done.problem.fields
}
const start = (batchId: string, kettleId: string, at = '17:30') =>
  as('Cleo', startBatch, { dayId, batchId, kettleId, lotIds: batchId.startsWith('J') ? lots.jam : lots.pickles, at })
const fill = (batchId: string, jars = 8, at = '18:00', more: object = {}) => as('Cleo', fillBatch, { dayId, batchId, jars, at, ...more })
const load = (loadId: string, batchIds: string[], at: string, more: object = {}) =>
  as('Gil', loadCanner, { dayId, loadId, batchIds, at, ...more })
const tap = (command: AnyCommand, loadId: string, at: string) => as('Gil', command, { dayId, loadId, at })
const jarsOf = (batchId: string) => fresh.client.jar.findMany({ where: { batchId }, orderBy: { shortName: 'asc' } })

describe('ingredients', () => {
  it('come from a promise with what it says, and get the next free code', async () => {
    const lot = await fresh.client.ingredientLot.findFirstOrThrow({ where: { householdId: 'Copperfold' } })
    expect(lot).toMatchObject({ item: 'plums', unit: 'lb', code: 'PL1', condition: 'ripe' })
    expect(Number(lot.quantity)).toBe(9)
    const codes = await fresh.client.ingredientLot.findMany({ where: { item: { contains: 'plums' } }, select: { code: true } })
    expect(codes.map((each) => each.code).sort()).toEqual(['PL1', 'PL2'])
  })

  it('are refused without a source, with a code that is taken, after the day, and without what is in them', async () => {
    const receive = (input: object) =>
      as('Cleo', receiveIngredients, { dayId, item: 'salt', quantity: 1, unit: 'lb', source: 'shop', ...input })
    expect(await fields(receive({ source: '' }))).toHaveProperty('source')
    expect(await fields(receive({ code: 'pl1' }))).toHaveProperty('code')
    expect(await fields(receive({ receivedOn: '2027-08-27' }))).toHaveProperty('receivedOn')
    expect(await fields(receive({ receivedOn: '2027-02-30' }))).toHaveProperty('receivedOn')
    expect(await fields(receive({ quantity: -1 }))).toHaveProperty('quantity')
    expect(await code(receive({ householdId: 'Nobody' }))).toBe('not-found')
    expect(await code(receive({ pledgeId: 'no-such-promise' }))).toBe('not-found')
    expect(await fields(receive({ item: undefined }))).toHaveProperty('item')
  })
})

describe('a kettle batch', () => {
  it('starts in a free kettle, inside the day, with lots of the day', async () => {
    expect(await code(start('J1', 'K1', '16:59'))).toBe('outside-the-day')
    expect(await code(start('J1', 'K1', '22:16'))).toBe('outside-the-day')
    expect(await code(as('Cleo', startBatch, { dayId, batchId: 'J1', kettleId: 'K1', lotIds: ['none'], at: '17:30' }))).toBe('not-found')
    expect(await fields(as('Cleo', startBatch, { dayId, batchId: 'J1', kettleId: 'K1', lotIds: [], at: '17:30' }))).toHaveProperty('lotIds')
    expect(await code(start('J1', 'K1'))).toBe('done')
    expect(await fields(start('J2', 'K1'))).toHaveProperty('kettleId')
    expect(await code(start('J1', 'K2'))).toBe('wrong-state')
  })

  it('gives at most what the recipe gives, unless it was counted again, and lids are counted', async () => {
    expect(await code(fill('J1', 9))).toBe('above-yield')
    expect(await code(fill('J1', 8, '17:29'))).toBe('out-of-order')
    expect(await code(fill('J1', 8, '18:00', { lidLotId: 'lids-old' }))).toBe('lids-not-usable')
    expect(await code(fill('J1', 8, '18:00', { lidLotId: 'half-pints' }))).toBe('not-found')
    const filled = await must(fill('J1', 9, '18:00', { countedAgain: 'yes' }))
    expect(filled).toMatchObject({ jars: 9, high: 8, lidsLeft: 87 })
    expect(await code(fill('J1'))).toBe('wrong-state')
    const jars = await jarsOf('J1')
    expect(jars.map((jar) => jar.shortName)).toEqual(['J1-01', 'J1-02', 'J1-03', 'J1-04', 'J1-05', 'J1-06', 'J1-07', 'J1-08', 'J1-09'])
    expect(jars[0]).toMatchObject({ state: 'filled', lidLotId: S1.lidLotId, lotId: null, filledAt: 1080 })
  })

  it('is being filled from its first jar on, which comes after its start and before the last, and keeps its kettle', async () => {
    const firstJar = (at: string) => as('Cleo', startFilling, { dayId, batchId: 'J5', at })
    expect(await code(firstJar('17:45'))).toBe('wrong-state')
    await must(start('J5', 'K2', '17:40'))
    expect(await code(firstJar('17:39'))).toBe('out-of-order')
    expect(await must(firstJar('17:45'))).toMatchObject({ code: 'J5', state: 'filling' })
    expect(await code(firstJar('17:46'))).toBe('wrong-state')
    expect(await code(fill('J5', 8, '17:44'))).toBe('out-of-order')
    expect(await fields(start('J6', 'K2', '17:50'))).toHaveProperty('kettleId')
    const abandon = (at: string) => as('Cleo', abandonBatch, { dayId, batchId: 'J5', at, why: 'a fly' })
    expect(await code(abandon('17:44'))).toBe('out-of-order')
    expect(await code(abandon('17:50'))).toBe('done')
  })

  it('may be given up until it is filled', async () => {
    await must(start('J6', 'K2'))
    expect(await code(as('Cleo', abandonBatch, { dayId, batchId: 'J6', at: '17:40', why: 'scorched' }))).toBe('done')
    expect(await code(as('Cleo', abandonBatch, { dayId, batchId: 'J1', at: '18:40', why: 'scorched' }))).toBe('wrong-state')
  })
})

describe('a canner load', () => {
  it('takes jars of one process, with a trained adult, into an empty canner that fits', async () => {
    await must(start('D1', 'K3'))
    await must(fill('D1', 9))
    expect(await code(load('L02', ['J1', 'D1'], '18:05'))).toBe('mixed-load')
    expect(await code(load('L02', ['J1'], '18:05', { operatorId: 'p4' }))).toBe('operator-unskilled')
    expect(await code(load('L02', ['J1'], '18:05', { operatorId: 'p8' }))).toBe('operator-too-young')
    expect(await code(load('L02', ['J2'], '18:05'))).toBe('nothing-to-load')
    expect(await code(load('L02', ['J1'], '17:59'))).toBe('out-of-order')
    expect(await code(load('L02', ['J1'], '18:05', { jars: 10 }))).toBe('too-few-waiting')
    await fresh.client.canner.update({ where: { groupId_id: { groupId, id: 'BW2' } }, data: { halfPints: 8 } })
    expect(await code(load('L02', ['J1'], '18:05'))).toBe('canner-too-small')

    const loaded = await must(load('L02', ['J1'], '18:05', { jars: 8 }))
    expect(loaded).toMatchObject({ state: 'coming-up', minutes: 10, jars: 8 })
    expect(await code(load('L03', ['J1'], '18:06'))).toBe('canner-busy')
    expect(await code(load('L02', ['J1'], '18:06', { cannerId: 'BW1' }))).toBe('wrong-state')
  })

  it('is taken over by another trained adult while it is in the canner, and its jars are traced to both', async () => {
    const relieve = (operatorId: string, at: string, loadId = 'L02') => as('Gil', relieveOperator, { dayId, loadId, operatorId, at })
    expect(await code(relieve('p4', '18:10'))).toBe('operator-unskilled')
    expect(await code(relieve('p8', '18:10'))).toBe('operator-too-young')
    expect(await code(relieve('p7', '18:10'))).toBe('minds-already')
    expect(await code(relieve('p1', '18:10', 'L03'))).toBe('not-in-canner')
    expect(await code(relieve('p1', '18:04'))).toBe('out-of-order')
    expect(await must(relieve('p1', '18:10'))).toMatchObject({ code: 'L02', operator: 'Ada' })
    expect(await code(relieve('p7', '18:09'))).toBe('out-of-order')
    expect(await must(relieve('p7', '18:12'))).toMatchObject({ operator: 'Gil' })
    const [jar] = await jarsOf('J1')
    const trace = await jarTrace(groupId, jar?.serial ?? '')
    expect(trace?.loads.map(({ operator }) => operator)).toEqual(['Gil, from 18:10 Ada, from 18:12 Gil'])
    const [row] = await loadRows(fresh.client as never, groupId, dayId, 'L02')
    expect(row).toMatchObject({
      operator: 'Gil',
      reliefs: [
        { from: 'Gil', to: 'Ada', at: 1090 },
        { from: 'Ada', to: 'Gil', at: 1092 },
      ],
    })
    await expect(fresh.client.operatorRelief.deleteMany({ where: { groupId } })).rejects.toThrow()
    await expect(fresh.client.operatorRelief.updateMany({ where: { groupId }, data: { at: 0 } })).rejects.toThrow()
  })

  it('has no clock before the boil, restarts the whole time when it is lost, and is not done early', async () => {
    expect(await code(tap(finishProcess, 'L02', '18:30'))).toBe('wrong-state')
    expect(await must(tap(reachedTemperature, 'L02', '18:18'))).toMatchObject({ state: 'processing', notBefore: '18:28' })
    expect(await code(tap(finishProcess, 'L02', '18:27'))).toBe('process-too-short')
    expect(await must(tap(lostTemperature, 'L02', '18:27'))).toMatchObject({ state: 'coming-up', restarts: 1, notBefore: null })
    expect(await code(tap(finishProcess, 'L02', '18:28'))).toBe('wrong-state')
    expect(await code(tap(reachedTemperature, 'L02', '18:18'))).toBe('out-of-order')
    expect(await must(tap(reachedTemperature, 'L02', '18:30'))).toMatchObject({ notBefore: '18:40' })
    expect(await code(tap(finishProcess, 'L02', '18:39'))).toBe('process-too-short')
    expect(await code(tap(finishProcess, 'L02', '18:40'))).toBe('done')
    expect(await code(tap(emptyCanner, 'L02', '18:39'))).toBe('out-of-order')
    expect(await must(tap(emptyCanner, 'L02', '18:46'))).toMatchObject({ state: 'done' })
    const row = await fresh.client.cannerLoad.findFirstOrThrow({ where: { id: 'L02' } })
    expect(row).toMatchObject({ restarts: 1, atTemperatureAt: 1110, temperatureLostAt: 1107, processedAt: 1120 })
  })

  it('cannot be called done early by anybody who reaches the database either', async () => {
    await expect(
      fresh.client.cannerLoad.update({ where: { groupId_id: { groupId, id: 'L02' } }, data: { processedAt: 1119 } }),
    ).rejects.toThrow()
  })

  it('gives a jar its lot once: the ninth goes with the next load and gets a lot of its own', async () => {
    const done = await must(load('L03', ['J1'], '18:50'))
    expect(done.lots).toHaveLength(1)
    const jars = await jarsOf('J1')
    expect(new Set(jars.map((jar) => jar.lotId)).size).toBe(2)
  })

  it('that fails sends its jars to a new load or the fridge, never to the shelf', async () => {
    await must(tap(reachedTemperature, 'L03', '19:00'))
    await must(as('Gil', failLoad, { dayId, loadId: 'L03', at: '19:05', way: 'again', why: 'gas ran out' }))
    const before = await fresh.client.jar.findFirstOrThrow({ where: { shortName: 'J1-09' } })
    expect(before.state).toBe('filled')
    expect(await code(as('Gil', loadCanner, { dayId, cannerId: 'BW2', batchIds: ['J1'], at: '21:06' }))).toBe('too-late-to-keep') // 2 h after 19:05
    const again = await must(as('Gil', loadCanner, { dayId, cannerId: 'BW2', batchIds: ['J1'], at: '19:10' }))
    expect(again).toMatchObject({ code: 'L11', jars: 1, lots: [] }) // the lot was given with the first load and stays
    const after = await fresh.client.jar.findFirstOrThrow({
      where: { shortName: 'J1-09' },
      include: { loads: { orderBy: { turn: 'asc' } } },
    })
    expect(after.lotId).toBe(before.lotId)
    expect(after.loads.map(({ loadId, turn }) => [loadId === 'L03', turn])).toEqual([
      [true, 1],
      [false, 2],
    ])

    await must(load('L01', ['D1'], '18:02'))
    expect(await code(as('Gil', failLoad, { dayId, loadId: 'L01', at: '18:20', way: 'again', why: 'boiled dry' }))).toBe(
      'raw-pack-not-again',
    )
    await must(as('Gil', failLoad, { dayId, loadId: 'L01', at: '18:20', way: 'fridge', why: 'boiled dry' }))
    expect(await fresh.client.jar.count({ where: { batchId: 'D1', state: 'unsealed', whereNow: 'fridge' } })).toBe(9)
  })

  it('is looked up for the canner that is really used: a blocked dial gauge and a canner out of use are refused', async () => {
    await fresh.client.canner.createMany({
      data: [
        { groupId, id: 'PC1', kitchenId: S1.kitchenId, label: 'PC1', method: 'pressure', gauge: 'dial', pints: 9, halfPints: 9 },
        { groupId, id: 'BW3', kitchenId: S1.kitchenId, label: 'BW3', method: 'boiling-water', halfPints: 12, outOfUse: 'no rack' },
      ],
    })
    await must(start('J2', 'K1', '19:00'))
    await must(fill('J2', 8, '19:20'))
    await fresh.client.person.update({ where: { groupId_id: { groupId, id: 'p7' } }, data: { skills: { push: 'pressure-operator' } } })
    expect(await code(load('L07', ['J2'], '19:25', { cannerId: 'PC1' }))).toBe('method-not-published') // no row for jam under pressure
    expect(await code(load('L07', ['J2'], '19:25', { cannerId: 'BW3' }))).toBe('canner-out-of-use')
    await fresh.client.preparation.update({
      where: { groupId_id: { groupId, id: 'jam' } },
      data: { processRowKey: 'applesauce--boiling-water/boiling-water/hot/pint/0-1000-ft' },
    })
    expect(await code(load('L07', ['J2'], '19:25', { cannerId: 'PC1' }))).toBe('gauge-untested')
    await fresh.client.preparation.update({
      where: { groupId_id: { groupId, id: 'jam' } },
      data: { processRowKey: 'jam-jelly-added-pectin--boiling-water/boiling-water/hot/half-pint/0-1000-ft' },
    })
    expect(await code(as('Cleo', setJarsAside, { dayId, batchId: 'J2', at: '19:30', way: 'fridge' }))).toBe('done')
    expect(await code(as('Cleo', setJarsAside, { dayId, batchId: 'J2', at: '19:30', way: 'fridge' }))).toBe('nothing-to-load')
  })
})

describe('the seal check', () => {
  it('calls no lid sealed before 12 hours of cooling, but notes one that is up', async () => {
    const check = (at: string, on: string, more: object = {}) => as('Cleo', checkSeals, { dayId, loadId: 'L02', on, at, ...more })
    const [first, second] = await jarsOf('J1')
    expect(await code(check('06:45', '2027-08-27'))).toBe('seal-too-early')
    expect(await fields(check('06:45', '2028-08-27'))).toHaveProperty('on')
    expect(
      await code(check('20:00', '2027-08-26', { jarIds: [first?.id], unsealed: [first?.id], way: 'again', lidLotId: S1.lidLotId })),
    ).toBe('done')
    expect(await fresh.client.jar.findFirstOrThrow({ where: { id: first?.id ?? '' } })).toMatchObject({
      state: 'filled',
      seal: 'unsealed',
      lidsUsed: 2,
    })
    expect(await code(check('06:46', '2027-08-27', { unsealed: [second?.id] }))).toBe('done')
    expect(await fresh.client.jar.count({ where: { batchId: 'J1', state: 'sealed' } })).toBe(6)
    expect(await code(check('07:00', '2027-08-27'))).toBe('nothing-waits')
    expect(await code(check('07:00', '2027-08-27', { unsealed: ['another'] }))).toBe('not-found')
  })

  it('sends a jar with a new lid through a whole new load, in its own lot', async () => {
    const { id } = await fresh.client.cannerLoad.findFirstOrThrow({ where: { code: 'L11' } })
    await must(tap(reachedTemperature, id, '19:20'))
    await must(tap(finishProcess, id, '19:30'))
    await must(tap(emptyCanner, id, '19:40'))
    const again = await must(as('Gil', loadCanner, { dayId, cannerId: 'BW2', batchIds: ['J1'], at: '20:10' }))
    expect(again).toMatchObject({ code: 'L12', jars: 1, lots: [] })
  })
})

describe('the end of the evening', () => {
  it('waits until every canner is empty and every filled jar is settled', async () => {
    const rest = (giveUpTheRest: string) => as('Ada', restDay, { dayId, at: '22:15', giveUpTheRest })
    expect(await code(rest('yes'))).toBe('still-open')
    const loadId = (await fresh.client.cannerLoad.findFirstOrThrow({ where: { code: 'L12' } })).id
    await must(tap(reachedTemperature, loadId, '20:20'))
    await must(tap(finishProcess, loadId, '20:30'))
    await must(tap(emptyCanner, loadId, '20:40'))
    expect(await code(rest('no'))).toBe('still-open')
    expect(await must(rest('yes'))).toMatchObject({ state: 'resting', batchesGivenUp: 5 }) // the sixth was given up before
    expect(await code(start('D4', 'K3', '20:00'))).toBe('day-not-open')
  })

  it('leaves a jar that breaks on the rack to be noted', async () => {
    const jar = await fresh.client.jar.findFirstOrThrow({ where: { batchId: 'J1', state: 'sealed' } })
    const broken = (more: object) =>
      as('Gil', noteBrokenJar, { dayId, jarId: jar.id, where: 'on the rack', at: '09:00', on: '2027-08-27', ...more })
    expect(await code(broken({ at: '09:00', on: '2027-08-25' }))).toBe('bad-input')
    expect(await code(broken({}))).toBe('done')
    expect(await code(broken({}))).toBe('wrong-state')
    expect(await code(broken({ jarId: 'none' }))).toBe('not-found')
  })
})

describe('who may', () => {
  it('is answered by the table: a member runs no load, a visitor nothing, another group finds nothing', async () => {
    const input = { dayId, loadId: 'L04', at: '19:00' }
    expect(await code(as('Dov', reachedTemperature, input))).toBe('not-allowed')
    expect(await code(as('Cleo', reachedTemperature, input))).toBe('not-allowed')
    expect(await code(as('Vera', noteBrokenJar, { dayId, jarId: 'x', at: '19:00', where: 'y' }))).toBe('not-allowed')
    const stranger = { ...actorNamed('Ada'), groupId: 'another' }
    const far = await runCommand(reachedTemperature, { actor: stranger, idempotencyKey: randomUUID(), input })
    expect(far.ok ? 'done' : far.problem.code).toBe('not-found')
  })

  it('takes no field it does not know, and no time that is none', async () => {
    expect(await code(as('Gil', reachedTemperature, { dayId, loadId: 'L04', at: '25:00' }))).toBe('bad-input')
    expect(await code(as('Gil', reachedTemperature, { dayId, loadId: { not: '' }, at: '19:00' }))).toBe('bad-input')
    expect(await code(as('Gil', reachedTemperature, { dayId, loadId: 'L04', at: '19:00', state: 'done' }))).toBe('bad-input')
    expect(await code(as('Cleo', fillBatch, { dayId, batchId: 'D2', jars: 2.5, at: '19:00' }))).toBe('bad-input')
    expect(await code(as('Cleo', fillBatch, { dayId, batchId: 'D2', jars: 8, at: '19:00', note: 'x'.repeat(1_000_000) }))).toBe('bad-input')
  })
})

describe('an entry without a time', () => {
  it('is now on the kitchen’s clock, rounded so that no process comes out shorter than it was', async () => {
    await fresh.client.day.update({ where: { groupId_id: { groupId, id: dayId } }, data: { state: 'running' } })
    await fresh.client.group.update({ where: { id: groupId }, data: { isDemo: false } })
    await fresh.client.kettleBatch.create({
      data: { groupId, id: 'J7', dayId, preparationId: 'jam', code: 'J7', plannedStart: 1300, plannedFilled: 1310, plannedJars: 8 },
    })
    const run = (name: string, command: AnyCommand, input: object, clock: string) =>
      runCommand(command, {
        actor: actorNamed(name),
        idempotencyKey: randomUUID(),
        input: { dayId, ...input },
        now: new Date(`2027-08-26T${clock}-04:00`),
      })
    await must(run('Cleo', startBatch, { batchId: 'J7', kettleId: 'K2', lotIds: lots.jam }, '21:20:30'))
    await must(run('Cleo', fillBatch, { batchId: 'J7', jars: 8 }, '21:40:30'))
    const loaded = await must(run('Gil', loadCanner, { cannerId: 'BW2', batchIds: ['J7'], operatorId: 'p7' }, '21:41:30'))
    const loadId = loaded.loadId
    expect(await must(run('Gil', reachedTemperature, { loadId }, '21:50:01'))).toMatchObject({ notBefore: '22:01' }) // 21:51 and 10 min
    expect(await code(run('Gil', finishProcess, { loadId }, '22:00:59'))).toBe('process-too-short')
    expect(await must(run('Gil', lostTemperature, { loadId }, '22:00:59'))).toMatchObject({ restarts: 1 })
    expect(await must(run('Gil', reachedTemperature, { loadId }, '22:04:00'))).toMatchObject({ notBefore: '22:14' })
    expect(await code(run('Gil', finishProcess, { loadId, at: '22:20' }, '22:14:00'))).toBe('not-yet')
    expect(await code(run('Gil', finishProcess, { loadId }, '22:14:00'))).toBe('done')
    expect(await code(run('Gil', emptyCanner, { loadId }, '22:22:00'))).toBe('done') // later than closing time: what was begun is ended
  })

  it('follows in the same minute what was rounded up to its end, and nothing that was typed further ahead', async () => {
    const at = (name: string, command: AnyCommand, input: object, clock: string) =>
      runCommand(command, {
        actor: actorNamed(name),
        idempotencyKey: randomUUID(),
        input: { dayId, ...input },
        now: new Date(`2027-08-26T${clock}-04:00`),
      })
    await fresh.client.kettleBatch.create({
      data: { groupId, id: 'J8', dayId, preparationId: 'jam', code: 'J8', plannedStart: 1300, plannedFilled: 1310, plannedJars: 8 },
    })
    await must(at('Cleo', startBatch, { batchId: 'J8', kettleId: 'K2', lotIds: lots.jam }, '21:00:00'))
    await must(at('Cleo', fillBatch, { batchId: 'J8', jars: 8 }, '21:20:00'))
    const into = { cannerId: 'BW1', batchIds: ['J8'], operatorId: 'p7' }
    const first = await must(at('Gil', loadCanner, into, '21:25:00'))
    await must(at('Gil', failLoad, { loadId: first.loadId, way: 'again', why: 'gas ran out' }, '21:30:10')) // noted as 21:31
    const again = await must(at('Gil', loadCanner, into, '21:30:50'))
    expect(await fresh.client.cannerLoad.findFirstOrThrow({ where: { id: String(again.loadId) } })).toMatchObject({ loadedAt: 1291 })
    await must(at('Gil', failLoad, { loadId: again.loadId, at: '21:35', way: 'again', why: 'typed ahead' }, '21:33:00'))
    expect(await code(at('Gil', loadCanner, into, '21:33:30'))).toBe('out-of-order')
  })
})
