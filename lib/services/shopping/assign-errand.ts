import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockDay } from '@/lib/services/day/lock-day'
import { cannotMove } from '@/lib/services/day/move-day'
import { may } from '@/shared/access/policy'
import { AssignErrand } from '@/shared/forms/shopping'
import { ok, refuse } from '@/shared/result/result'
import { notFound, notNow } from '@/shared/wording/refusal'
import { SHOPPING_STATES } from './shopping-states'

/** Says who buys a line of the list and on which run. A household may take what nobody has taken; only the organiser takes it from somebody. */
export const assignErrand = defineCommand({
  name: 'assign-errand',
  summary: 'Say who buys it',
  act: 'buy-item',
  schema: AssignErrand,
  async run({ tx, actor }, { dayId, item, householdId = null, run, pool }) {
    const { groupId } = actor
    const day = await lockDay(tx, groupId, dayId)
    if (!day) return refuse(notFound('Canning day'))
    if (!SHOPPING_STATES.includes(day.state)) return refuse(cannotMove(day.state, 'Say who buys it'))
    const where = { groupId_dayId_item: { groupId, dayId, item } }
    const errand = await tx.shoppingLine.findUnique({ where, select: { householdId: true, pool: true } })
    const isOwn = householdId === null ? errand?.householdId : householdId
    if (!may(actor, 'buy-item', isOwn)) return refuse(notFound('Household'))
    if (errand?.householdId && !may(actor, 'buy-item', errand.householdId)) return refuse(TAKEN)
    if (householdId && !(await tx.household.findUnique({ where: { groupId_id: { groupId, id: householdId } }, select: { id: true } })))
      return refuse(notFound('Household'))

    // Which jars carry it is the organiser's to change once it is said.
    const columns = { householdId, run, pool: errand && !may(actor, 'edit-shopping') ? errand.pool : pool }
    await tx.shoppingLine.upsert({ where, create: { groupId, dayId, item, ...columns }, update: columns })
    return ok({ reply: { dayId, item }, history: [{ subject: `errand ${item}`, detail: columns, dayId }] })
  },
})

const TAKEN = notNow(
  'taken',
  'Somebody else buys this already.',
  'The list names who.',
  'Settle it with them, or ask the organiser to change it.',
)
