import { beforeAll, describe, expect, it } from 'vitest'
import { type JarTrace, groupOfJar, jarTrace } from '@/lib/queries/jar-trace'
import { labelJars } from '@/lib/queries/label-jars'
import { publicJar } from '@/lib/queries/public-jar'
import { sealCheck } from '@/lib/queries/seal-check'
import { sharesPage } from '@/lib/queries/shares'
import { awardJars } from '@/lib/services/share/award-jars'
import { closeDay } from '@/lib/services/share/close-day'
import { closeOut } from '@/lib/queries/close-out'
import { handOver } from '@/lib/services/share/hand-over'
import { sayTrace } from '@/shared/wording/say-trace'
import { freshDatabase } from '../../support/fresh-database'
import { runS1Evening } from '../../support/run-s1-evening'
import { as, must, S1, seedS1Evening } from '../../support/s1-floor'

const fresh = freshDatabase()
const { groupId, dayId } = S1
const serialOf = async (shortName: string) => (await fresh.client.jar.findFirstOrThrow({ where: { shortName } })).serial
let jar: JarTrace

beforeAll(async () => {
  await seedS1Evening(fresh.client)
  const task = (kind: string, batchId: string | null, ...peopleIds: string[]) => ({ kind, batchId, peopleIds })
  const plan = {
    batches: [
      { id: 'pickles/3', code: 'D3' },
      { id: 'jam/1', code: 'J1' },
    ],
    loads: [{ code: 'L06', batchParts: [{ batchId: 'pickles/3' }] }],
    tasks: [task('fill', 'pickles/3', 'p7', 'p4'), task('prep', 'pickles/3', 'p4'), task('cook', 'jam/1', 'p3'), task('brief', null, 'p1')],
  }
  await fresh.client.plan.create({ data: { groupId, id: 'plan', dayId, number: 1, problem: {}, plan } })
  await runS1Evening(fresh.client)
  await must(as('Ada', awardJars, { dayId }))
  await must(as('Cleo', handOver, { dayId, householdId: 'Elmsway' }))
  jar = (await jarTrace(groupId, await serialOf('D3-04'))) as JarTrace
})

describe('a trace', () => {
  it('leads from the jar to its batch, its load with every time, and the printed row it met', () => {
    expect(jar).toMatchObject({
      shortName: 'D3-04',
      state: 'shared-out',
      household: 'Elmsway',
      whereNow: 'Elmsway',
      lidLot: 'LID-27',
      lidsBoughtOn: '2027-08-02',
      date: '2027-08-26',
      kitchen: 'Alder Lane Hall',
      elevationFeet: 650,
      seal: 'sealed',
      batch: { code: 'D3', kettle: 'K3', startedAt: 19 * 60 + 14, filledAt: 19 * 60 + 42 },
    })
    expect(jar.loads).toEqual([
      expect.objectContaining({
        code: 'L06',
        state: 'done',
        canner: 'BW1',
        method: 'boiling-water',
        gauge: null,
        operator: 'Gil',
        loadedAt: 1184,
        atTemperatureAt: 1206,
        processedAt: 1216,
        emptiedAt: 1226,
        restarts: 0,
        processMinutes: 10,
        processPsi: null,
        processRowKey: 'dill-pickles-fresh-pack--boiling-water/boiling-water/raw/pint/0-1000-ft',
        processEdition: '1997, reproducing USDA AIB No. 539',
      }),
    ])
    expect(jar.loads[0]?.processSource).toContain('Quick fresh-pack dill pickles')
  })

  it('leads to every ingredient lot with its source, and to who was planned for the batch', () => {
    expect(jar.ingredients.map(({ item, from }) => `${item} from ${from}`)).toEqual([
      'cucumbers from Alderby',
      'cucumbers from Fennick',
      'mustard seed from grocer on Mill Street',
      'pickling cucumbers from grocer on Mill Street',
      'vinegar 5% from grocer on Mill Street',
    ])
    expect(jar.allergens).toEqual(['mustard'])
    expect(jar.people).toEqual([
      { name: 'Dov', work: ['fill', 'prep'] },
      { name: 'Gil', work: ['fill'] },
    ])
  })

  it('leads aside to all eight jars of the lot and who holds them', () => {
    expect(jar.sisters).toHaveLength(8)
    expect(jar.sisters[0]).toMatchObject({ shortName: 'D3-01', state: 'unsealed', household: null })
    expect(jar.sisters.filter(({ household }) => household === 'Elmsway')).toHaveLength(5)
  })

  it('finds nothing in another group, and the group of a jar by its serial', async () => {
    expect(await jarTrace('another', jar.serial)).toBeNull()
    expect(await groupOfJar(jar.serial)).toBe(groupId)
    expect(await groupOfJar('00000000000000')).toBeNull()
  })

  it('is said in plain lines with every link in them', () => {
    const text = sayTrace(jar).join('\n')
    for (const part of [
      'D3-04',
      'Elmsway',
      'LID-27',
      'kettle K3',
      'CU1',
      'Canner load L06',
      'operator Gil',
      '20:06',
      'row dill-pickles',
      'Sister jars of the lot: 7',
    ])
      expect(text).toContain(part)
  })
})

