import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { OneDay } from '@/shared/forms/day'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { lockDay } from './lock-day'
import { cannotMove } from './move-day'

/** Ends the time for asking now, whatever was announced; the day waits for its plan. */
export const closeClaims = defineCommand({
  name: 'close-claims',
  summary: 'Close the claims',
  act: 'edit-day',
  schema: OneDay,
  async run({ tx, actor: { groupId }, now }, { dayId }) {
    const day = await lockDay(tx, groupId, dayId)
    if (!day) return refuse(notFound('Canning day'))
    if (day.state !== 'claiming') return refuse(cannotMove(day.state, 'Close the claims'))
    await tx.day.update({
      where: { groupId_id: { groupId, id: dayId } },
      data: { claimsCloseAt: now, version: day.version + 1 },
    })
    const closedAt = now.toISOString()
    return ok({
      reply: { dayId, claimsCloseAt: closedAt },
      history: [{ subject: `day ${dayId}`, detail: { claimsCloseAt: closedAt }, dayId }],
    })
  },
})
