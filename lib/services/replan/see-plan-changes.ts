import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { SeePlanChanges } from '@/shared/forms/replan'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'

/** A person has seen what a new plan changes for them; from then on their list marks only what is newer. */
export const seePlanChanges = defineCommand({
  name: 'see-plan-changes',
  summary: 'Mark the changes as seen',
  act: 'see-plan',
  schema: SeePlanChanges,
  async run({ tx, actor: { groupId, personId } }, { dayId, number }) {
    const plan = await tx.plan.findFirst({ where: { groupId, dayId, number }, select: { number: true } })
    if (!plan) return refuse(notFound('Plan'))
    const key = { groupId, dayId, personId }
    await tx.planSeen.upsert({ where: { groupId_dayId_personId: key }, create: { ...key, number }, update: { number } })
    return ok({ reply: { dayId, number }, history: [{ subject: `day ${dayId}`, detail: { seen: number }, dayId }] })
  },
})
