import { beforeAll, describe, expect, it } from 'vitest'
import { addPledge } from '@/lib/services/day/add-pledge'
import { cancelDay } from '@/lib/services/day/cancel-day'
import { changeJarTreatment } from '@/lib/services/day/change-jar-treatment'
import { changeOffer } from '@/lib/services/day/change-offer'
import { chooseRecipe } from '@/lib/services/day/choose-recipe'
import { claimJars } from '@/lib/services/day/claim-jars'
import { createDay } from '@/lib/services/day/create-day'
import { dropRecipe } from '@/lib/services/day/drop-recipe'
import { editDay } from '@/lib/services/day/edit-day'
import { openClaims } from '@/lib/services/day/open-claims'
import { planDay } from '@/lib/services/day/plan-day'
import { removePledge } from '@/lib/services/day/remove-pledge'
import { startDay } from '@/lib/services/day/start-day'
import { freshDatabase } from '@/tests/support/fresh-database'
import { actorOf, change, claimAll, EVENING, openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'

const fresh = freshDatabase()
const draft = async () => String((await saved(createDay, EVENING)).dayId)
const jam = (dayId: string) => ({ dayId, recipeId: 'plum-jam', jarSize: 'half-pint', method: 'boiling-water', offered: '48' })

beforeAll(() => seedFernHollow(fresh.client))

describe('a new day', () => {
  it('keeps what was typed, its clock times as kitchen minutes', async () => {
    const dayId = await draft()
    const day = await fresh.client.day.findFirstOrThrow({ where: { id: dayId } })
    expect(day).toMatchObject({ state: 'draft', accessAt: 1020, firstLoadAt: 1080, cannersEmptyBy: 1295, hardEnd: 1335, sparePercent: 10 })
    expect(day.claimsCloseAt?.toISOString()).toBe('2027-08-25T00:00:00.000Z') // 20:00 in New York, summer time
  })

  it('that does not fit the kitchen’s hours, or its own order, is told everything at once', async () => {
    const wrong = { ...EVENING, accessAt: '16:00', firstLoadAt: '17:20', cannersEmptyBy: '21:50', hardEnd: '22:30' }
    const refused = await change(createDay, wrong)
    expect(refused).toMatchObject({
      ok: false,
      problem: {
        status: 422,
        fields: {
          accessAt: [expect.stringContaining('opens 17:00')],
          firstLoadAt: [expect.stringContaining('17:30')],
          hardEnd: [expect.stringContaining('closes 22:15')],
        },
      },
    })
  })

  it.each([
    ['a date that does not exist', { date: '2027-02-30' }, 'date'],
    ['a date too far ahead', { date: '2031-08-26', claimsCloseAt: undefined }, 'date'],
    ['a clock time that is none', { firstLoadAt: '25:00' }, 'firstLoadAt'],
    ['claims that close after the day began', { claimsCloseAt: '2027-08-26T18:00' }, 'claimsCloseAt'],
    ['a name of a thousand letters', { name: 'x'.repeat(1000) }, 'name'],
    ['a field that is not asked for', { state: 'closed' }, 'state'],
  ])('with %s is refused at that field', async (_, wrong, field) => {
    const refused = await change(createDay, { ...EVENING, ...wrong })
    expect(refused.ok ? {} : refused.problem.fields).toHaveProperty(field)
  })

  it('in the past is refused, unless the group is a demo', async () => {
    const past = { ...EVENING, date: '2020-08-27', claimsCloseAt: undefined }
    expect(await change(createDay, past)).toMatchObject({ ok: true })
    await fresh.client.group.updateMany({ data: { isDemo: false } })
    const refused = await change(createDay, past)
    await fresh.client.group.updateMany({ data: { isDemo: true } })
    expect(refused).toMatchObject({ ok: false, problem: { fields: { date: [expect.stringContaining('past')] } } })
  })

  it('is for organisers alone, and in a kitchen of the group alone', async () => {
    for (const role of ['station-lead', 'operator', 'member', 'helper', 'visitor'] as const)
      expect(await change(createDay, EVENING, actorOf(role, 'alderby'))).toMatchObject({ ok: false, problem: { status: 403 } })
    expect(await change(createDay, EVENING, actorOf('organiser', 'x', 'another'))).toMatchObject({ ok: false, problem: { status: 404 } })
  })
})

describe('changing a day', () => {
  it('needs the version it was read at: the second of two people is told', async () => {
    const dayId = await draft()
    const edit = (name: string) => change(editDay, { dayId, version: 1, ...EVENING, name })
    const answers = await Promise.all([edit('One'), edit('Two')])
    expect(answers.map((answer) => (answer.ok ? 'saved' : answer.problem.code)).sort()).toEqual(['changed-meanwhile', 'saved'])
  })

  it('is not possible once it was called off', async () => {
    const dayId = await draft()
    await saved(cancelDay, { dayId })
    expect(await change(editDay, { dayId, version: 2, ...EVENING })).toMatchObject({ ok: false, problem: { code: 'day-has-begun' } })
  })
})

describe('a recipe on a day', () => {
  it('gets the published process at the kitchen’s elevation, longer where jars are only washed', async () => {
    const dayId = await draft()
    expect(await saved(chooseRecipe, jam(dayId))).toMatchObject({ letter: 'J', processMinutes: 10, publishedMinutes: 5 })
    const row = await fresh.client.preparation.findFirstOrThrow({ where: { dayId } })
    expect(row).toMatchObject({ processPsi: null, jarTreatment: 'washed-hot' })
    expect(row.processRowKey).toContain('jam-jelly-added-pectin')
    expect([row.processSource, row.processEdition].every((text) => (text ?? '').length > 3)).toBe(true)
  })

  it('with jars boiled runs the published minutes', async () => {
    const dayId = await draft()
    const { preparationId } = await saved(chooseRecipe, { ...jam(dayId), jarTreatment: 'boiled-in-pot' })
    expect(await fresh.client.preparation.findFirstOrThrow({ where: { dayId } })).toMatchObject({ processMinutes: 5 })
    expect(await saved(changeJarTreatment, { preparationId, jarTreatment: 'washed-hot' })).toMatchObject({ processMinutes: 10 })
  })

  it.each([
    ['a jar that the recipe does not name', { jarSize: 'quart' }, 'process-jar-not-in-recipe'],
    ['a jar that does not exist', { jarSize: 'bucket' }, 'bad-input'],
    ['a canner with no published process', { method: 'pressure', gauge: 'dial' }, 'method-not-published'],
    ['a pressure canner without its gauge', { method: 'pressure' }, 'gauge-needed'],
    ['a recipe that is not in the library', { recipeId: 'my-own' }, 'not-found'],
  ])('is refused for %s, with what to do instead', async (_, wish, code) => {
    const refused = await change(chooseRecipe, { ...jam(await draft()), ...wish })
    expect(refused).toMatchObject({ ok: false, problem: { code, instead: expect.stringMatching(/.+/) } })
  })

  it('is on a day once for each jar, each with its own letter', async () => {
    const dayId = await draft()
    await saved(chooseRecipe, jam(dayId))
    expect(await change(chooseRecipe, jam(dayId))).toMatchObject({ ok: false, problem: { code: 'on-the-day' } })
    expect((await saved(chooseRecipe, { ...jam(dayId), jarSize: 'pint' })).letter).not.toBe('J')
  })

  it('keeps its offer above what is asked for, and goes only when nobody asks', async () => {
    const evening = await openEvening()
    await saved(claimJars, { preparationId: evening.jam, householdId: 'elmsway', jars: 5 })
    expect(await change(changeOffer, { preparationId: evening.jam, offered: 4 })).toMatchObject({ ok: false, problem: { status: 422 } })
    expect(await saved(changeOffer, { preparationId: evening.jam, offered: 5 })).toMatchObject({ offered: 5 })
    expect(await change(dropRecipe, { preparationId: evening.jam })).toMatchObject({ ok: false, problem: { code: 'asked-for' } })
    await saved(claimJars, { preparationId: evening.jam, householdId: 'elmsway', jars: 0 })
    await saved(dropRecipe, { preparationId: evening.jam })
    expect(await fresh.client.preparation.count({ where: { dayId: evening.dayId } })).toBe(1)
  })
})

describe('the life of a day', () => {
  it('opens for claims only with jars on offer, and only once', async () => {
    const dayId = await draft()
    expect(await change(openClaims, { dayId })).toMatchObject({ ok: false, problem: { code: 'nothing-offered' } })
    await saved(chooseRecipe, jam(dayId))
    await saved(openClaims, { dayId })
    expect(await change(openClaims, { dayId })).toMatchObject({ ok: false, problem: { code: 'day-state', status: 409 } })
  })

  it('is planned only when somebody asks, starts only when planned, and is not called off once it runs', async () => {
    const evening = await openEvening()
    const { dayId } = evening
    expect(await change(planDay, { dayId })).toMatchObject({ ok: false, problem: { code: 'nothing-asked' } })
    expect(await change(startDay, { dayId })).toMatchObject({ ok: false, problem: { code: 'day-state' } })
    await claimAll(evening)
    await saved(planDay, { dayId })
    await saved(startDay, { dayId })
    expect(await change(cancelDay, { dayId })).toMatchObject({ ok: false, problem: { code: 'day-state' } })
    const claim = await change(claimJars, { preparationId: evening.jam, householdId: 'elmsway', jars: 0 })
    expect(claim).toMatchObject({ ok: false, problem: { code: 'claims-closed' } })
  })

  it('is not found by another group', async () => {
    const { dayId } = await openEvening()
    const stranger = actorOf('organiser', 'x', 'another')
    for (const command of [openClaims, cancelDay, planDay, startDay])
      expect(await change(command, { dayId }, stranger)).toMatchObject({ ok: false, problem: { status: 404 } })
  })
})

describe('a promise', () => {
  const plums = { kind: 'produce', item: 'plums', quantity: '9', unit: 'lb', creditPerUnit: '1.00', pool: 'jam' }

  it('is kept with its credit in minor units, and can be taken back', async () => {
    const { dayId } = await openEvening()
    const { pledgeId } = await saved(addPledge, { dayId, householdId: 'copperfold', ...plums })
    const row = await fresh.client.pledge.findFirstOrThrow({ where: { id: String(pledgeId) } })
    expect({ quantity: row.quantity.toNumber(), creditMinor: row.creditMinor, pool: row.pool }).toEqual({
      quantity: 9,
      creditMinor: 100,
      pool: 'jam',
    })
    await saved(removePledge, { pledgeId }, actorOf('member', 'copperfold'))
    expect(await fresh.client.pledge.count({ where: { dayId } })).toBe(0)
  })

  it('is a household’s own, and the credit for it is not', async () => {
    const { dayId } = await openEvening()
    const own = actorOf('member', 'copperfold')
    const { creditPerUnit: _, ...bare } = plums
    expect(await change(addPledge, { dayId, householdId: 'copperfold', ...plums }, own)).toMatchObject({
      ok: false,
      problem: { code: 'bad-input', fields: { creditPerUnit: [expect.stringContaining('organiser')] } },
    })
    await saved(addPledge, { dayId, householdId: 'copperfold', ...bare }, own)
    expect(await fresh.client.pledge.findMany({ where: { dayId } })).toMatchObject([{ creditMinor: null }])
  })

  it('in another household’s name, or by somebody of another household, is refused', async () => {
    const { dayId } = await openEvening()
    const foreign = await change(addPledge, { dayId, householdId: 'elmsway', ...plums }, actorOf('member', 'copperfold'))
    expect(foreign).toMatchObject({ ok: false, problem: { status: 403 } })
    const { pledgeId } = await saved(addPledge, { dayId, householdId: 'elmsway', ...plums })
    expect(await change(removePledge, { pledgeId }, actorOf('member', 'copperfold'))).toMatchObject({ ok: false, problem: { status: 404 } })
    const other = await change(addPledge, { dayId, householdId: 'elmsway', personId: 'p1', ...plums })
    expect(other).toMatchObject({ ok: false, problem: { fields: { personId: [expect.any(String)] } } })
  })
})
