import { beforeAll, describe, expect, it } from 'vitest'
import { type DayHead, readDayHead } from '@/lib/queries/day-head'
import { floorNow } from '@/lib/queries/floor-now'
import { jarTrace } from '@/lib/queries/jar-trace'
import { planDay } from '@/lib/services/day/plan-day'
import { startDay } from '@/lib/services/day/start-day'
import { fillBatch } from '@/lib/services/floor/fill-batch'
import { loadCanner } from '@/lib/services/floor/load-canner'
import { receiveIngredients } from '@/lib/services/floor/receive-ingredients'
import { startBatch } from '@/lib/services/floor/start-batch'
import { freshDatabase } from '@/tests/support/fresh-database'
import { claimAll, openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'

const fresh = freshDatabase()
const groupId = 'fern-hollow'
let dayId: string

beforeAll(async () => {
  await seedFernHollow(fresh.client)
  const evening = await openEvening()
  dayId = evening.dayId
  await claimAll(evening)
  await saved(planDay, { dayId })
  await saved(startDay, { dayId })
  await fresh.client.supplyLot.create({
    data: { groupId, id: 'lids', kind: 'lid', lotCode: 'LID-27', count: 96, boughtOn: new Date('2027-08-20T00:00:00Z') },
  })
})

const now = async () => floorNow(groupId, (await readDayHead(groupId, dayId)) as DayHead, new Date())

describe('an evening as the planner planned it', () => {
  it('shows which batch each load was planned for', async () => {
    const { planned, loads, batches } = await now()
    expect(loads).toHaveLength(10)
    expect(loads.flatMap(({ code }) => planned.get(code) ?? []).sort()).toEqual(batches.map(({ code }) => code).sort())
  })

  it('runs its first load with the planned kettle, canner and operator, and traces it to the people of the plan', async () => {
    const { loads, batches, planned } = await now()
    const [load] = loads
    const batch = batches.find(({ code }) => code === planned.get(load?.code ?? '')?.[0])
    if (!load || !batch) throw new Error('the plan has loads and batches')
    const { lotId } = await saved(receiveIngredients, { dayId, item: 'plums', quantity: 15, unit: 'lb', source: 'market' })
    await saved(startBatch, { dayId, batchId: batch.id, kettleId: batch.kettleId, lotIds: [lotId], at: '17:30' })
    await saved(fillBatch, { dayId, batchId: batch.id, jars: 8, at: '17:58', lidLotId: 'lids' })
    const operatorId = load.operatorId
    expect(operatorId).toMatch(/^p[17]$/) // Ada or Gil: the two who are trained
    const done = await saved(loadCanner, { dayId, loadId: load.id, operatorId, batchIds: [batch.id], at: '18:02' })
    expect(done).toMatchObject({ code: 'L01', minutes: 10, jars: 8 })

    const { serial } = await fresh.client.jar.findFirstOrThrow({ where: { batchId: batch.id } })
    const trace = await jarTrace(groupId, serial)
    expect(trace?.people.length).toBeGreaterThan(0)
    expect(trace?.lotNumber).toMatch(new RegExp(`^FH-270826-${batch.code}-C01-`))
  })

  it('keeps the lids of the first batch as the lids of the day', async () => {
    const day = await fresh.client.day.findFirstOrThrow({ where: { id: dayId } })
    expect(day.lidLotId).toBe('lids')
  })
})
