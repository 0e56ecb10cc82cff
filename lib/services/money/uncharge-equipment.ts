import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { UnchargeEquipment } from '@/shared/forms/money'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { MONEY_STATES } from './money-states'

/** Takes a piece of equipment off a day on which it was not used. */
export const unchargeEquipment = defineCommand({
  name: 'uncharge-equipment',
  summary: 'Take equipment off the day',
  act: 'edit-reckoning',
  schema: UnchargeEquipment,
  async run(context, { dayId, equipmentId }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, MONEY_STATES)
    if (!day.ok) return day
    const where = { groupId_dayId_equipmentId: { groupId, dayId, equipmentId } }
    const charge = await tx.equipmentCharge.findUnique({ where, select: { chargeMinor: true } })
    if (!charge) return refuse(notFound('Equipment'))
    await tx.equipmentCharge.delete({ where })
    return ok({ reply: { equipmentId }, history: [{ subject: `equipment ${equipmentId}`, detail: { removed: charge }, dayId }] })
  },
})
