import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { may } from '@/shared/access/policy'
import { PutBack } from '@/shared/forms/shopping'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { SHOPPING_STATES } from './shopping-states'

/** Takes a tick of the shopping list back; the history keeps both. */
export const putBack = defineCommand({
  name: 'put-back',
  summary: 'Take the tick back',
  act: 'buy-item',
  schema: PutBack,
  async run(context, { dayId, purchaseId }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, SHOPPING_STATES)
    if (!day.ok) return day
    const receipt = await tx.purchase.findFirst({
      where: { groupId, id: purchaseId, dayId, shoppingItem: { not: null } },
      select: { item: true, costMinor: true, householdId: true, pool: true },
    })
    if (!receipt || !may(actor, 'buy-item', receipt.householdId)) return refuse(notFound('Receipt'))

    await tx.purchase.delete({ where: { groupId_id: { groupId, id: purchaseId } } })
    return ok({ reply: { purchaseId }, history: [{ subject: `receipt ${purchaseId}`, detail: { removed: receipt }, dayId }] })
  },
})
