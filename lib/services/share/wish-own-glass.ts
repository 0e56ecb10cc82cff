import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { WishOwnGlass } from '@/shared/forms/share'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'

/** A household would like the jars that it lent back, with the food in them; the share-out then picks those first, as far as it is known whose a jar is. */
export const wishOwnGlass = defineCommand({
  name: 'wish-own-glass',
  summary: 'Ask for the own jars',
  act: 'claim-jars',
  schema: WishOwnGlass,
  householdOf: (input) => input.householdId,
  async run(context, { dayId, householdId, wish }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['draft', 'claiming', 'planned', 'running', 'resting'])
    if (!day.ok) return day
    const household = await tx.household.findUnique({ where: { groupId_id: { groupId, id: householdId } }, select: { id: true } })
    if (!household) return refuse(notFound('Household'))
    const key = { groupId, dayId, householdId }
    if (wish === 'yes') await tx.ownJarWish.upsert({ where: { groupId_dayId_householdId: key }, create: key, update: {} })
    else await tx.ownJarWish.deleteMany({ where: key })
    return ok({ reply: { householdId, wish }, history: [{ subject: `own jars of ${householdId}`, detail: { wish }, dayId }] })
  },
})
