import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { AddPurchase } from '@/shared/forms/share'
import { askForAmount, parseMoney } from '@/shared/reckoning/money'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound } from '@/shared/wording/refusal'

/** Writes down who paid for what; the day's pools are shared over the jars of the pool. */
export const addPurchase = defineCommand({
  name: 'add-purchase',
  summary: 'Enter a receipt',
  act: 'edit-reckoning',
  schema: AddPurchase,
  async run(context, { dayId, cost, householdId, ...receipt }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['draft', 'claiming', 'planned', 'running', 'resting'])
    if (!day.ok) return day
    const household = await tx.household.findUnique({ where: { groupId_id: { groupId, id: householdId } }, select: { id: true } })
    if (!household) return refuse(notFound('Household'))
    const amount = parseMoney(cost, day.value.currency)
    if (!amount.ok) return refuse(badInput({ cost: [askForAmount(18, day.value.currency)] }))

    const id = randomUUID()
    const columns = { ...receipt, householdId, costMinor: amount.value }
    await tx.purchase.create({ data: { groupId, id, dayId, ...columns } })
    return ok({ reply: { purchaseId: id, costMinor: amount.value }, history: [{ subject: `receipt ${id}`, detail: columns, dayId }] })
  },
})
