import 'server-only'
import { randomUUID } from 'node:crypto'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { reachOf } from '@/shared/access/policy'
import { MarkPayment } from '@/shared/forms/money'
import { FUND } from '@/shared/reckoning/labour-rule'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { MONEY_STATES } from './money-states'

/** Keeps who says that a payment outside the app was made or received. The payer speaks for the paying, the receiver for the receiving, the organiser for both. */
export const markPayment = defineCommand({
  name: 'mark-payment',
  summary: 'Mark a payment',
  act: 'mark-payment',
  schema: MarkPayment,
  async run(context, { dayId, fromId, toId, amount, side, note }) {
    const { tx, actor, now } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, [...MONEY_STATES, 'closed'])
    if (!day.ok) return day
    const speaker = side === 'paid' ? fromId : toId
    if (reachOf(actor, 'mark-payment') !== 'any' && speaker !== actor.householdId) return refuse(notFound('Payment'))
    if (!(await isParty(context, fromId)) || !(await isParty(context, toId))) return refuse(notFound('Household'))

    const id = randomUUID()
    const columns = { fromPartyId: fromId, toPartyId: toId, amountMinor: amount, side, note }
    await tx.settlementMark.create({ data: { groupId, id, dayId, ...columns, by: actor.name, markedAt: now } })
    return ok({ reply: { markId: id }, history: [{ subject: `payment ${id}`, detail: columns, dayId }] })
  },
})

const isParty = async ({ tx, actor: { groupId } }: CommandContext, id: string) =>
  id === FUND.id || (await tx.household.findUnique({ where: { groupId_id: { groupId, id } }, select: { id: true } })) !== null
