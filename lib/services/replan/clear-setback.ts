import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { ClearSetback } from '@/shared/forms/replan'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { momentAfterPlan } from './order-of-plans'

/** Something that had changed is as planned again, or was noted by mistake. */
export const clearSetback = defineCommand({
  name: 'clear-setback',
  summary: 'Take back what has changed',
  act: 'note-incident',
  schema: ClearSetback,
  async run(context, { dayId, setbackId }) {
    const { tx, actor, now } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['running'])
    if (!day.ok) return day
    const open = await tx.setback.findFirst({ where: { groupId, dayId, id: setbackId, clearedAt: null }, select: { kind: true } })
    if (!open) return refuse(notFound('What has changed'))
    const clearedAt = await momentAfterPlan(tx, groupId, dayId, now)
    await tx.setback.update({ where: { groupId_id: { groupId, id: setbackId } }, data: { clearedAt } })
    return ok({ reply: { setbackId }, history: [{ subject: `setback ${setbackId}`, detail: { kind: open.kind, cleared: true }, dayId }] })
  },
})
