import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { RemovePurchase } from '@/shared/forms/share'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'

/** Takes a receipt out that was entered by mistake; the history keeps it. */
export const removePurchase = defineCommand({
  name: 'remove-purchase',
  summary: 'Take a receipt out',
  act: 'edit-reckoning',
  schema: RemovePurchase,
  async run(context, { dayId, purchaseId }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['draft', 'claiming', 'planned', 'running', 'resting'])
    if (!day.ok) return day
    const receipt = await tx.purchase.findFirst({
      where: { groupId, id: purchaseId, dayId },
      select: { item: true, costMinor: true, householdId: true, pool: true },
    })
    if (!receipt) return refuse(notFound('Receipt'))

    await tx.purchase.delete({ where: { groupId_id: { groupId, id: purchaseId } } })
    return ok({ reply: { purchaseId }, history: [{ subject: `receipt ${purchaseId}`, detail: { removed: receipt }, dayId }] })
  },
})
