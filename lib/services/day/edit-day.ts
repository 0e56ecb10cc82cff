import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { EditDay } from '@/shared/forms/day'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound, notNow, type Refusal } from '@/shared/wording/refusal'
import { isBeforeWork } from './before-work'
import { checkDayInput } from './check-day-input'
import { lockDay } from './lock-day'
import { whyRuleStays } from './rule-change'

/** Changes a day's date, hours or rules; refused when somebody changed it since the form was filled, or when work has begun. */
export const editDay = defineCommand({
  name: 'edit-day',
  summary: 'Change the canning day',
  act: 'edit-day',
  schema: EditDay,
  async run({ tx, actor: { groupId }, now }, { dayId, version, ...input }) {
    const day = await lockDay(tx, groupId, dayId)
    if (!day) return refuse(notFound('Canning day'))
    if (!isBeforeWork(day.state)) return refuse(TOO_LATE)
    if (day.version !== version) return refuse(CHANGED_MEANWHILE)
    const checked = await checkDayInput(tx, groupId, input, now, day.claimsCloseAt)
    if (!checked.ok) return checked
    const { kitchenId } = checked.value
    if (kitchenId !== day.kitchenId && (await tx.preparation.count({ where: { groupId, dayId } })) > 0) return refuse(KITCHEN_STAYS)
    const ruleStays = await whyRuleStays(tx, groupId, dayId, input.shareRule)
    if (ruleStays) return refuse(ruleStays)
    if (checked.value.claimsCloseAt && day.claimsOpenAt && checked.value.claimsCloseAt <= day.claimsOpenAt) return refuse(OPENS_LATER)

    await tx.day.update({ where: { groupId_id: { groupId, id: dayId } }, data: { ...checked.value, version: version + 1 } })
    return ok({ reply: { dayId, version: version + 1 }, history: [{ subject: `day ${dayId}`, detail: input, dayId }] })
  },
})

const TOO_LATE: Refusal = notNow(
  'day-has-begun',
  'Not saved: the hours of this day cannot change now.',
  'Work has begun, or the day is over.',
  'Note on the floor what happens otherwise than planned.',
)

const CHANGED_MEANWHILE: Refusal = notNow(
  'changed-meanwhile',
  'Not saved: somebody else changed this day while you were typing.',
  'What you typed was checked against an older version.',
  'Load the page again, look at what changed, and enter yours once more.',
)

const OPENS_LATER: Refusal = badInput({
  claimsCloseAt: ['Claims of this day open later than that. Change the time for asking on the claims page.'],
})

const KITCHEN_STAYS: Refusal = notNow(
  'kitchen-stays',
  'Not saved: the kitchen cannot change now.',
  'Recipes are chosen, and their process times hold at the elevation of this kitchen only.',
  'Take the recipes out first, or plan a new day in the other kitchen.',
)
