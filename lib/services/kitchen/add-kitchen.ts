import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { AddKitchen } from '@/shared/forms/kitchen'
import { ok, refuse } from '@/shared/result/result'
import { badInput } from '@/shared/wording/refusal'

/** Adds a kitchen. Its elevation and how that is known are asked for: the process times hang on them. */
export const addKitchen = defineCommand({
  name: 'add-kitchen',
  summary: 'Add a kitchen',
  act: 'edit-kitchen',
  schema: AddKitchen,
  async run({ tx, actor: { groupId } }, input) {
    const twin = await tx.kitchen.findUnique({ where: { groupId_name: { groupId, name: input.name } }, select: { id: true } })
    if (twin) return refuse(badInput({ name: [KITCHEN_NAME_TAKEN] }))

    const id = randomUUID()
    await tx.kitchen.create({ data: { groupId, id, ...input } })
    return ok({ reply: { kitchenId: id }, history: [{ subject: `kitchen ${id}`, detail: input }] })
  },
})

export const KITCHEN_NAME_TAKEN = 'A kitchen of that name is here already. Choose another name.'