describe('the public page of a jar', () => {
  it('says what is in it and whom to ask, and names no person and no household', async () => {
    const found = await publicJar(jar.serial)
    expect(found).toMatchObject({
      product: 'Dill pickles',
      allergens: ['mustard'],
      cannedOn: '2027-08-26',
      group: 'Fern Hollow',
      askLine: 'Alder Lane Hall, Thursdays',
    })
    expect(JSON.stringify(found)).not.toMatch(/Elmsway|Gil|Ada|Cleo|Alderby/)
    expect(await publicJar('00000000000000')).toBeNull()
  })
})

describe('labels', () => {
  it('are made for sealed jars alone, with the allergen, the lot and what the jar had', async () => {
    expect(await labelJars(groupId, dayId)).toHaveLength(74)
    const batch = await labelJars(groupId, dayId, 'D3')
    expect(batch.map(({ jarLabel }) => jarLabel)).toEqual(['D3-02', 'D3-03', 'D3-04', 'D3-05', 'D3-06', 'D3-07', 'D3-08'])
    expect(batch[0]).toMatchObject({
      pattern: 'hatch',
      allergens: ['mustard'],
      process: 'Boiling water, 10 min, 650 ft (198 m)',
      size: 'pint',
    })
  })
})

describe('the seal check and the share-out', () => {
  it('show every jar once, by the load it came out of', async () => {
    const loads = await sealCheck(groupId, dayId)
    expect(loads.map(({ code, jars }) => [code, jars.length])).toEqual([
      ['L01', 8],
      ['L02', 8],
      ['L03', 8],
      ['L04', 7],
      ['L05', 7],
      ['L06', 8],
      ['L07', 8],
      ['L08', 7],
      ['L09', 8],
      ['L10', 8],
    ])
  })

  it('show what was awarded, whose it is and what is still in the store', async () => {
    const page = await sharesPage(groupId, dayId, 'in-proportion')
    const [pickles, jam] = page.products
    expect(pickles).toMatchObject({ sealed: 28, asked: 32, given: 28, left: 0, exactSum: '28.00' })
    expect(jam).toMatchObject({ sealed: 46, asked: 48, given: 46, left: 0, exactSum: '46.00' })
    expect(pickles?.cells.Dunmarrow).toMatchObject({ jars: 0, allergens: ['mustard'] })
    expect(jam?.cells.Alderby).toMatchObject({ asked: 10, jars: 9, quota: '9.58' })
    expect(page.households.find(({ id }) => id === 'Elmsway')).toMatchObject({ handedOver: true, inStore: 0 })
    expect(page.households.find(({ id }) => id === 'Fennick')).toMatchObject({ handedOver: false, inStore: 13 })
  })

  it('end in a balance that was kept as it was closed', async () => {
    const counted = {
      'bought-half-pint': 52,
      'bought-pint': 38,
      'returned-half-pint': 5,
      'returned-pint': 8,
      lidsAtStart: 96,
      lidsLeft: 18,
      lidsSpoiled: 0,
      bandsAtStart: 95,
      bandsReturned: 95,
    }
    await must(as('Ada', closeDay, { dayId, ...counted, note: 'One lid was bent and thrown out.' }))
    const { closed, sizes, stock } = await closeOut(groupId, dayId)
    expect(sizes).toEqual(['half-pint', 'pint'])
    expect(stock).toMatchObject({ lids: 96, bands: 95, bought: { 'half-pint': 52, pint: 38 } })
    expect(closed).toMatchObject({ by: 'Ada', note: 'One lid was bent and thrown out.' })
    expect(closed?.differences).toEqual([expect.stringContaining('1 lid missing')])
  })
})
