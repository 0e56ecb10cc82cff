import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { may } from '@/shared/access/policy'
import { RemovePledge } from '@/shared/forms/pledge'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { isBeforeWork } from './before-work'
import { lockDay } from './lock-day'
import { cannotMove } from './move-day'

/** Takes a promise back, as long as nobody works by it. */
export const removePledge = defineCommand({
  name: 'remove-pledge',
  summary: 'Take the promise back',
  act: 'pledge',
  schema: RemovePledge,
  async run({ tx, actor }, { pledgeId }) {
    const { groupId } = actor
    const where = { groupId_id: { groupId, id: pledgeId } }
    const pledge = await tx.pledge.findUnique({ where, select: { dayId: true, householdId: true, kind: true, item: true } })
    if (!pledge || !may(actor, 'pledge', pledge.householdId)) return refuse(notFound('Promise'))
    const day = await lockDay(tx, groupId, pledge.dayId)
    if (!day) return refuse(notFound('Canning day'))
    if (!isBeforeWork(day.state)) return refuse(cannotMove(day.state, 'Take the promise back'))
    await tx.pledge.delete({ where })
    return ok({ reply: { pledgeId }, history: [{ subject: `pledge ${pledgeId}`, detail: { removed: pledge }, dayId: pledge.dayId }] })
  },
})
