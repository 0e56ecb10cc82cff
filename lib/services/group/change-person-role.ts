import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockOrganisers, lockPerson } from '@/lib/stores/lock-rows'
import { ChangePersonRole } from '@/shared/forms/person'
import { ok, refuse } from '@/shared/result/result'
import { notFound, notNow, type Refusal } from '@/shared/wording/refusal'

/** Gives a person another role. It counts from their next request: roles are read anew each time. */
export const changePersonRole = defineCommand({
  name: 'change-person-role',
  summary: 'Change a role',
  act: 'change-role',
  schema: ChangePersonRole,
  async run({ tx, actor: { groupId } }, { personId: id, role }) {
    const organisers = await lockOrganisers(tx, groupId)
    if (!(await lockPerson(tx, groupId, id))) return refuse(notFound('Person'))
    if (role !== 'organiser' && isLast(organisers, id)) return refuse(LAST_ORGANISER)

    const where = { groupId_id: { groupId, id } }
    const before = await tx.person.findUniqueOrThrow({ where, select: { role: true } })
    await tx.person.update({ where, data: { role } })
    return ok({
      reply: { personId: id, role },
      history: [{ subject: `person ${id}`, detail: { role: { before: before.role, after: role } } }],
    })
  },
})

/** True when this person is the only organiser who can sign in. */
export const isLast = (organisers: readonly string[], personId: string): boolean => organisers.length === 1 && organisers[0] === personId

export const LAST_ORGANISER: Refusal = notNow(
  'last-organiser',
  'Not changed: the group would have no organiser.',
  'This person is the only organiser who can sign in.',
  'Make somebody else organiser first.',
)
