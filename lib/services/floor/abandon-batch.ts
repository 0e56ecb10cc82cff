import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { AbandonBatch } from '@/shared/forms/floor'
import { ok, refuse } from '@/shared/result/result'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { notFound } from '@/shared/wording/refusal'
import { lockFloorDay, timeOnDay } from './floor-day'
import { begunWith, moveBatch, readBatch } from './one-batch'

/** Gives a batch up before it is filled: a scorched kettle, a day that runs out of time. */
export const abandonBatch = defineCommand({
  name: 'abandon-batch',
  summary: 'Give a batch up',
  act: 'run-batch',
  schema: AbandonBatch,
  async run(context, { dayId, batchId, at, why }) {
    const { groupId } = context.actor
    const day = await lockFloorDay(context, dayId, ['running'])
    if (!day.ok) return day
    const batch = await readBatch(context, dayId, batchId)
    if (!batch) return refuse(notFound('Kettle batch'))
    const moved = moveBatch(batch, 'abandoned')
    if (!moved.ok) return refuse(sayFloorProblem(moved.problem))
    const when = await timeOnDay(context, day.value, at, { kind: 'end', after: begunWith(batch) })
    if (!when.ok) return when

    await context.tx.kettleBatch.update({ where: { groupId_id: { groupId, id: batchId } }, data: { state: moved.value, note: why } })
    const detail = { code: batch.code, at: formatClock(when.value), from: batch.state, why }
    return ok({
      reply: { batchId, code: batch.code, state: moved.value },
      history: [{ subject: `kettle batch ${batchId}`, detail, dayId }],
    })
  },
})
