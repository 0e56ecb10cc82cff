import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { HOUSEHOLD_FIELDS, seenMark } from '@/lib/stores/editable-fields'
import { lockHousehold } from '@/lib/stores/lock-rows'
import { EditHousehold } from '@/shared/forms/household'
import { ok, refuse } from '@/shared/result/result'
import { changedMeanwhile } from '@/shared/wording/changed-meanwhile'
import { badInput, notFound } from '@/shared/wording/refusal'
import { HOUSEHOLD_NAME_TAKEN } from './add-household'

/** Changes what is known of a household: a member their own, the organiser any. */
export const editHousehold = defineCommand({
  name: 'edit-household',
  summary: 'Change a household',
  act: 'edit-household',
  schema: EditHousehold,
  householdOf: (input) => input.householdId,
  async run({ tx, actor: { groupId } }, { householdId: id, seen, ...fields }) {
    if (!(await lockHousehold(tx, groupId, id))) return refuse(notFound('Household'))
    const where = { groupId_id: { groupId, id } }
    const before = await tx.household.findUniqueOrThrow({ where, select: HOUSEHOLD_FIELDS })
    if (seen && seen !== seenMark(before)) return refuse(changedMeanwhile(before.name))
    const twin = await tx.household.findFirst({ where: { groupId, name: fields.name, NOT: { id } }, select: { id: true } })
    if (twin) return refuse(badInput({ name: [HOUSEHOLD_NAME_TAKEN] }))

    await tx.household.update({ where, data: fields })
    return ok({ reply: { householdId: id }, history: [{ subject: `household ${id}`, detail: { before, after: fields } }] })
  },
})
