import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { lockKitchen } from '@/lib/stores/lock-rows'
import { AddBurner } from '@/shared/forms/equipment'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound } from '@/shared/wording/refusal'

/** Adds a burner to a kitchen, with its power and circuit. */
export const addBurner = defineCommand({
  name: 'add-burner',
  summary: 'Add a burner',
  act: 'edit-kitchen',
  schema: AddBurner,
  async run({ tx, actor: { groupId } }, { kitchenId, ...typed }) {
    if (!(await lockKitchen(tx, groupId, kitchenId))) return refuse(notFound('Kitchen'))
    const twin = await tx.burner.findUnique({
      where: { groupId_kitchenId_label: { groupId, kitchenId, label: typed.label } },
      select: { id: true },
    })
    if (twin) return refuse(badInput({ label: [BURNER_LABEL_TAKEN] }))

    const id = randomUUID()
    const fields = typed
    await tx.burner.create({ data: { groupId, id, kitchenId, ...fields } })
    return ok({ reply: { burnerId: id }, history: [{ subject: `burner ${id}`, detail: { kitchenId, ...fields } }] })
  },
})

export const BURNER_LABEL_TAKEN = 'A burner of that name stands in this kitchen already. Choose another name.'
