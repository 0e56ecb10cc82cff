import { beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { dayOutlook } from '@/lib/queries/day-outlook'
import { readSavedPlan } from '@/lib/queries/saved-plan'
import { addPledge } from '@/lib/services/day/add-pledge'
import { changeJarTreatment } from '@/lib/services/day/change-jar-treatment'
import { editDay } from '@/lib/services/day/edit-day'
import { planDay } from '@/lib/services/day/plan-day'
import { startDay } from '@/lib/services/day/start-day'
import { checkDayPlan } from '@/tests/support/check-day-plan'
import { freshDatabase } from '@/tests/support/fresh-database'
import { change, claimAll, EVENING, type OpenEvening, openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'
import { formatClock } from '@/shared/time/kitchen-time'

const fresh = freshDatabase()
let evening: OpenEvening
const rows = async () => ({
  plans: await fresh.client.plan.count({ where: { dayId: evening.dayId } }),
  batches: await fresh.client.kettleBatch.findMany({ where: { dayId: evening.dayId }, orderBy: { code: 'asc' } }),
  loads: await fresh.client.cannerLoad.findMany({ where: { dayId: evening.dayId }, orderBy: { code: 'asc' } }),
  state: (await fresh.client.day.findFirstOrThrow({ where: { id: evening.dayId } })).state,
})

beforeAll(() => seedFernHollow(fresh.client))
beforeEach(async () => {
  evening = await openEvening()
  await claimAll(evening)
})

describe('planning a day', () => {
  it('keeps the plan with its ten batches and ten loads, and the day is planned', async () => {
    expect(await saved(planDay, { dayId: evening.dayId })).toMatchObject({ number: 1, batches: 10, loads: 10, cannerMinutes: 410 })
    const { plans, batches, loads, state } = await rows()
    expect({ plans, state }).toEqual({ plans: 1, state: 'planned' })
    expect(batches.map((batch) => batch.code)).toEqual(['D1', 'D2', 'D3', 'D4', 'J1', 'J2', 'J3', 'J4', 'J5', 'J6'])
    expect(loads.map((load) => load.code)).toEqual(['L01', 'L02', 'L03', 'L04', 'L05', 'L06', 'L07', 'L08', 'L09', 'L10'])
    expect(batches.every((batch) => batch.plannedJars === 8)).toBe(true)
    expect(loads.every((load) => load.operatorId === 'p1' || load.operatorId === 'p7')).toBe(true)
  })

  it('can be read back as it was made, jam at ten minutes with its reason and source', async () => {
    await saved(planDay, { dayId: evening.dayId })
    const stored = await readSavedPlan('fern-hollow', evening.dayId)
    expect(stored?.plan.cannerMinutes).toEqual({ needed: 410, available: 430, slack: 20 })
    expect(formatClock(stored?.plan.finishAt ?? 0)).toBe('21:25')
    const jam = stored?.problem.preparations.find((each) => each.id === evening.jam)
    expect(jam?.process).toMatchObject({
      minutes: 10,
      publishedMinutes: 5,
      sterilise: false,
      chosenBecause: expect.stringContaining('no boiling'),
    })
    expect(jam?.process.source).not.toBe('')
  })

  it('names a household for every tub of the soak, those that offered first, never one that must not have mustard', async () => {
    for (const householdId of ['alderby', 'fennick'])
      await saved(addPledge, { dayId: evening.dayId, householdId, kind: 'home-task', item: 'Brine soak', quantity: '1', unit: 'tub' })
    const refused = await change(addPledge, {
      ...{ dayId: evening.dayId, householdId: 'dunmarrow', kind: 'home-task', item: 'Brine soak', quantity: '1', unit: 'tub' },
    })
    expect(refused).toMatchObject({ ok: false, problem: { code: 'allergen' } })
    await saved(planDay, { dayId: evening.dayId })
    const { plan } = (await readSavedPlan('fern-hollow', evening.dayId)) ?? {}
    expect(plan?.nightBefore.map((step) => [step.householdId, step.proposed, formatClock(step.doneBy)])).toEqual([
      ['alderby', false, '17:30'],
      ['fennick', false, '17:30'],
    ])
  })

  it('with one canner is refused with both figures, and nothing is saved', async () => {
    const refused = await change(planDay, { dayId: evening.dayId, change: 'without-canner:BW2' })
    expect(refused).toMatchObject({ ok: false, problem: { code: 'plan-canner-minutes', why: expect.stringMatching(/410.*215/) } })
    expect(await rows()).toEqual({ plans: 0, batches: [], loads: [], state: 'claiming' })
  })

  it('with jars boiled in the canners is refused: 480 of 430 canner minutes', async () => {
    for (const preparationId of [evening.jam, evening.pickles])
      await saved(changeJarTreatment, { preparationId, jarTreatment: 'boiled-in-canners' })
    const jam = await fresh.client.preparation.findFirstOrThrow({ where: { id: evening.jam } })
    expect(jam.processMinutes).toBe(5)
    const refused = await change(planDay, { dayId: evening.dayId })
    expect(refused).toMatchObject({ ok: false, problem: { why: expect.stringMatching(/480.*430/) } })
    expect((await rows()).plans).toBe(0)
  })

  it('again keeps what both plans have under the same id, and lets go what the new one leaves out', async () => {
    await saved(planDay, { dayId: evening.dayId })
    const before = await rows()
    expect(await saved(planDay, { dayId: evening.dayId, change: `fewer-batches:${evening.jam}:1` })).toMatchObject({
      number: 2,
      batches: 9,
      loads: 9,
    })
    const after = await rows()
    expect(after.plans).toBe(2)
    expect(after.batches.map((batch) => batch.code)).toEqual(['D1', 'D2', 'D3', 'D4', 'J1', 'J2', 'J3', 'J4', 'J5'])
    const ids = new Map(before.batches.map((batch) => [batch.code, batch.id]))
    expect(after.batches.every((batch) => ids.get(batch.code) === batch.id)).toBe(true)
  })

  it('is refused once work has begun, and work that has begun cannot be deleted by anybody', async () => {
    await saved(planDay, { dayId: evening.dayId })
    await saved(startDay, { dayId: evening.dayId })
    expect(await change(planDay, { dayId: evening.dayId })).toMatchObject({ ok: false, problem: { code: 'day-state', status: 409 } })
    await fresh.client.kettleBatch.updateMany({ where: { dayId: evening.dayId, code: 'J1' }, data: { state: 'prepping', startedAt: 1040 } })
    const drop = fresh.client.kettleBatch.deleteMany({ where: { dayId: evening.dayId, code: 'J1' } })
    await expect(drop).rejects.toThrow(/stays on record/)
  })

  it('is refused when the kitchen’s elevation has moved to another band since the recipe was chosen', async () => {
    await fresh.client.kitchen.updateMany({ data: { elevationFeet: 4300 } })
    const refused = await change(planDay, { dayId: evening.dayId })
    await fresh.client.kitchen.updateMany({ data: { elevationFeet: 650 } })
    expect(refused).toMatchObject({ ok: false, problem: { code: 'process-changed' } })
  })

  it('stands until hours, people or equipment change, and then the day says so', async () => {
    const { dayId } = evening
    const outdated = async () => (await dayOutlook('fern-hollow', dayId, 'planned', new Map()))?.isOutdated
    await saved(planDay, { dayId, change: `fewer-batches:${evening.jam}:1` })
    expect(await outdated()).toBe(false)
    const { version } = await fresh.client.day.findFirstOrThrow({ where: { id: dayId } })
    await saved(editDay, { dayId, version, ...EVENING, cleanUpMinutes: '30' })
    expect(await outdated()).toBe(true)
    await saved(planDay, { dayId })
    expect(await outdated()).toBe(false)
  })

  it('has the breaks that the day asks for, and none where it asks for none', async () => {
    const { dayId } = evening
    const breaks = async () => (await readSavedPlan('fern-hollow', dayId))?.plan.tasks.filter((task) => task.kind === 'break').length
    const edit = async (fields: Record<string, string>) => {
      const { version } = await fresh.client.day.findFirstOrThrow({ where: { id: dayId } })
      await saved(editDay, { dayId, version, ...EVENING, ...fields })
      await saved(planDay, { dayId })
    }
    await edit({})
    expect(await breaks()).toBe(0) // nobody is there for six hours
    await edit({ breakMinutes: '10', breakAfterMinutes: '240' })
    expect(await breaks()).toBeGreaterThan(0)
    await edit({ breakMinutes: '0', breakAfterMinutes: '240' })
    expect(await breaks()).toBe(0)
  })

  it('washes a fill table between recipes where the day asks for it', async () => {
    const { dayId } = evening
    const { version } = await fresh.client.day.findFirstOrThrow({ where: { id: dayId } })
    await saved(editDay, { dayId, version, ...EVENING, tableWashMinutes: '3' })
    await saved(planDay, { dayId })
    const stored = await readSavedPlan('fern-hollow', dayId)
    expect(stored?.problem.tableWashMinutes).toBe(3)
    expect(stored && checkDayPlan(stored.problem, stored.plan)).toEqual([])
  })

  it('can be planned for slower hands, and is still the same day', async () => {
    const { dayId } = evening
    await saved(planDay, { dayId, change: 'surer:90' })
    expect(await dayOutlook('fern-hollow', dayId, 'planned', new Map())).toMatchObject({ isOutdated: false, outcome: { ok: true } })
    expect(await change(planDay, { dayId, change: 'surer:85' })).toMatchObject({ ok: false })
  })

  it('planned twice at the same moment is one plan after the other', async () => {
    const answers = await Promise.all([1, 2, 3, 4].map(() => change(planDay, { dayId: evening.dayId })))
    expect(answers.map((answer) => answer.ok && answer.value.reply.number).sort()).toEqual([1, 2, 3, 4])
    expect((await rows()).batches).toHaveLength(10)
  })
})
