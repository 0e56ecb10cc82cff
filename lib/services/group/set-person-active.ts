import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockOrganisers, lockPerson } from '@/lib/stores/lock-rows'
import { SetPersonActive } from '@/shared/forms/person'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { isLast, LAST_ORGANISER } from './change-person-role'

/** Says that a person is no longer here, or here again. Whoever is not here has no part in the group from their next request on; what they did stays. */
export const setPersonActive = defineCommand({
  name: 'set-person-active',
  summary: 'Say who is here',
  act: 'change-role',
  schema: SetPersonActive,
  async run({ tx, actor: { groupId } }, { personId: id, active: answer }) {
    const active = answer === 'yes'
    const organisers = await lockOrganisers(tx, groupId)
    if (!(await lockPerson(tx, groupId, id))) return refuse(notFound('Person'))
    if (!active && isLast(organisers, id)) return refuse(LAST_ORGANISER)

    await tx.person.update({ where: { groupId_id: { groupId, id } }, data: { active } })
    return ok({ reply: { personId: id, active }, history: [{ subject: `person ${id}`, detail: { active } }] })
  },
})
