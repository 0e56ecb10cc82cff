import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { CountHours } from '@/shared/forms/money'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { MONEY_STATES } from './money-states'

/** Writes down how many hours a household gave; a second count takes the place of the first. */
export const countHours = defineCommand({
  name: 'count-hours',
  summary: 'Count the hours',
  act: 'edit-reckoning',
  schema: CountHours,
  async run(context, { dayId, householdId, hours }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, MONEY_STATES)
    if (!day.ok) return day
    const household = await tx.household.findUnique({ where: { groupId_id: { groupId, id: householdId } }, select: { id: true } })
    if (!household) return refuse(notFound('Household'))
    const minutes = Math.round(hours * 60)
    await tx.hoursWorked.upsert({
      where: { groupId_dayId_householdId: { groupId, dayId, householdId } },
      create: { groupId, dayId, householdId, minutes },
      update: { minutes },
    })
    return ok({ reply: { householdId, minutes }, history: [{ subject: `hours of ${householdId}`, detail: { minutes }, dayId }] })
  },
})
