import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { KETTLE_FIELDS, seenMark } from '@/lib/stores/editable-fields'
import { lockKettle } from '@/lib/stores/lock-rows'
import { EditKettle } from '@/shared/forms/equipment'
import { ok, refuse } from '@/shared/result/result'
import { changedMeanwhile } from '@/shared/wording/changed-meanwhile'
import { badInput, notFound } from '@/shared/wording/refusal'
import { KETTLE_LABEL_TAKEN } from './add-kettle'
import { kettleColumns } from './kettle-columns'
/** Changes what is known of a kettle, or takes it out of use with the reason. */
export const editKettle = defineCommand({
  name: 'edit-kettle',
  summary: 'Change a kettle',
  act: 'edit-kitchen',
  schema: EditKettle,
  async run({ tx, actor: { groupId } }, { kettleId: id, seen, ...typed }) {
    if (!(await lockKettle(tx, groupId, id))) return refuse(notFound('Kettle'))
    const where = { groupId_id: { groupId, id } }
    const { kitchenId, ...before } = await tx.kettle.findUniqueOrThrow({ where, select: { kitchenId: true, ...KETTLE_FIELDS } })
    if (seen && seen !== seenMark(before)) return refuse(changedMeanwhile(before.label))
    const twin = await tx.kettle.findFirst({ where: { groupId, kitchenId, label: typed.label, NOT: { id } }, select: { id: true } })
    if (twin) return refuse(badInput({ label: [KETTLE_LABEL_TAKEN] }))

    const fields = kettleColumns(typed)
    await tx.kettle.update({ where, data: fields })
    return ok({ reply: { kettleId: id, kitchenId }, history: [{ subject: `kettle ${id}`, detail: { before, after: fields } }] })
  },
})
