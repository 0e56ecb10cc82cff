import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { AskRuleChange } from '@/shared/forms/claim'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound, notNow } from '@/shared/wording/refusal'
import { isBeforeWork } from './before-work'
import { lockDay } from './lock-day'
import { cannotMove } from './move-day'
import { claimantsOf, makeRuleChange, openRuleChange } from './rule-change'

/**
 * Asks every household that claims jars for another rule of sharing. The rule changes when the last of them has agreed; where nobody claims, at once.
 *
 * Asked again when all who still claim have agreed, as after somebody gave up their jars, it is made.
 */
export const askRuleChange = defineCommand({
  name: 'ask-rule-change',
  summary: 'Ask for another rule of sharing',
  act: 'edit-day',
  schema: AskRuleChange,
  async run({ tx, actor: { groupId }, now }, { dayId, shareRule }) {
    const day = await lockDay(tx, groupId, dayId)
    if (!day) return refuse(notFound('Canning day'))
    if (!isBeforeWork(day.state)) return refuse(cannotMove(day.state, 'Ask for another rule of sharing'))
    const { shareRule: fromRule } = await tx.day.findUniqueOrThrow({
      where: { groupId_id: { groupId, id: dayId } },
      select: { shareRule: true },
    })
    if (fromRule === shareRule) return refuse(badInput({ shareRule: ['That is the rule already.'] }))
    const open = await openRuleChange(tx, groupId, dayId)
    if (open && open.toRule !== shareRule) return refuse(ASKED_OTHERWISE)

    const claimants = await claimantsOf(tx, groupId, dayId)
    const change = open ?? { id: randomUUID(), toRule: shareRule, agreed: [] }
    const missing = claimants.filter((householdId) => !change.agreed.includes(householdId))
    if (open && missing.length > 0) return refuse(asked(missing.length))
    if (!open) await tx.ruleChange.create({ data: { groupId, id: change.id, dayId, fromRule, toRule: shareRule, askedAt: now } })
    if (missing.length === 0) await makeRuleChange(tx, groupId, day, change, now)
    const state = missing.length === 0 ? 'made' : 'asked'
    const detail = { dayId, fromRule, toRule: shareRule, state, claimants }
    const reply = { ruleChangeId: change.id, state, toAnswer: missing.length }
    return ok({ reply, history: [{ subject: `rule of day ${dayId}`, detail, dayId }] })
  },
})

const ASKED_OTHERWISE = notNow(
  'rule-change-open',
  'Not asked: the households are being asked for another rule.',
  'Only one question at a time.',
  'Wait for their answers, or take that question back first.',
)

const asked = (households: number) =>
  notNow(
    'rule-change-open',
    'This is asked already.',
    `${households === 1 ? 'One household has' : `${households} households have`} not answered yet.`,
    'Wait for their answers, or take the question back.',
  )
