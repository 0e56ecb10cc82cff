import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { CoverItem } from '@/shared/forms/shopping'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { SHOPPING_STATES } from './shopping-states'

/** Says that a receipt which was entered by itself is for a line of the shopping list, and how much of it it covers. */
export const coverItem = defineCommand({
  name: 'cover-item',
  summary: 'Count a receipt for the list',
  act: 'edit-shopping',
  schema: CoverItem,
  async run(context, { dayId, purchaseId, item, covers, unit }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, SHOPPING_STATES)
    if (!day.ok) return day
    const receipt = await tx.purchase.findFirst({ where: { groupId, id: purchaseId, dayId, shoppingItem: null }, select: { item: true } })
    if (!receipt) return refuse(notFound('Receipt'))
    const columns = { shoppingItem: item, covers, coversUnit: unit }
    await tx.purchase.update({ where: { groupId_id: { groupId, id: purchaseId } }, data: columns })
    return ok({ reply: { purchaseId }, history: [{ subject: `receipt ${purchaseId}`, detail: columns, dayId }] })
  },
})
