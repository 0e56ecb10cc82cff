import { beforeAll, describe, expect, it } from 'vitest'
import { readDayHead } from '@/lib/queries/day-head'
import { dayStanding } from '@/lib/queries/plan-standing'
import { readReplanInput } from '@/lib/queries/replan-input'
import { readWorkBegun } from '@/lib/queries/work-begun'
import { readSavedPlan } from '@/lib/queries/saved-plan'
import { planDay } from '@/lib/services/day/plan-day'
import { startDay } from '@/lib/services/day/start-day'
import { startFilling } from '@/lib/services/floor/start-filling'
import { lostTemperature } from '@/lib/services/floor/lost-temperature'
import { reachedTemperature } from '@/lib/services/floor/reached-temperature'
import { receiveIngredients } from '@/lib/services/floor/receive-ingredients'
import { clearSetback } from '@/lib/services/replan/clear-setback'
import { lockTask } from '@/lib/services/replan/lock-task'
import { noteSetback } from '@/lib/services/replan/note-setback'
import { replanDay } from '@/lib/services/replan/replan-day'
import { undoPlan } from '@/lib/services/replan/undo-plan'
import { unlockTask } from '@/lib/services/replan/unlock-task'
import { formatClock } from '@/shared/time/kitchen-time'
import { freshDatabase } from '@/tests/support/fresh-database'
import { ada, change, claimAll, openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'
import { runPlannedUntil } from '@/tests/support/run-planned-until'

const fresh = freshDatabase()
const groupId = 'fern-hollow'
let dayId: string
let lotId: string

const stored = async () => {
  const plan = await readSavedPlan(groupId, dayId)
  if (!plan) throw new Error('the day is planned')
  return plan
}
const loadNamed = (code: string) => fresh.client.cannerLoad.findFirstOrThrow({ where: { groupId, dayId, code } })
const replan = async (from: number, more: object = {}) => change(replanDay, { dayId, basedOn: (await stored()).number, ...more, from })

const RESTART = 18 * 60 + 22

beforeAll(async () => {
  await seedFernHollow(fresh.client)
  const evening = await openEvening()
  dayId = evening.dayId
  await claimAll(evening)
  await saved(planDay, { dayId })
  await fresh.client.supplyLot.create({
    data: { groupId, id: 'lids', kind: 'lid', lotCode: 'LID-27', count: 96, boughtOn: new Date('2027-08-20T00:00:00Z') },
  })
})

describe('before the day', () => {
  it('a task fixed by hand is kept by the next plan, and unlocked it is free again', async () => {
    const { plan } = await stored()
    const load = plan.loads.find(({ code }) => code === 'L04')
    const [preparationId, batch] = (load?.batchParts[0]?.batchId ?? '').split('/')
    if (!load) throw new Error('the plan has ten loads')
    const lock = { dayId, preparationId, batch: Number(batch), task: 'load', at: formatClock(load.loadAt), equipmentId: load.cannerId }
    const { lockId } = await saved(lockTask, lock)
    await saved(planDay, { dayId })
    const next = await stored()
    expect(next.problem.locks).toEqual([expect.objectContaining({ preparationId, at: load.loadAt, equipmentId: load.cannerId })])
    const same = next.plan.loads.find(({ batchParts }) => batchParts.some((part) => part.batchId === `${preparationId}/${batch}`))
    expect(same).toMatchObject({ loadAt: load.loadAt, cannerId: load.cannerId })
    await saved(unlockTask, { dayId, lockId })
    await saved(planDay, { dayId })
    expect((await stored()).problem.locks ?? []).toEqual([])
  })

  it('refuses a lock on nothing, on a batch that is not planned, and on equipment of another kind', async () => {
    const { plan } = await stored()
    const [preparationId] = (plan.batches[0]?.id ?? '').split('/')
    const nothing = await change(lockTask, { dayId, preparationId, batch: 1, task: 'load' })
    expect(nothing).toMatchObject({ ok: false, problem: { code: 'bad-input' } })
    expect(await change(lockTask, { dayId, preparationId, batch: 77, task: 'load', at: '19:00' })).toMatchObject({
      ok: false,
      problem: { status: 404 },
    })
    const kettle = await change(lockTask, { dayId, preparationId, batch: 1, task: 'load', equipmentId: 'K1' })
    expect(kettle).toMatchObject({ ok: false, problem: { code: 'bad-input' } })
  })

  it('a plan that keeps no lock is refused with the lock’s name', async () => {
    const { plan } = await stored()
    const [preparationId, batch] = (plan.loads.at(-1)?.batchParts[0]?.batchId ?? '').split('/')
    const { lockId } = await saved(lockTask, { dayId, preparationId, batch: Number(batch), task: 'load', at: '17:16' })
    expect(await change(planDay, { dayId })).toMatchObject({
      ok: false,
      problem: { code: 'plan-locked', why: expect.stringContaining('17:16') },
    })
    await saved(unlockTask, { dayId, lockId })
  })
})

describe('a running evening', () => {
  beforeAll(async () => {
    await saved(startDay, { dayId })
    lotId = String((await saved(receiveIngredients, { dayId, item: 'plums', quantity: 60, unit: 'lb', source: 'market' })).lotId)
    await runPlannedUntil(fresh.client, groupId, dayId, lotId, RESTART, true)
  })

  it('is planned anew from now: the load in the canner stays, its lost boil makes it whole again, codes stay', async () => {
    const before = await stored()
    const load = before.plan.loads.find(({ boilAt, processEndAt }) => boilAt < RESTART && processEndAt > RESTART)
    if (!load) throw new Error('a load boils')
    const { id: loadId } = await loadNamed(load.code)
    await saved(lostTemperature, { dayId, loadId, at: formatClock(RESTART - 2) })
    await saved(reachedTemperature, { dayId, loadId, at: formatClock(RESTART) })
    const reply = await replan(RESTART, { reason: `${load.code} was restarted` })
    if (!reply.ok) throw new Error(JSON.stringify(reply.problem))
    expect(reply.value.reply.dropped).toBe(0)
    const after = await stored()
    expect(after.number).toBe(before.number + 1)
    const same = after.plan.loads.find(({ code }) => code === load.code)
    expect(same).toMatchObject({ loadAt: load.loadAt, boilAt: RESTART, processEndAt: RESTART + 10 })
    expect(after.plan.loads.map(({ code }) => code).sort()).toEqual(before.plan.loads.map(({ code }) => code).sort())
    const row = await fresh.client.plan.findFirstOrThrow({ where: { groupId, dayId, number: after.number } })
    expect(row).toMatchObject({ madeBy: 'replan', reason: `${load.code} was restarted`, madeAt: RESTART })
    const rows = await fresh.client.cannerLoad.findMany({ where: { groupId, dayId, state: 'planned' } })
    for (const { code, plannedLoadAt } of rows) expect(plannedLoadAt).toBe(after.plan.loads.find((each) => each.code === code)?.loadAt)
    expect(await loadNamed(load.code)).toMatchObject({ plannedLoadAt: load.loadAt, state: 'processing' })
  })

  it('fixes nothing of what has begun, and asks no plan to keep what was fixed of it before', async () => {
    const { plan } = await stored()
    const inCanner = plan.loads.find(({ loadAt, emptyAt }) => loadAt < RESTART && emptyAt > RESTART)
    const toCome = plan.loads.find(({ loadAt }) => loadAt > RESTART + 60)
    if (!inCanner || !toCome) throw new Error('a load is in a canner and another is to come')
    const begun = await readWorkBegun(groupId, dayId)
    expect([begun.loads.has(inCanner.code), begun.loads.has(toCome.code)]).toEqual([true, false])
    const [preparationId, batch] = (inCanner.batchParts[0]?.batchId ?? '').split('/')
    for (const task of ['load', 'cook', 'wash'])
      expect(await change(lockTask, { dayId, preparationId, batch: Number(batch), task, at: '21:00' })).toMatchObject({
        ok: false,
        problem: { code: 'work-begun' },
      })
    const key = { id: 'old', groupId, dayId, preparationId: String(preparationId), batch: Number(batch) }
    await fresh.client.planLock.create({ data: { ...key, task: 'load', at: inCanner.loadAt } })
    expect((await readReplanInput(fresh.client as never, groupId, dayId, RESTART))?.problem.locks).toEqual([])
    await fresh.client.planLock.delete({ where: { groupId_id: { groupId, id: 'old' } } })
  })

  it('refuses to plan from a page that another plan has overtaken', async () => {
    expect(await change(replanDay, { dayId, basedOn: 1 })).toMatchObject({ ok: false, problem: { code: 'plan-moved-on' } })
  })

  it('goes round a canner that is out, and says which batches it leaves out; the earlier plan is then untrue, and true again when it is back', async () => {
    const { setbackId } = await saved(noteSetback, { dayId, kind: 'canner-out', cannerId: 'BW2', from: '18:45' })
    const { number } = await stored()
    const reply = await replan(RESTART)
    if (!reply.ok) throw new Error(JSON.stringify(reply.problem))
    expect(Number(reply.value.reply.dropped)).toBeGreaterThan(0)
    const { plan } = await stored()
    expect(plan.loads.filter(({ cannerId, loadAt }) => cannerId === 'BW2' && loadAt >= RESTART)).toEqual([])
    expect(await change(undoPlan, { dayId, basedOn: number + 1 })).toMatchObject({ ok: false, problem: { code: 'plan-untrue' } })
    await saved(clearSetback, { dayId, setbackId })
    const undone = await saved(undoPlan, { dayId, basedOn: number + 1 })
    expect(undone).toMatchObject({ number: number + 2, takenFrom: number })
    expect((await stored()).plan.loads.length).toBe(10)
    expect(await fresh.client.kettleBatch.count({ where: { groupId, dayId, state: { not: 'abandoned' } } })).toBe(10)
    expect(await fresh.client.plan.count({ where: { groupId, dayId } })).toBe(number + 2)
  })

  it('a second undo goes further back, never in a circle', async () => {
    const { number } = await stored()
    const reply = await saved(undoPlan, { dayId, basedOn: number })
    expect(reply.takenFrom).toBe(number - 3)
  })

  it('gives one new plan to four who plan at once, in each of twenty rounds', async () => {
    for (let round = 0; round < 20; round += 1) {
      const { number } = await stored()
      const answers = await Promise.all([0, 1, 2, 3].map(() => change(replanDay, { dayId, basedOn: number, reason: `Round ${round}` })))
      expect(answers.filter(({ ok }) => ok)).toHaveLength(1)
      for (const answer of answers) if (!answer.ok) expect(answer.problem.code).toMatch(/plan-moved-on|not-saved/)
      expect((await stored()).number).toBe(number + 1)
    }
  }, 120_000)

  it('reads what is in the canners and what waits', async () => {
    const input = await readReplanInput(fresh.client as never, groupId, dayId, RESTART)
    expect(input?.soFar.loads.map(({ loadId, state }) => [loadId, state])).toEqual([
      ['L01', 'in-canner'],
      ['L02', 'in-canner'],
    ])
    expect(input?.soFar.batches.filter(({ state }) => state === 'filled')).toHaveLength(2)
    expect(input?.soFar.batches.flatMap(({ waiting }) => waiting ?? [])).toEqual([])
  })

  it('takes a filling from who noted it; where nobody notes one, from the plan', async () => {
    const { plan } = await stored()
    const batch = plan.batches.find(({ cookStart, fillStart }) => cookStart < RESTART && fillStart > RESTART)
    if (!batch) throw new Error('a batch cooks')
    const key = { groupId_dayId_code: { groupId, dayId, code: batch.code } }
    const row = await fresh.client.kettleBatch.findUniqueOrThrow({ where: key })
    const filling = async (now: number) => {
      const input = await readReplanInput(fresh.client as never, groupId, dayId, now)
      return input?.soFar.batches.find(({ batchId }) => batchId === batch.id)?.fillStartedAt
    }
    expect(await filling(batch.fillStart + 2)).toBeNull()
    await saved(startFilling, { dayId, batchId: row.id, at: formatClock(batch.fillStart + 1) })
    expect(await filling(batch.fillStart + 2)).toBe(batch.fillStart + 1)

    await fresh.client.kettleBatch.update({ where: key, data: { state: 'cooking' } })
    await fresh.client.kettleBatch.updateMany({ where: { dayId }, data: { fillingAt: null } })
    expect(await filling(batch.fillStart + 2)).toBe(batch.fillStart)
  })

  it('tells what a plan does not know of, also where the clocks of who noted and who planned say otherwise', async () => {
    const day = await readDayHead(groupId, dayId)
    const standing = async () => day && (await dayStanding(groupId, day, new Date()))
    const { number, createdAt } = await stored()
    const before = new Date(createdAt.getTime() - 10)
    const noted = await change(noteSetback, { dayId, kind: 'canner-out', cannerId: 'BW2', from: '18:45' }, ada, before)
    const setbackId = noted.ok ? String(noted.value.reply.setbackId) : ''
    expect((await standing())?.setbacks).toMatchObject([{ id: setbackId, isNew: true }])

    // Noted by a clock that is an hour ahead of the one that dates the plan.
    await fresh.client.setback.update({
      where: { groupId_id: { groupId, id: setbackId } },
      data: { notedAt: new Date(Date.now() + 3_600_000) },
    })
    await replan(RESTART)
    expect((await standing())?.setbacks).toMatchObject([{ id: setbackId, isNew: false }])
    expect(await change(clearSetback, { dayId, setbackId }, ada, before)).toMatchObject({ ok: true })
    expect(await standing()).toMatchObject({ setbacks: [], isSomethingOver: true })
    await saved(undoPlan, { dayId, basedOn: number + 1 })
    expect(await standing()).toMatchObject({ isSomethingOver: false })
  })
})
