import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { lockKitchen } from '@/lib/stores/lock-rows'
import { AddCanner } from '@/shared/forms/equipment'
import { ok, refuse } from '@/shared/result/result'
import { badInput, notFound } from '@/shared/wording/refusal'
import { cannerColumns, NOT_TESTED_YET } from './canner-columns'
import { lastPossibleDate } from './last-date-anywhere'
/** Adds a canner to a kitchen, with its gauge, the last test of it, and how many jars of each size it holds. */
export const addCanner = defineCommand({
  name: 'add-canner',
  summary: 'Add a canner',
  act: 'edit-kitchen',
  schema: AddCanner,
  async run({ tx, actor: { groupId }, now }, { kitchenId, ...typed }) {
    if (!(await lockKitchen(tx, groupId, kitchenId))) return refuse(notFound('Kitchen'))
    const twin = await tx.canner.findUnique({
      where: { groupId_kitchenId_label: { groupId, kitchenId, label: typed.label } },
      select: { id: true },
    })
    if (twin) return refuse(badInput({ label: [CANNER_LABEL_TAKEN] }))
    if (typed.gaugeTestedOn && typed.gaugeTestedOn > (await lastPossibleDate(tx, groupId, now)))
      return refuse(badInput({ gaugeTestedOn: [NOT_TESTED_YET] }))

    const id = randomUUID()
    const fields = cannerColumns(typed)
    await tx.canner.create({ data: { groupId, id, kitchenId, ...fields } })
    return ok({ reply: { cannerId: id }, history: [{ subject: `canner ${id}`, detail: { kitchenId, ...fields } }] })
  },
})

export const CANNER_LABEL_TAKEN = 'A canner of that name stands in this kitchen already. Choose another name.'
