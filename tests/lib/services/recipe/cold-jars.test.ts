import { beforeAll, describe, expect, it } from 'vitest'
import { drawLabelSheet } from '@/lib/print/label-sheet'
import { closeOut } from '@/lib/queries/close-out'
import { jarTrace } from '@/lib/queries/jar-trace'
import { labelBatches, labelJars } from '@/lib/queries/label-jars'
import { publicJar } from '@/lib/queries/public-jar'
import { sealCheck } from '@/lib/queries/seal-check'
import { sharesPage } from '@/lib/queries/shares'
import { chooseRecipe } from '@/lib/services/day/choose-recipe'
import { claimJars } from '@/lib/services/day/claim-jars'
import { createDay } from '@/lib/services/day/create-day'
import { openClaims } from '@/lib/services/day/open-claims'
import { planDay } from '@/lib/services/day/plan-day'
import { startDay } from '@/lib/services/day/start-day'
import { fillBatch } from '@/lib/services/floor/fill-batch'
import { loadCanner } from '@/lib/services/floor/load-canner'
import { receiveIngredients } from '@/lib/services/floor/receive-ingredients'
import { restDay } from '@/lib/services/floor/rest-day'
import { startBatch } from '@/lib/services/floor/start-batch'
import { addOwnRecipe } from '@/lib/services/recipe/add-own-recipe'
import { awardJars } from '@/lib/services/share/award-jars'
import { giveLeftJars } from '@/lib/services/share/give-left-jars'
import { handOver } from '@/lib/services/share/hand-over'
import { releaseJars } from '@/lib/services/share/release-jars'
import { setPickUp } from '@/lib/services/share/set-pick-up'
import { balanceDay } from '@/shared/share/count-day'
import { readLotNumber } from '@/shared/trace/lot-number'
import { LABEL_SHEETS, labelSheet } from '@/shared/trace/label-sheets'
import { SAY_COLD } from '@/shared/wording/say-cold'
import { sayTrace } from '@/shared/wording/say-trace'
import { freshDatabase } from '@/tests/support/fresh-database'
import { ada, change, EVENING, saved, seedFernHollow } from '@/tests/support/open-evening'

const fresh = freshDatabase()
const groupId = 'fern-hollow'
let dayId: string
let preparationId: string
let batchId: string

const COLD_LOT = expect.stringMatching(/^FH-270826-M1-C00-/)

const SAUCE = {
  ...{ title: 'Mustard plums of the lane', comesFrom: 'A shoebox', pattern: 'dill', pack: 'hot', prepBefore: 'cook', kettleUse: 'jam' },
  ...{ item1: 'plums', amount1: '4', unit1: 'lb', acidFood: 'yes', scaling: 'whole-batches-only', allergens: 'mustard' },
  ...{ usualJar: 'pint', 'low-pint': '3', 'typical-pint': '4', 'high-pint': '5', prepMinutes: '20', kettleMinutes: '20', fillMinutes: '5' },
}

/** An evening that makes nothing but a recipe without a process, up to its filled jars. */
beforeAll(async () => {
  await seedFernHollow(fresh.client)
  const organiser = { ...ada, personId: 'p1' }
  const lids = { groupId, id: 'lids', kind: 'lid', lotCode: 'LID-27', count: 24, boughtOn: new Date('2027-08-01T00:00:00Z') }
  await fresh.client.supplyLot.create({ data: lids })
  const { recipeId } = await saved(addOwnRecipe, SAUCE)
  dayId = String((await saved(createDay, EVENING)).dayId)
  const put = { dayId, recipeId, jarSize: 'pint', method: 'fridge-or-freezer', offered: 8 }
  preparationId = String((await saved(chooseRecipe, put)).preparationId)
  await saved(openClaims, { dayId })
  await saved(claimJars, { preparationId, householdId: 'alderby', jars: 3 })
  await saved(claimJars, { preparationId, householdId: 'brightwater', jars: 1 })
  expect(await saved(planDay, { dayId })).toMatchObject({ batches: 1, loads: 0 })
  await saved(startDay, { dayId })
  const plums = { dayId, item: 'plums', quantity: 4, unit: 'lb', source: 'The orchard' }
  const { lotId } = await saved(receiveIngredients, plums)
  const batch = await fresh.client.kettleBatch.findFirstOrThrow({ where: { dayId } })
  batchId = batch.id
  await saved(startBatch, { dayId, batchId, kettleId: batch.kettleId, lotIds: [lotId], at: '18:00' }, organiser)
  await saved(fillBatch, { dayId, batchId, jars: 4, lidLotId: 'lids', at: '18:45' }, organiser)
})

