import 'server-only'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { PERSON_FIELDS, seenMark } from '@/lib/stores/editable-fields'
import { lockPresentHousehold, lockPerson } from '@/lib/stores/lock-rows'
import { may } from '@/shared/access/policy'
import { EditPerson } from '@/shared/forms/person'
import { ok, refuse } from '@/shared/result/result'
import { changedMeanwhile } from '@/shared/wording/changed-meanwhile'
import { notAllowed, notFound, type Refusal } from '@/shared/wording/refusal'
import { checkTraining } from './check-training'

/** Changes what is known of a person: a member those of their own household, the organiser anybody. */
export const editPerson = defineCommand({
  name: 'edit-person',
  summary: 'Change a person',
  act: 'edit-person',
  schema: EditPerson,
  async run(context, { personId: id, seen, ...typed }) {
    const { tx, actor } = context
    const { groupId } = actor
    if (!(await lockPerson(tx, groupId, id))) return refuse(notFound('Person'))
    const where = { groupId_id: { groupId, id } }
    const before = await tx.person.findUniqueOrThrow({ where, select: PERSON_FIELDS })
    if (!may(actor, 'edit-person', before.householdId)) return refuse(notFound('Person'))
    if (seen && seen !== seenMark(before)) return refuse(changedMeanwhile(before.name))
    const fields = { ...typed, householdId: typed.householdId ?? before.householdId }
    const stopped = (await checkMove(context, before.householdId, fields.householdId)) ?? checkTraining(actor, before.skills, fields.skills)
    if (stopped) return refuse(stopped)

    await tx.person.update({ where, data: fields })
    return ok({ reply: { personId: id }, history: [{ subject: `person ${id}`, detail: { before, after: fields } }] })
  },
})

/** Only the organiser moves somebody to another household: with the household goes what they may see. */
async function checkMove({ tx, actor }: CommandContext, from: string, to: string): Promise<Refusal | null> {
  if (from === to) return null
  if (!may(actor, 'change-role')) return notAllowed('Move somebody to another household')
  return (await lockPresentHousehold(tx, actor.groupId, to)) ? null : notFound('Household')
}
