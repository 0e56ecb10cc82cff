import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { BuyItem } from '@/shared/forms/shopping'
import { askForAmount, parseMoney } from '@/shared/reckoning/money'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound, notNow } from '@/shared/wording/refusal'
import { SHOPPING_STATES } from './shopping-states'

/**
 * Ticks a line of the shopping list: what was bought becomes a receipt of the day, in the pool of its line.
 *
 * The phone names the receipt, so that a tick made without a network can be taken back before or after it arrives.
 */
export const buyItem = defineCommand({
  name: 'buy-item',
  summary: 'Tick what was bought',
  act: 'buy-item',
  schema: BuyItem,
  householdOf: (input) => input.householdId,
  async run(context, { dayId, item, purchaseId, householdId, packs, pack, cost, holds, unit, pool }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, SHOPPING_STATES)
    if (!day.ok) return day
    const household = await tx.household.findUnique({ where: { groupId_id: { groupId, id: householdId } }, select: { id: true } })
    if (!household) return refuse(notFound('Household'))
    const amount = parseMoney(cost, day.value.currency)
    if (!amount.ok) return refuse(badInput({ cost: [askForAmount(18, day.value.currency)] }))
    const where = { groupId_id: { groupId, id: purchaseId } }
    if (await tx.purchase.findUnique({ where, select: { id: true } })) return refuse(TICKED)

    const errand = await tx.shoppingLine.findUnique({ where: { groupId_dayId_item: { groupId, dayId, item } }, select: { pool: true } })
    const covers = holds !== undefined && unit !== undefined ? { covers: packs * holds, coversUnit: unit } : {}
    const columns = {
      item,
      packs,
      pack,
      costMinor: amount.value,
      householdId,
      pool: errand?.pool ?? pool,
      shoppingItem: item,
      ...covers,
    }
    await tx.purchase.create({ data: { groupId, id: purchaseId, dayId, ...columns } })
    return ok({ reply: { purchaseId, costMinor: amount.value }, history: [{ subject: `receipt ${purchaseId}`, detail: columns, dayId }] })
  },
})

const TICKED = notNow(
  'ticked-already',
  'This was ticked already.',
  'The same entry has arrived before.',
  'Load the list again; enter a further purchase as a new one.',
)