describe('jars without a process', () => {
  it('keep an allergen off a household before it asks', async () => {
    const answer = await change(claimJars, { preparationId, householdId: 'dunmarrow', jars: 1 })
    expect(answer).toMatchObject({ ok: false })
  })

  it('are cold as soon as they are filled, and no canner takes them', async () => {
    const jars = await fresh.client.jar.findMany({ where: { dayId } })
    expect(new Set(jars.map(({ state, seal, whereNow }) => `${state} ${seal} ${whereNow}`))).toEqual(
      new Set(['unsealed null fridge or freezer']),
    )
    const load = { dayId, batchIds: [batchId], cannerId: 'BW1', operatorId: 'p1', at: '18:50' }
    expect(await change(loadCanner, load)).toMatchObject({ ok: false, problem: { code: 'keeps-cold' } })
    expect(await fresh.client.jarLoad.count({ where: { groupId } })).toBe(0)
  })

  it('are kept out of every canner by the database itself', async () => {
    await fresh.client.cannerLoad.create({
      data: { groupId, id: 'wrong', dayId, code: 'L90', cannerId: 'BW1', plannedLoadAt: 1100, plannedEmptyAt: 1140 },
    })
    const jar = await fresh.client.jar.findFirstOrThrow({ where: { dayId } })
    await expect(fresh.client.jarLoad.create({ data: { groupId, jarId: jar.id, loadId: 'wrong' } })).rejects.toThrow(/into no canner|check/)
    await fresh.client.cannerLoad.delete({ where: { groupId_id: { groupId, id: 'wrong' } } })
  })

  it('wait for no seal check, and the evening ends', async () => {
    expect(await sealCheck(groupId, dayId)).toEqual([])
    expect(await saved(restDay, { dayId, at: '20:00' })).toMatchObject({ state: 'resting' })
  })

  it('are shared out by the day’s rule and handed over as what they are', async () => {
    await saved(awardJars, { dayId })
    const page = await sharesPage(groupId, dayId, 'in-proportion')
    expect(page.products).toMatchObject([{ title: 'Mustard plums of the lane', isCold: true, sealed: 4, given: 4 }])
    await saved(handOver, { dayId, householdId: 'alderby' })
    const own = await fresh.client.jar.findMany({ where: { dayId, householdId: 'alderby' } })
    expect(own.map(({ state, whereNow }) => [state, whereNow])).toEqual(Array(3).fill(['unsealed', 'Alderby']))
    expect(await change(handOver, { dayId, householdId: 'alderby' })).toMatchObject({ problem: { code: 'nothing-to-hand-over' } })
  })

  it('are offered to others where nobody fetches them, like any jar that is left', async () => {
    await saved(setPickUp, { dayId, place: 'The hall', until: '2027-09-12', contact: 'Ada' })
    expect(await saved(releaseJars, { dayId, householdId: 'brightwater' })).toMatchObject({ jars: 1 })
    expect((await sharesPage(groupId, dayId, 'in-proportion')).products).toMatchObject([{ given: 3, left: 1 }])
    await saved(giveLeftJars, { dayId, preparationId, householdId: 'brightwater', jars: 1 })
    expect((await sharesPage(groupId, dayId, 'in-proportion')).products).toMatchObject([{ given: 4, left: 0 }])
  })

  it('count as refrigerated, every one', async () => {
    const { tallies } = await closeOut(groupId, dayId)
    const nothing = { lidsSpoiled: 0, bandsReturned: 0, bandsDiscarded: 0, bandsOnJars: 0, bandsAtStart: 0 }
    const pints = { pint: { brought: 4, bought: 0, returned: 0, brokenEmpty: 0 } }
    const balance = balanceDay(tallies, pints, { lidsAtStart: 24, lidsLeft: 20, ...nothing })
    expect([balance.differences, balance.unsettled]).toEqual([[], 0])
    const unsealed = balance.lines.find(({ name }) => name === 'unsealed-jars')
    expect(unsealed?.wentOut).toContainEqual(['refrigerated', 4])
  })

  it('have one lot, of their batch and of no load, from the moment they are filled', async () => {
    const lots = await fresh.client.lot.findMany({ where: { groupId } })
    expect(lots).toMatchObject([{ batchId, loadId: null, lotNumber: expect.stringMatching(/^FH-270826-M1-C00-\d\d$/) }])
    const jars = await fresh.client.jar.findMany({ where: { dayId } })
    expect(new Set(jars.map(({ lotId }) => lotId))).toEqual(new Set([lots[0]?.id]))
    expect(readLotNumber(String(lots[0]?.lotNumber))).toMatchObject({ ok: true, value: { batch: 'M1', load: 0 } })
  })

  it('keep that lot: the database takes no second one, none with a load, and no change', async () => {
    const lot = await fresh.client.lot.findFirstOrThrow({ where: { groupId } })
    const another = { groupId, id: 'another', lotNumber: 'FH-270826-M1-C01-00', batchId }
    await expect(fresh.client.lot.create({ data: { ...another, loadId: null } })).rejects.toThrow(/once|unique/i)
    await fresh.client.cannerLoad.create({
      data: { groupId, id: 'wrong', dayId, code: 'L90', cannerId: 'BW1', plannedLoadAt: 1100, plannedEmptyAt: 1140 },
    })
    await expect(fresh.client.lot.create({ data: { ...another, loadId: 'wrong' } })).rejects.toThrow(/exactly where|check/)
    await fresh.client.cannerLoad.delete({ where: { groupId_id: { groupId, id: 'wrong' } } })
    const where = { groupId_id: { groupId, id: lot.id } }
    await expect(fresh.client.lot.update({ where, data: { lotNumber: another.lotNumber } })).rejects.toThrow(/permission denied/)
  })

  it('say so on their labels, with their lot, no date and no sunk lid', async () => {
    expect(await labelBatches(groupId, dayId)).toEqual([{ code: 'M1', title: 'Mustard plums of the lane', jars: 4 }])
    const labels = await labelJars(groupId, dayId)
    expect(labels).toHaveLength(4)
    expect(labels[0]).toMatchObject({ isCold: true, process: '', allergens: ['mustard'], lotNumber: COLD_LOT, produce: 'dill' })
    // A name this long is refused on the smallest labels rather than left short.
    for (const { id } of LABEL_SHEETS.filter(({ labelWidth }) => labelWidth > 70)) {
      const sheet = labelSheet(id)
      if (!sheet) throw new Error('no such sheet')
      const drawn = await drawLabelSheet(labels, { sheet, title: 'Labels', printedAt: new Date('2027-08-27') })
      expect([id, drawn.ok]).toEqual([id, true])
    }
  })

  it('say so to whoever holds one, and are traced to what went in', async () => {
    const { serial } = await fresh.client.jar.findFirstOrThrow({ where: { dayId } })
    expect(await publicJar(serial)).toMatchObject({
      isCold: true,
      state: 'unsealed',
      product: 'Mustard plums of the lane',
      lotNumber: COLD_LOT,
    })
    const trace = await jarTrace(groupId, serial)
    expect(trace).toMatchObject({
      isCold: true,
      product: 'Mustard plums of the lane',
      allergens: ['mustard'],
      lotNumber: COLD_LOT,
      loads: [],
      ingredients: [{ item: 'plums' }],
    })
    expect(trace?.sisters.map(({ shortName, household }) => `${shortName} ${household}`)).toEqual([
      ...['M1-01 Alderby', 'M1-02 Alderby', 'M1-03 Alderby', 'M1-04 Brightwater'],
    ])
    expect(trace && sayTrace(trace).join('\n')).toMatch(
      /lot FH-270826-M1-C00-\d\d, lid lot LID-27.*from The orchard.*Sister jars of the lot: 3/s,
    )
    expect(SAY_COLD).toContain('not shelf-stable')
  })
})
