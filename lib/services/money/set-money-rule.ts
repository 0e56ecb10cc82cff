import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { SetMoneyRule } from '@/shared/forms/money'
import { askForAmount, parseMoney } from '@/shared/reckoning/money'
import { ok, refuse } from '@/shared/result/result'
import { badInput } from '@/shared/wording/refusal'
import { RULE_STATES } from './money-states'

/** Says how hours count in the money of a day; only before anybody works, so that nobody works by another rule than was published. */
export const setMoneyRule = defineCommand({
  name: 'set-money-rule',
  summary: 'Say how hours count',
  act: 'edit-reckoning',
  schema: SetMoneyRule,
  async run(context, { dayId, labourRule, leastHours, percent, rate }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, RULE_STATES)
    if (!day.ok) return day
    const amount = rate === undefined ? null : parseMoney(rate, day.value.currency)
    if (amount && !amount.ok) return refuse(badInput({ rate: [askForAmount(12, day.value.currency)] }))
    if (labourRule === 'credit' && !amount) return refuse(badInput({ rate: ['Say what an hour is worth.'] }))

    const columns = {
      labourRule,
      labourMinutes: Math.round(leastHours * 60),
      labourPercent: percent,
      labourRateMinor: amount?.ok ? amount.value : 0,
    }
    await tx.day.update({ where: { groupId_id: { groupId, id: dayId } }, data: { ...columns, version: { increment: 1 } } })
    return ok({ reply: { dayId, labourRule }, history: [{ subject: `money of day ${dayId}`, detail: columns, dayId }] })
  },
})
