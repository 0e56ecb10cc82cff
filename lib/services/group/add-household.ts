import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { AddHousehold } from '@/shared/forms/household'
import { ok, refuse } from '@/shared/result/result'
import { badInput } from '@/shared/wording/refusal'

/** Adds a household to the group; a name that is taken is refused. */
export const addHousehold = defineCommand({
  name: 'add-household',
  summary: 'Add a household',
  act: 'add-household',
  schema: AddHousehold,
  async run({ tx, actor: { groupId } }, input) {
    const taken = await tx.household.findUnique({ where: { groupId_name: { groupId, name: input.name } }, select: { id: true } })
    if (taken) return refuse(badInput({ name: [HOUSEHOLD_NAME_TAKEN] }))

    const id = randomUUID()
    await tx.household.create({ data: { groupId, id, ...input } })
    return ok({ reply: { householdId: id }, history: [{ subject: `household ${id}`, detail: input }] })
  },
})

export const HOUSEHOLD_NAME_TAKEN = 'A household of that name is here already. Choose another name.'
