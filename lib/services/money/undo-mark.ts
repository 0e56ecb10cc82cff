import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { reachOf } from '@/shared/access/policy'
import { UndoMark } from '@/shared/forms/money'
import { ok, refuse } from '@/shared/result/result'
import { notFound, notNow } from '@/shared/wording/refusal'
import { MONEY_STATES } from './money-states'

/** Takes a mark of a payment back by a new one that names it; both stay. */
export const undoMark = defineCommand({
  name: 'undo-mark',
  summary: 'Take the mark back',
  act: 'mark-payment',
  schema: UndoMark,
  async run(context, { dayId, markId, note }) {
    const { tx, actor, now } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, [...MONEY_STATES, 'closed'])
    if (!day.ok) return day
    const mark = await tx.settlementMark.findFirst({ where: { groupId, id: markId, dayId, undoes: null } })
    const speaker = mark?.side === 'paid' ? mark.fromPartyId : mark?.toPartyId
    if (!mark || (reachOf(actor, 'mark-payment') !== 'any' && speaker !== actor.householdId)) return refuse(notFound('Payment'))
    const twin = await tx.settlementMark.findUnique({ where: { groupId_undoes: { groupId, undoes: markId } }, select: { id: true } })
    if (twin) return refuse(UNDONE)

    const id = randomUUID()
    await tx.settlementMark.create({ data: { ...mark, id, note, by: actor.name, markedAt: now, undoes: markId } })
    return ok({ reply: { markId: id }, history: [{ subject: `payment ${id}`, detail: { undoes: markId, note }, dayId }] })
  },
})

const UNDONE = notNow('taken-back', 'This mark was taken back already.', 'The list shows both.', 'Mark the payment anew if it was made.')
