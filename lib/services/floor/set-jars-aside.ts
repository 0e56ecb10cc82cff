import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { SetJarsAside } from '@/shared/forms/floor'
import { ok, refuse } from '@/shared/result/result'
import { formatClock } from '@/shared/time/kitchen-time'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { notFound } from '@/shared/wording/refusal'
import { lockFloorDay, timeOnDay } from './floor-day'
import { readBatch } from './one-batch'
import { NEVER_PROCESSED, TO_BE_PROCESSED_AGAIN } from './waiting-jars'

/** Jars that were filled and never go into a canner: chilled at once, or thrown out. They are never shelf-stable. */
export const setJarsAside = defineCommand({
  name: 'set-jars-aside',
  summary: 'Set filled jars aside',
  act: 'run-batch',
  schema: SetJarsAside,
  async run(context, { dayId, batchId, at, way }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['running'])
    if (!day.ok) return day
    const batch = await readBatch(context, dayId, batchId)
    if (!batch) return refuse(notFound('Kettle batch'))
    const when = await timeOnDay(context, day.value, at, {
      kind: 'end',
      after: [{ what: 'the start of the batch', at: batch.startedAt }],
    })
    if (!when.ok) return when
    const waiting = { groupId, batchId, state: 'filled', OR: [NEVER_PROCESSED, TO_BE_PROCESSED_AGAIN] }
    const jars = await tx.jar.findMany({ where: waiting, select: { id: true, shortName: true }, orderBy: { shortName: 'asc' } })
    if (jars.length === 0) return refuse(sayFloorProblem({ kind: 'nothing-to-load' }))

    const data = way === 'fridge' ? { state: 'unsealed', whereNow: 'fridge' } : { state: 'discarded', whereNow: 'thrown out' }
    await tx.jar.updateMany({ where: { groupId, id: { in: jars.map(({ id }) => id) } }, data })
    const detail = { code: batch.code, at: formatClock(when.value), way, jars: jars.map(({ shortName }) => shortName) }
    return ok({
      reply: { batchId, jars: jars.length, state: data.state },
      history: [{ subject: `kettle batch ${batchId}`, detail, dayId }],
    })
  },
})
