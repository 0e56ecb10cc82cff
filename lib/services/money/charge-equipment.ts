import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { ChargeEquipment } from '@/shared/forms/money'
import { equipmentCharge } from '@/shared/reckoning/equipment-charge'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { MONEY_STATES } from './money-states'

/** Has a day carry its part of a piece of equipment; its owner is credited. The part is fixed at that moment. */
export const chargeEquipment = defineCommand({
  name: 'charge-equipment',
  summary: 'Count equipment for the day',
  act: 'edit-reckoning',
  schema: ChargeEquipment,
  async run(context, { dayId, equipmentId, pool }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, MONEY_STATES)
    if (!day.ok) return day
    const item = await tx.equipmentItem.findUnique({ where: { groupId_id: { groupId, id: equipmentId } } })
    if (!item) return refuse(notFound('Equipment'))
    const chargeMinor = equipmentCharge(item.priceMinor, item.years, item.daysAYear)
    await tx.equipmentCharge.upsert({
      where: { groupId_dayId_equipmentId: { groupId, dayId, equipmentId } },
      create: { groupId, dayId, equipmentId, chargeMinor, pool },
      update: { chargeMinor, pool },
    })
    const detail = { name: item.name, chargeMinor, pool }
    return ok({ reply: { equipmentId, chargeMinor }, history: [{ subject: `equipment ${equipmentId}`, detail, dayId }] })
  },
})
