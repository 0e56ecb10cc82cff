import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { UseUpLeftOver } from '@/shared/forms/shopping'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'

/** Takes a left-over off the list: used up, spoiled or given away. */
export const useUpLeftOver = defineCommand({
  name: 'use-up-left-over',
  summary: 'It is used up',
  act: 'edit-shopping',
  schema: UseUpLeftOver,
  async run({ tx, actor: { groupId } }, { leftOverId }) {
    const where = { groupId_id: { groupId, id: leftOverId } }
    const lot = await tx.pantryLot.findUnique({ where, select: { item: true, unit: true, householdId: true } })
    if (!lot) return refuse(notFound('Left-over'))
    await tx.pantryLot.delete({ where })
    return ok({ reply: { leftOverId }, history: [{ subject: `left-over ${leftOverId}`, detail: { removed: lot } }] })
  },
})
