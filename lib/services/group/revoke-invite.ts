import 'server-only'
import { defineCommand } from '@/lib/commands/command'
import { lockInvite } from '@/lib/stores/lock-rows'
import { RevokeInvite } from '@/shared/forms/invite'
import { ok, refuse } from '@/shared/result/result'
import { notFound, notNow } from '@/shared/wording/refusal'

/** Takes an invitation back; one that was taken up is refused. */
export const revokeInvite = defineCommand({
  name: 'revoke-invite',
  summary: 'Take an invitation back',
  act: 'invite',
  schema: RevokeInvite,
  async run({ tx, actor: { groupId }, now }, { inviteId: id }) {
    if (!(await lockInvite(tx, groupId, id))) return refuse(notFound('Invitation'))
    const where = { groupId_id: { groupId, id } }
    const invite = await tx.invite.findUniqueOrThrow({ where, select: { usedAt: true, revokedAt: true } })
    if (invite.usedAt)
      return refuse(
        notNow(
          'invite-used',
          'Not taken back: it was taken up already.',
          'Somebody joined with it.',
          'Say under People that they are no longer here.',
        ),
      )

    if (!invite.revokedAt) await tx.invite.update({ where, data: { revokedAt: now } })
    return ok({ reply: { inviteId: id }, history: [{ subject: `invite ${id}`, detail: { revoked: true } }] })
  },
})
