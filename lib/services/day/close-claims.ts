import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import type { Tx } from '@/lib/db/in-transaction'
import { localMomentOf } from '@/lib/time/local-moment'
import { OneDay } from '@/shared/forms/day'
import { ok, refuse } from '@/shared/result/result'
import { sayMoment } from '@/shared/time/say-moment'
import { notFound, notNow } from '@/shared/wording/refusal'
import { lockDay } from './lock-day'
import { cannotMove } from './move-day'

/** Ends the time for asking now, whatever was announced; the day waits for its plan. Of two who close at once, one does and the other is told. */
export const closeClaims = defineCommand({
  name: 'close-claims',
  summary: 'Close the claims',
  act: 'edit-day',
  schema: OneDay,
  async run({ tx, actor: { groupId }, now }, { dayId }) {
    const day = await lockDay(tx, groupId, dayId)
    if (!day) return refuse(notFound('Canning day'))
    if (day.state !== 'claiming') return refuse(cannotMove(day.state, 'Close the claims'))
    if (day.claimsCloseAt) {
      const closedBy = await whoClosed(tx, groupId, dayId, day.claimsCloseAt)
      // Whoever waited for the lock may have begun before the one who closed: for them the closing lies ahead, and is done all the same.
      if (closedBy || day.claimsCloseAt <= now) return refuse(await closedAlready(tx, groupId, day.claimsCloseAt, closedBy))
    }
    // A window that was to open later never opens: it is as if it had been open from the start until now.
    const opened = day.claimsOpenAt && day.claimsOpenAt >= now ? { claimsOpenAt: null, earlyMinutes: 0 } : {}
    await tx.day.update({
      where: { groupId_id: { groupId, id: dayId } },
      data: { ...opened, claimsCloseAt: now, version: day.version + 1 },
    })
    const closedAt = now.toISOString()
    return ok({
      reply: { dayId, claimsCloseAt: closedAt },
      history: [{ subject: `day ${dayId}`, detail: { claimsCloseAt: closedAt }, dayId }],
    })
  },
})

/** Who closed the claims by hand at that moment; nobody, where the moment was announced beforehand. */
async function whoClosed(tx: Tx, groupId: string, dayId: string, closedAt: Date): Promise<string | undefined> {
  const entry = await tx.history.findFirst({
    where: { groupId, dayId, command: 'close-claims' },
    orderBy: { number: 'desc' },
    select: { actorName: true, recordedAt: true },
  })
  return entry?.recordedAt.getTime() === closedAt.getTime() ? entry.actorName : undefined
}

async function closedAlready(tx: Tx, groupId: string, closedAt: Date, closedBy: string | undefined) {
  const group = await tx.group.findUniqueOrThrow({ where: { id: groupId }, select: { timeZone: true } })
  return notNow(
    'claims-closed-already',
    'The claims are closed already.',
    `${closedBy ? `${closedBy} closed them` : 'They closed by themselves'} ${sayMoment(localMomentOf(closedAt, group.timeZone))}.`,
    'Load the page again; nothing more is to be done.',
  )
}
