import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { OneDay } from '@/shared/forms/day'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { lockDay } from './lock-day'
import { moveDay } from './move-day'

/** Calls a day off. A day that runs cannot be cancelled: there is food in jars. */
export const cancelDay = defineCommand({
  name: 'cancel-day',
  summary: 'Cancel the canning day',
  act: 'edit-day',
  schema: OneDay,
  async run({ tx, actor: { groupId } }, { dayId }) {
    const day = await lockDay(tx, groupId, dayId)
    if (!day) return refuse(notFound('Canning day'))
    const moved = await moveDay(tx, groupId, day, 'cancelled', 'Cancel the day')
    if (!moved.ok) return moved
    return ok({ reply: { dayId, state: moved.value }, history: [{ subject: `day ${dayId}`, detail: { state: moved.value }, dayId }] })
  },
})
