import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { WithdrawRuleChange } from '@/shared/forms/claim'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { lockDay } from './lock-day'
import { openRuleChange, settleRuleChange } from './rule-change'

/** Takes the question for another rule back; the published one stays. */
export const withdrawRuleChange = defineCommand({
  name: 'withdraw-rule-change',
  summary: 'Take back the question for another rule',
  act: 'edit-day',
  schema: WithdrawRuleChange,
  async run({ tx, actor: { groupId }, now }, { ruleChangeId }) {
    const asked = await tx.ruleChange.findUnique({ where: { groupId_id: { groupId, id: ruleChangeId } }, select: { dayId: true } })
    const day = asked && (await lockDay(tx, groupId, asked.dayId))
    if (!day || (await openRuleChange(tx, groupId, day.id))?.id !== ruleChangeId) return refuse(notFound('Question'))
    await settleRuleChange(tx, groupId, ruleChangeId, 'withdrawn', now)
    const detail = { ruleChangeId, state: 'withdrawn' }
    return ok({ reply: { ruleChangeId, state: 'withdrawn' }, history: [{ subject: `rule of day ${day.id}`, detail, dayId: day.id }] })
  },
})
