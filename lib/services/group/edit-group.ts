import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { GROUP_FIELDS, seenMark } from '@/lib/stores/editable-fields'
import { lockGroup } from '@/lib/stores/lock-rows'
import { EditGroup } from '@/shared/forms/group'
import { ok, refuse } from '@/shared/result/result'
import { changedMeanwhile } from '@/shared/wording/changed-meanwhile'
import { badInput, notFound } from '@/shared/wording/refusal'

/** Changes the group's name, time zone, currency and ask line. Its code stays: it begins every lot number. */
export const editGroup = defineCommand({
  name: 'edit-group',
  summary: 'Change the group',
  act: 'edit-group',
  schema: EditGroup,
  async run({ tx, actor: { groupId } }, { seen, ...fields }) {
    if (!(await lockGroup(tx, groupId))) return refuse(notFound('Group'))
    const before = await tx.group.findUniqueOrThrow({ where: { id: groupId }, select: GROUP_FIELDS })
    if (seen && seen !== seenMark(before)) return refuse(changedMeanwhile(before.name))

    if (fields.currency !== before.currency && (await tx.purchase.count({ where: { groupId } })) > 0)
      return refuse(
        badInput({ currency: ['There are receipts in the old currency, and amounts of two currencies do not mix. Take them out first.'] }),
      )
    await tx.group.update({ where: { id: groupId }, data: fields })
    return ok({ reply: { groupId }, history: [{ subject: `group ${groupId}`, detail: { before, after: fields } }] })
  },
})
