import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { KITCHEN_FIELDS, seenMark } from '@/lib/stores/editable-fields'
import { lockKitchen } from '@/lib/stores/lock-rows'
import { EditKitchen } from '@/shared/forms/kitchen'
import { ok, refuse } from '@/shared/result/result'
import { changedMeanwhile } from '@/shared/wording/changed-meanwhile'
import { badInput, notFound } from '@/shared/wording/refusal'
import { KITCHEN_NAME_TAKEN } from './add-kitchen'

/** Changes what is known of a kitchen. Processes that were looked up before keep the elevation they were looked up for. */
export const editKitchen = defineCommand({
  name: 'edit-kitchen',
  summary: 'Change a kitchen',
  act: 'edit-kitchen',
  schema: EditKitchen,
  async run({ tx, actor: { groupId } }, { kitchenId: id, seen, ...fields }) {
    if (!(await lockKitchen(tx, groupId, id))) return refuse(notFound('Kitchen'))
    const where = { groupId_id: { groupId, id } }
    const before = await tx.kitchen.findUniqueOrThrow({ where, select: KITCHEN_FIELDS })
    if (seen && seen !== seenMark(before)) return refuse(changedMeanwhile(before.name))
    const twin = await tx.kitchen.findFirst({ where: { groupId, name: fields.name, NOT: { id } }, select: { id: true } })
    if (twin) return refuse(badInput({ name: [KITCHEN_NAME_TAKEN] }))

    await tx.kitchen.update({ where, data: fields })
    return ok({ reply: { kitchenId: id }, history: [{ subject: `kitchen ${id}`, detail: { before, after: fields } }] })
  },
})
