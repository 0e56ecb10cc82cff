import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { EditPack } from '@/shared/forms/shopping'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { readPrice } from './read-price'

/** Changes what a pack holds or costs, or says that the shops have none: the list then falls back to another. */
export const editPack = defineCommand({
  name: 'edit-pack',
  summary: 'Change the pack',
  act: 'edit-shopping',
  schema: EditPack,
  async run(context, { packId, holds, unit, price, isShort }) {
    const { tx, actor } = context
    const { groupId } = actor
    const where = { groupId_id: { groupId, id: packId } }
    const pack = await tx.shoppingPack.findUnique({ where, select: { item: true, label: true } })
    if (!pack) return refuse(notFound('Pack'))
    const read = await readPrice(context, price)
    if (!read.ok) return read

    const columns = { holds, unit, priceMinor: read.value, isShort: isShort === 'yes' }
    await tx.shoppingPack.update({ where, data: columns })
    return ok({ reply: { packId }, history: [{ subject: `pack ${packId}`, detail: { ...pack, ...columns } }] })
  },
})
