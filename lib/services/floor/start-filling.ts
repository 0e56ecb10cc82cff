import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { StartFilling } from '@/shared/forms/floor'
import { ok, refuse } from '@/shared/result/result'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { notFound } from '@/shared/wording/refusal'
import { lockFloorDay, timeOnDay } from './floor-day'
import { moveBatch, readBatch } from './one-batch'

/** The first jar of a batch is being filled: cooking is over, and a new plan no longer guesses when its jars began to wait. */
export const startFilling = defineCommand({
  name: 'start-filling',
  summary: 'Begin to fill a batch',
  act: 'run-batch',
  schema: StartFilling,
  async run(context, { dayId, batchId, at }) {
    const { groupId } = context.actor
    const day = await lockFloorDay(context, dayId, ['running'])
    if (!day.ok) return day
    const batch = await readBatch(context, dayId, batchId)
    if (!batch) return refuse(notFound('Kettle batch'))
    const moved = moveBatch(batch, 'filling')
    if (!moved.ok) return refuse(sayFloorProblem(moved.problem))
    const when = await timeOnDay(context, day.value, at, {
      kind: 'begin',
      after: [{ what: 'the start of the batch', at: batch.startedAt }],
    })
    if (!when.ok) return when

    const where = { groupId_id: { groupId, id: batchId } }
    await context.tx.kettleBatch.update({ where, data: { state: moved.value, fillingAt: when.value } })
    return ok({
      reply: { batchId, code: batch.code, state: moved.value },
      history: [{ subject: `kettle batch ${batchId}`, detail: { code: batch.code, at: formatClock(when.value) }, dayId }],
    })
  },
})
