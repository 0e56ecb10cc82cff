import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import type { AnyCommand } from '@/lib/commands/command'
import { runCommand } from '@/lib/commands/run-command'
import { fillBatch } from '@/lib/services/floor/fill-batch'
import { loadCanner } from '@/lib/services/floor/load-canner'
import { receiveIngredients } from '@/lib/services/floor/receive-ingredients'
import { startBatch } from '@/lib/services/floor/start-batch'
import { freshDatabase } from '../../../support/fresh-database'
import { actorNamed, must, S1, seedS1Evening } from '../../../support/s1-floor'

const fresh = freshDatabase()

beforeAll(async () => {
  await seedS1Evening(fresh.client)
  await seedS1Evening(fresh.client, { groupId: 'twin' })
})

/** The first jam batch of one of the groups, up to the canner: the lots it was given. */
async function loadFirstJam(groupId: string) {
  const actor = { ...actorNamed('Ada'), groupId, userId: `${groupId}-ada` }
  const run = (command: AnyCommand, input: object) =>
    must(runCommand(command, { actor, idempotencyKey: randomUUID(), input: { dayId: S1.dayId, ...input } }))
  const { lotId } = await run(receiveIngredients, { item: 'plums', quantity: 1, unit: 'lb', source: 'shop' })
  await run(startBatch, { batchId: 'J1', kettleId: 'K1', lotIds: [lotId], at: '17:30' })
  await run(fillBatch, { batchId: 'J1', jars: 8, at: '18:00' })
  return (await run(loadCanner, { loadId: 'L02', operatorId: 'p1', batchIds: ['J1'], at: '18:05' })).lots
}

describe('lot numbers', () => {
  it('are never given twice, though two groups have the same code, date, batch and load', async () => {
    expect(await loadFirstJam(S1.groupId)).toEqual([expect.stringMatching(/^FH-270826-J1-C02-/)])
    expect(await loadFirstJam('twin')).toEqual([expect.stringMatching(/^FH-270826-J1-C102-/)])
  })
})
