import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { lockKitchen } from '@/lib/stores/lock-rows'
import { AddKettle } from '@/shared/forms/equipment'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound } from '@/shared/wording/refusal'
import { kettleColumns } from './kettle-columns'
/** Adds a kettle to a kitchen, with its volume and what it is made of. */
export const addKettle = defineCommand({
  name: 'add-kettle',
  summary: 'Add a kettle',
  act: 'edit-kitchen',
  schema: AddKettle,
  async run({ tx, actor: { groupId } }, { kitchenId, ...typed }) {
    if (!(await lockKitchen(tx, groupId, kitchenId))) return refuse(notFound('Kitchen'))
    const twin = await tx.kettle.findUnique({
      where: { groupId_kitchenId_label: { groupId, kitchenId, label: typed.label } },
      select: { id: true },
    })
    if (twin) return refuse(badInput({ label: [KETTLE_LABEL_TAKEN] }))

    const id = randomUUID()
    const fields = kettleColumns(typed)
    await tx.kettle.create({ data: { groupId, id, kitchenId, ...fields } })
    return ok({ reply: { kettleId: id }, history: [{ subject: `kettle ${id}`, detail: { kitchenId, ...fields } }] })
  },
})

export const KETTLE_LABEL_TAKEN = 'A kettle of that name stands in this kitchen already. Choose another name.'
