import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { UnlockTask } from '@/shared/forms/replan'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'

/** Lets the planner move a task again that was fixed by hand. */
export const unlockTask = defineCommand({
  name: 'unlock-task',
  summary: 'Unlock a task',
  act: 'plan-day',
  schema: UnlockTask,
  async run(context, { dayId, lockId }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['claiming', 'planned', 'running'])
    if (!day.ok) return day
    const lock = await tx.planLock.findFirst({ where: { groupId, dayId, id: lockId } })
    if (!lock) return refuse(notFound('Lock'))
    await tx.planLock.delete({ where: { groupId_id: { groupId, id: lockId } } })
    const { preparationId, batch, task, at, equipmentId, personId } = lock
    const detail = { lockId, preparationId, batch, task, at, equipmentId, personId }
    return ok({ reply: { dayId, lockId }, history: [{ subject: `day ${dayId}`, detail, dayId }] })
  },
})
