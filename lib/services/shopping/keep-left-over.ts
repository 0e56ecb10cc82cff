import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { KeepLeftOver } from '@/shared/forms/shopping'
import { ok, refuse } from '@/shared/result/result'
import { ingredientKey } from '@/shared/supplies/ingredient-words'
import { notFound } from '@/shared/wording/refusal'

/** Writes down what is left of an ingredient and who takes it home; the next day's list begins with it. */
export const keepLeftOver = defineCommand({
  name: 'keep-left-over',
  summary: 'Say who takes what is left',
  act: 'edit-shopping',
  schema: KeepLeftOver,
  async run({ tx, actor: { groupId } }, { dayId = null, item, householdId = null, ...left }) {
    if (dayId && !(await tx.day.findUnique({ where: { groupId_id: { groupId, id: dayId } }, select: { id: true } })))
      return refuse(notFound('Canning day'))
    if (householdId && !(await tx.household.findUnique({ where: { groupId_id: { groupId, id: householdId } }, select: { id: true } })))
      return refuse(notFound('Household'))
    const id = randomUUID()
    const columns = { item: ingredientKey(item), householdId, fromDayId: dayId, ...left }
    await tx.pantryLot.create({ data: { groupId, id, ...columns } })
    return ok({ reply: { leftOverId: id }, history: [{ subject: `left-over ${id}`, detail: columns, ...(dayId ? { dayId } : {}) }] })
  },
})
