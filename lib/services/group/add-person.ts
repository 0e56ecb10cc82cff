import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { lockPresentHousehold } from '@/lib/stores/lock-rows'
import { may } from '@/shared/access/policy'
import { AddPerson } from '@/shared/forms/person'
import { ok, refuse } from '@/shared/result/result'
import { notAllowed, notFound } from '@/shared/wording/refusal'
import { checkTraining } from './check-training'

/** Adds somebody without an account, such as a child or a guest, under a household. */
export const addPerson = defineCommand({
  name: 'add-person',
  summary: 'Add a person',
  act: 'edit-person',
  schema: AddPerson,
  householdOf: (input) => input.householdId,
  async run({ tx, actor }, input) {
    const { groupId } = actor
    if (!(await lockPresentHousehold(tx, groupId, input.householdId))) return refuse(notFound('Household'))
    if (input.role !== 'helper' && !may(actor, 'change-role')) return refuse(notAllowed('Give somebody a role'))
    const training = checkTraining(actor, [], input.skills)
    if (training) return refuse(training)

    const id = randomUUID()
    await tx.person.create({ data: { groupId, id, ...input } })
    return ok({ reply: { personId: id }, history: [{ subject: `person ${id}`, detail: input }] })
  },
})
