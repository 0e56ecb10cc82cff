import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { AnswerRuleChange } from '@/shared/forms/claim'
import { ok, refuse } from '@/shared/result/result'
import { notFound, notNow } from '@/shared/wording/refusal'
import { isBeforeWork } from './before-work'
import { lockDay } from './lock-day'
import { cannotMove } from './move-day'
import { claimantsOf, makeRuleChange, openRuleChange, settleRuleChange } from './rule-change'

/** A household agrees to another rule of sharing, or does not: one "no" ends the question, the last "yes" makes the change. */
export const answerRuleChange = defineCommand({
  name: 'answer-rule-change',
  summary: 'Answer to another rule of sharing',
  act: 'claim-jars',
  schema: AnswerRuleChange,
  householdOf: (input) => input.householdId,
  async run({ tx, actor: { groupId }, now }, { ruleChangeId, householdId, answer }) {
    const asked = await tx.ruleChange.findUnique({ where: { groupId_id: { groupId, id: ruleChangeId } }, select: { dayId: true } })
    const day = asked && (await lockDay(tx, groupId, asked.dayId))
    if (!day) return refuse(notFound('Question'))
    const dayId = day.id
    const change = await openRuleChange(tx, groupId, dayId)
    if (change?.id !== ruleChangeId) return refuse(SETTLED)
    if (!isBeforeWork(day.state)) return refuse(cannotMove(day.state, 'Answer to another rule of sharing'))
    const claimants = await claimantsOf(tx, groupId, dayId)
    if (!claimants.includes(householdId)) return refuse(NO_CLAIM)

    const subject = `rule of day ${dayId}`
    if (answer === 'refuse') {
      await settleRuleChange(tx, groupId, ruleChangeId, 'refused', now)
      return ok({ reply: { ruleChangeId, state: 'refused' }, history: [{ subject, detail: { ruleChangeId, householdId, answer }, dayId }] })
    }
    const agreed = new Set([...change.agreed, householdId])
    if (!change.agreed.includes(householdId)) await tx.ruleAgreement.create({ data: { groupId, ruleChangeId, householdId, agreedAt: now } })
    const toAnswer = claimants.filter((claimant) => !agreed.has(claimant)).length
    if (toAnswer === 0) await makeRuleChange(tx, groupId, day, change, now)
    const state = toAnswer === 0 ? 'made' : 'asked'
    const detail = { ruleChangeId, householdId, answer, state, toRule: change.toRule }
    return ok({ reply: { ruleChangeId, state, toAnswer }, history: [{ subject, detail, dayId }] })
  },
})

const SETTLED = notNow(
  'rule-change-settled',
  'Not saved: this question is settled.',
  'Everybody has agreed, somebody has not, or it was taken back.',
  'Load the page again to see which rule holds.',
)

const NO_CLAIM = notNow(
  'no-claim',
  'Not saved: only households that ask for jars are asked.',
  'This household asks for none.',
  'Ask for jars first, or leave the answer to those who do.',
)
