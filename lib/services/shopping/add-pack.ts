import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { AddPack } from '@/shared/forms/shopping'
import { ok, refuse } from '@/shared/result/result'
import { ingredientKey } from '@/shared/supplies/ingredient-words'
import { badInput } from '@/shared/wording/refusal'
import { readPrice } from './read-price'

/** Writes down how a thing is sold; kept by the group, so that the next day's list knows it. */
export const addPack = defineCommand({
  name: 'add-pack',
  summary: 'Add a pack',
  act: 'edit-shopping',
  schema: AddPack,
  async run(context, { item, label, holds, unit, price }) {
    const { tx, actor } = context
    const { groupId } = actor
    const read = await readPrice(context, price)
    if (!read.ok) return read
    const columns = { item: ingredientKey(item), label, holds, unit, priceMinor: read.value }
    const where = { groupId_item_label: { groupId, item: columns.item, label } }
    if (await tx.shoppingPack.findUnique({ where, select: { id: true } }))
      return refuse(badInput({ label: ['That pack is on the list already. Change its price there.'] }))

    const id = randomUUID()
    await tx.shoppingPack.create({ data: { groupId, id, ...columns } })
    return ok({ reply: { packId: id }, history: [{ subject: `pack ${id}`, detail: columns }] })
  },
})
