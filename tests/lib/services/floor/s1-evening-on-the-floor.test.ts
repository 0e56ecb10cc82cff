import { beforeAll, describe, expect, it } from 'vitest'
import { freshDatabase } from '../../../support/fresh-database'
import { runS1Evening } from '../../../support/run-s1-evening'
import { seedS1Evening } from '../../../support/s1-floor'

const fresh = freshDatabase()

beforeAll(async () => {
  await seedS1Evening(fresh.client)
  await runS1Evening(fresh.client)
})

const count = (where: object) => fresh.client.jar.count({ where })
const jam = { batch: { preparationId: 'jam' } }
const pickles = { batch: { preparationId: 'pickles' } }

describe('the Plum and Pickle Evening, entered as it was written down', () => {
  it('fills 47 half-pints of jam and 30 pints of pickles', async () => {
    expect([await count(jam), await count(pickles)]).toEqual([47, 30])
  })

  it('seals 46 and 28; one of each is in the fridge, one pint broke', async () => {
    expect([await count({ ...jam, state: 'sealed' }), await count({ ...pickles, state: 'sealed' })]).toEqual([46, 28])
    expect([await count({ ...jam, state: 'unsealed' }), await count({ ...pickles, state: 'unsealed' })]).toEqual([1, 1])
    expect(await fresh.client.jar.findMany({ where: { state: 'broken' }, select: { shortName: true, whereNow: true } })).toEqual([
      { shortName: 'D1-01', whereNow: 'broke: in BW1' },
    ])
  })

  it('runs every load its 10 minutes from the full boil, jam by the published longer time for jars that were not boiled', async () => {
    const loads = await fresh.client.cannerLoad.findMany({ orderBy: { code: 'asc' } })
    expect(loads).toHaveLength(10)
    for (const load of loads) {
      expect(load).toMatchObject({ state: 'done', processMinutes: 10, restarts: 0 })
      expect((load.processedAt ?? 0) - (load.atTemperatureAt ?? 0)).toBe(10)
    }
    expect(loads[0]).toMatchObject({ loadedAt: 1082, atTemperatureAt: 1106, processedAt: 1116 })
    expect(loads[9]).toMatchObject({ cannerId: 'BW1', emptiedAt: 21 * 60 + 45 }) // moved to the canner that was free first
    expect(loads[1]?.processSource).toContain('10 min for jars that were not boiled')
  })

  it('gives each batch and load one lot, and each jar a serial and a lot of its own', async () => {
    const lots = await fresh.client.lot.findMany({ orderBy: { lotNumber: 'asc' } })
    expect(lots).toHaveLength(10)
    expect(lots.map((lot) => lot.lotNumber.slice(0, -3))).toContain('FH-270826-D3-C06')
    const jars = await fresh.client.jar.findMany()
    expect(new Set(jars.map((jar) => jar.serial)).size).toBe(77)
    expect(jars.every((jar) => jar.lotId !== null)).toBe(true)
  })

  it('uses 77 lids of the 96 bought', async () => {
    const { _sum } = await fresh.client.jar.aggregate({ _sum: { lidsUsed: true } })
    expect(_sum.lidsUsed).toBe(77)
  })

  it('leaves a history whose entries name every step', async () => {
    const entries = await fresh.client.history.groupBy({ by: ['command'], _count: true })
    expect(Object.fromEntries(entries.map(({ command, _count }) => [command, _count]))).toMatchObject({
      'receive-ingredients': 9,
      'start-batch': 10,
      'fill-batch': 10,
      'load-canner': 10,
      'reached-temperature': 10,
      'finish-process': 10,
      'empty-canner': 10,
      'check-seals': 1,
      'note-broken-jar': 1,
      'note-incident': 2,
      'rest-day': 1,
    })
  })
})
