import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { BURNER_FIELDS, seenMark } from '@/lib/stores/editable-fields'
import { lockBurner } from '@/lib/stores/lock-rows'
import { EditBurner } from '@/shared/forms/equipment'
import { ok, refuse } from '@/shared/result/result'
import { changedMeanwhile } from '@/shared/wording/changed-meanwhile'
import { badInput, notFound } from '@/shared/wording/refusal'
import { BURNER_LABEL_TAKEN } from './add-burner'

/** Changes what is known of a burner, or takes it out of use with the reason. */
export const editBurner = defineCommand({
  name: 'edit-burner',
  summary: 'Change a burner',
  act: 'edit-kitchen',
  schema: EditBurner,
  async run({ tx, actor: { groupId } }, { burnerId: id, seen, ...typed }) {
    if (!(await lockBurner(tx, groupId, id))) return refuse(notFound('Burner'))
    const where = { groupId_id: { groupId, id } }
    const { kitchenId, ...before } = await tx.burner.findUniqueOrThrow({ where, select: { kitchenId: true, ...BURNER_FIELDS } })
    if (seen && seen !== seenMark(before)) return refuse(changedMeanwhile(before.label))
    const twin = await tx.burner.findFirst({ where: { groupId, kitchenId, label: typed.label, NOT: { id } }, select: { id: true } })
    if (twin) return refuse(badInput({ label: [BURNER_LABEL_TAKEN] }))

    const fields = typed
    await tx.burner.update({ where, data: fields })
    return ok({ reply: { burnerId: id, kitchenId }, history: [{ subject: `burner ${id}`, detail: { before, after: fields } }] })
  },
})
