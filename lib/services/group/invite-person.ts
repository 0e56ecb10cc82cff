import 'server-only'
import { randomUUID } from 'node:crypto'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { wakeMailSender } from '@/lib/jobs/add-job'
import { lockPresentHousehold } from '@/lib/stores/lock-rows'
import { roleName } from '@/shared/access/actor'
import { InvitePerson } from '@/shared/forms/invite'
import { ok, refuse } from '@/shared/result/result'
import { notFound } from '@/shared/wording/refusal'
import { hashInviteToken, inviteAddress, inviteToken } from './invite-token'

const DAY_MS = 24 * 60 * 60 * 1000

/** Makes an invitation. With an e-mail address the mail is queued in the same transaction, with the job that sends it. */
export const invitePerson = defineCommand({
  name: 'invite-person',
  summary: 'Invite somebody',
  act: 'invite',
  schema: InvitePerson,
  async run(context, input) {
    const { tx, actor, now } = context
    const { role, householdId = null, email = null, days } = input
    if (householdId && !(await lockPresentHousehold(tx, actor.groupId, householdId))) return refuse(notFound('Household'))

    const id = randomUUID()
    const expiresAt = new Date(now.getTime() + days * DAY_MS)
    const kept = { groupId: actor.groupId, id, role, householdId, email, createdBy: actor.personId, expiresAt, createdAt: now }
    await tx.invite.create({ data: { ...kept, tokenHash: hashInviteToken(inviteToken(id)) } })
    if (email) await queueMail(context, { inviteId: id, email, role: roleName(role), days })
    // The address stays out of the history: a history is for ever.
    return ok({
      reply: { inviteId: id },
      history: [{ subject: `invite ${id}`, detail: { role, householdId, mailed: email !== null, expiresAt } }],
    })
  },
})

interface Invitation {
  readonly inviteId: string
  readonly email: string
  readonly role: string
  readonly days: number
}

async function queueMail({ tx, actor, now }: CommandContext, { inviteId, email, role, days }: Invitation): Promise<void> {
  const { name } = await tx.group.findUniqueOrThrow({ where: { id: actor.groupId }, select: { name: true } })
  const text = [
    `${actor.name} asks you to join ${name} on Lidsong, as: ${role}.`,
    `Open this address within ${days} ${days === 1 ? 'day' : 'days'}. Whoever opens it first can take it up, so keep it to yourself:`,
    inviteAddress(inviteId),
    'If you do not know them, do nothing.',
  ].join('\n\n')
  await tx.outgoingMail.create({
    data: {
      id: randomUUID(),
      groupId: actor.groupId,
      to: email,
      subject: `${name} asks you to join`,
      text: `${text}\n`,
      createdAt: now,
      nextTryAt: now,
    },
  })
  await wakeMailSender(tx)
}
