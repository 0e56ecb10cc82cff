import { beforeAll, describe, expect, it } from 'vitest'
import { fillBatch } from '@/lib/services/floor/fill-batch'
import { loadCanner } from '@/lib/services/floor/load-canner'
import { lostTemperature } from '@/lib/services/floor/lost-temperature'
import { reachedTemperature } from '@/lib/services/floor/reached-temperature'
import { relieveOperator } from '@/lib/services/floor/relieve-operator'
import { startBatch } from '@/lib/services/floor/start-batch'
import { freshDatabase } from '../../../support/fresh-database'
import { receiveS1Ingredients } from '../../../support/run-s1-evening'
import { as, must, S1, seedS1Evening } from '../../../support/s1-floor'

const fresh = freshDatabase()
const { dayId, groupId, kitchenId } = S1
const ROUNDS = 20
const FOUR = [0, 1, 2, 3]
let lotIds: string[]

beforeAll(async () => {
  await seedS1Evening(fresh.client)
  lotIds = (await receiveS1Ingredients()).jam
  await fresh.client.supplyLot.update({ where: { groupId_id: { groupId, id: S1.lidLotId } }, data: { count: 1000 } })
  const rounds = Array.from({ length: ROUNDS }, (_, round) => round)
  await fresh.client.kettle.createMany({
    data: rounds.map((n) => ({
      groupId,
      id: `KR${n}`,
      kitchenId,
      label: `KR${n}`,
      millilitres: 8000,
      material: 'stainless',
      keptFor: 'any',
    })),
  })
  await fresh.client.canner.createMany({
    data: rounds.flatMap((n) =>
      FOUR.map((caller) => {
        const id = `C${n}-${caller}`
        return { groupId, id, kitchenId, label: id, method: 'boiling-water', halfPints: 12, pints: 9 }
      }),
    ),
  })
  await fresh.client.kettleBatch.createMany({
    data: rounds.map((n) => ({
      groupId,
      id: `race-${n}`,
      dayId,
      preparationId: 'jam',
      code: `J${n + 10}`,
      plannedStart: 1050,
      plannedFilled: 1080,
      plannedJars: 8,
    })),
  })
  await fresh.client.cannerLoad.createMany({
    data: rounds.flatMap((n) =>
      FOUR.map((caller) => ({
        groupId,
        id: `race-${n}-${caller}`,
        dayId,
        code: `L${100 + n * 4 + caller}`,
        cannerId: `C${n}-${caller}`,
        plannedLoadAt: 1090,
        plannedEmptyAt: 1130,
      })),
    ),
  })
})

const winners = (answers: readonly { readonly ok: boolean }[]) => answers.filter(({ ok }) => ok).length

describe('four hands at once', () => {
  it('fill a batch once, with one set of jars, in each of twenty rounds', async () => {
    for (let round = 0; round < ROUNDS; round += 1) {
      const batchId = `race-${round}`
      await must(as('Cleo', startBatch, { dayId, batchId, kettleId: `KR${round}`, lotIds, at: '17:30' }))
      const answers = await Promise.all(FOUR.map((caller) => as('Cleo', fillBatch, { dayId, batchId, jars: 5 + caller, at: '18:00' })))
      expect(winners(answers)).toBe(1)
      const { jarsFilled } = await fresh.client.kettleBatch.findFirstOrThrow({ where: { id: batchId } })
      expect(await fresh.client.jar.count({ where: { batchId } })).toBe(jarsFilled)
    }
  })

  it('load the same jars once, however many canner loads reach for them', async () => {
    for (let round = 0; round < ROUNDS; round += 1) {
      const batchIds = [`race-${round}`]
      const answers = await Promise.all(
        FOUR.map((caller) =>
          as('Gil', loadCanner, {
            dayId,
            loadId: `race-${round}-${caller}`,
            cannerId: `C${round}-${caller}`,
            batchIds,
            at: '18:10',
          }),
        ),
      )
      expect(winners(answers)).toBe(1)
      const loads = await fresh.client.jarLoad.groupBy({ by: ['jarId'], where: { jar: { batchId: batchIds[0] } }, _count: true })
      expect(loads.every(({ _count }) => _count === 1)).toBe(true)
    }
  })

  it('start one clock and count one loss', async () => {
    const { id: loadId } = await fresh.client.cannerLoad.findFirstOrThrow({ where: { state: 'coming-up' } })
    for (let round = 0; round < ROUNDS; round += 1) {
      const at = `19:${String(round).padStart(2, '0')}`
      expect(winners(await Promise.all(FOUR.map(() => as('Gil', reachedTemperature, { dayId, loadId, at }))))).toBe(1)
      expect(winners(await Promise.all(FOUR.map(() => as('Gil', lostTemperature, { dayId, loadId, at }))))).toBe(1)
    }
    expect(await fresh.client.cannerLoad.findFirstOrThrow({ where: { id: loadId } })).toMatchObject({ restarts: ROUNDS })
  })

  it('take one canner over once, and each from whoever had it', async () => {
    const { id: loadId } = await fresh.client.cannerLoad.findFirstOrThrow({ where: { state: 'coming-up' } })
    for (let round = 0; round < ROUNDS; round += 1) {
      const operatorId = round % 2 === 0 ? 'p1' : 'p7'
      const relief = { dayId, loadId, operatorId, at: `19:${20 + round}` }
      expect(winners(await Promise.all(FOUR.map(() => as('Gil', relieveOperator, relief))))).toBe(1)
    }
    const reliefs = await fresh.client.operatorRelief.findMany({ where: { loadId }, orderBy: { turn: 'asc' } })
    expect(reliefs.map(({ turn }) => turn)).toEqual(Array.from({ length: ROUNDS }, (_, round) => round + 1))
    for (const [index, { fromId }] of reliefs.entries()) expect(fromId).toBe(reliefs[index - 1]?.toId ?? 'p7')
  })

  it('send the same tap twice and it counts once', async () => {
    const { id: loadId } = await fresh.client.cannerLoad.findFirstOrThrow({ where: { state: 'coming-up' } })
    const key: string = crypto.randomUUID()
    const answers = await Promise.all(FOUR.map(() => as('Gil', reachedTemperature, { dayId, loadId, at: '20:00' }, key)))
    const refused = answers.flatMap((answer) => (answer.ok ? [] : [answer.problem.code]))
    expect(refused.every((code) => code === 'not-saved')).toBe(true) // waited too long on a busy machine; never counted twice
    expect(answers.filter((answer) => answer.ok && !answer.value.replayed)).toHaveLength(1)
  })
})
