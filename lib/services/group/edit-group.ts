import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import type { Tx } from '@/lib/db/in-transaction'
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
  async run({ tx, actor: { groupId } }, { seen, ...typed }) {
    if (!(await lockGroup(tx, groupId))) return refuse(notFound('Group'))
    const before = await tx.group.findUniqueOrThrow({ where: { id: groupId }, select: GROUP_FIELDS })
    if (seen && seen !== seenMark(before)) return refuse(changedMeanwhile(before.name))

    const fields = { ...typed, currency: typed.currency ?? before.currency }
    const priced = fields.currency === before.currency ? undefined : await pricedAlready(tx, groupId)
    if (priced)
      return refuse(badInput({ currency: [`There are ${priced} in ${before.currency}, and amounts of two currencies do not mix.`] }))
    await tx.group.update({ where: { id: groupId }, data: fields })
    return ok({ reply: { groupId }, history: [{ subject: `group ${groupId}`, detail: { before, after: fields } }] })
  },
})

/** What has an amount in the group's currency already, which another currency would make another sum; nothing, where its currency may still change. */
async function pricedAlready(tx: Tx, groupId: string): Promise<string | undefined> {
  const [found] = await tx.$queryRaw<{ what: string }[]>`
    SELECT 'receipts' AS what WHERE EXISTS (SELECT FROM purchase WHERE group_id = ${groupId})
    UNION ALL SELECT 'gifts with a credit' WHERE EXISTS (SELECT FROM pledge WHERE group_id = ${groupId} AND credit_minor IS NOT NULL)
    UNION ALL SELECT 'payments' WHERE EXISTS (SELECT FROM settlement_mark WHERE group_id = ${groupId})
    UNION ALL SELECT 'prices of equipment' WHERE EXISTS (SELECT FROM equipment_item WHERE group_id = ${groupId})
    UNION ALL SELECT 'prices of packs' WHERE EXISTS (SELECT FROM shopping_pack WHERE group_id = ${groupId} AND price_minor IS NOT NULL)
    UNION ALL SELECT 'hours with a rate' WHERE EXISTS (SELECT FROM day WHERE group_id = ${groupId} AND labour_rate_minor > 0)`
  return found?.what
}
