import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { RemovePack } from '@/shared/forms/shopping'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'

/** Takes a pack out that nobody sells any more; receipts keep its name. */
export const removePack = defineCommand({
  name: 'remove-pack',
  summary: 'Take the pack out',
  act: 'edit-shopping',
  schema: RemovePack,
  async run({ tx, actor: { groupId } }, { packId }) {
    const where = { groupId_id: { groupId, id: packId } }
    const pack = await tx.shoppingPack.findUnique({ where, select: { item: true, label: true } })
    if (!pack) return refuse(notFound('Pack'))
    await tx.shoppingPack.delete({ where })
    return ok({ reply: { packId }, history: [{ subject: `pack ${packId}`, detail: { removed: pack } }] })
  },
})
