import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { AddEquipment } from '@/shared/forms/money'
import { askForAmount, parseMoney } from '@/shared/reckoning/money'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound } from '@/shared/wording/refusal'

/** Enters a piece of equipment with its price and its life, so that each day it is used carries its part. */
export const addEquipment = defineCommand({
  name: 'add-equipment',
  summary: 'Add equipment with its price',
  act: 'edit-reckoning',
  schema: AddEquipment,
  async run({ tx, actor: { groupId } }, { price, ...input }) {
    const household = await tx.household.findUnique({ where: { groupId_id: { groupId, id: input.householdId } }, select: { id: true } })
    if (!household) return refuse(notFound('Household'))
    const { currency } = await tx.group.findUniqueOrThrow({ where: { id: groupId }, select: { currency: true } })
    const amount = parseMoney(price, currency)
    if (!amount.ok) return refuse(badInput({ price: [askForAmount(89, currency)] }))
    const twin = await tx.equipmentItem.findUnique({ where: { groupId_name: { groupId, name: input.name } }, select: { id: true } })
    if (twin) return refuse(badInput({ name: ['There is one of that name already. Choose another.'] }))

    const id = randomUUID()
    const columns = { ...input, priceMinor: amount.value }
    await tx.equipmentItem.create({ data: { groupId, id, ...columns } })
    return ok({ reply: { equipmentId: id }, history: [{ subject: `equipment ${id}`, detail: columns }] })
  },
})
