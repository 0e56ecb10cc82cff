import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { CANNER_FIELDS, seenMark } from '@/lib/stores/editable-fields'
import { lockCanner } from '@/lib/stores/lock-rows'
import { EditCanner } from '@/shared/forms/equipment'
import { ok, refuse } from '@/shared/result/result'
import { changedMeanwhile } from '@/shared/wording/changed-meanwhile'
import { badInput, notFound } from '@/shared/wording/refusal'
import { CANNER_LABEL_TAKEN } from './add-canner'
import { cannerColumns, NOT_TESTED_YET } from './canner-columns'
import { lastPossibleDate } from './last-date-anywhere'
/** Changes what is known of a canner, or takes it out of use with the reason. */
export const editCanner = defineCommand({
  name: 'edit-canner',
  summary: 'Change a canner',
  act: 'edit-kitchen',
  schema: EditCanner,
  async run({ tx, actor: { groupId }, now }, { cannerId: id, seen, ...typed }) {
    if (!(await lockCanner(tx, groupId, id))) return refuse(notFound('Canner'))
    const where = { groupId_id: { groupId, id } }
    const { kitchenId, ...before } = await tx.canner.findUniqueOrThrow({ where, select: { kitchenId: true, ...CANNER_FIELDS } })
    if (seen && seen !== seenMark(before)) return refuse(changedMeanwhile(before.label))
    const twin = await tx.canner.findFirst({ where: { groupId, kitchenId, label: typed.label, NOT: { id } }, select: { id: true } })
    if (twin) return refuse(badInput({ label: [CANNER_LABEL_TAKEN] }))
    if (typed.gaugeTestedOn && typed.gaugeTestedOn > (await lastPossibleDate(tx, groupId, now)))
      return refuse(badInput({ gaugeTestedOn: [NOT_TESTED_YET] }))

    const fields = cannerColumns(typed)
    await tx.canner.update({ where, data: fields })
    return ok({ reply: { cannerId: id, kitchenId }, history: [{ subject: `canner ${id}`, detail: { before, after: fields } }] })
  },
})
