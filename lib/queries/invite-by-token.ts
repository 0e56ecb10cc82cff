import 'server-only'
import { database } from '@/lib/db/client'
import { hashInviteToken } from '@/lib/services/group/invite-token'
import type { Role } from '@/shared/access/actor'
import { InviteToken } from '@/shared/forms/invite'
import { type InviteProblem, inviteProblem } from '@/shared/wording/invite'

/** What somebody may know who holds an invitation's address, and no more. */
export interface OpenedInvite {
  readonly group: string
  readonly groupId: string
  readonly role: Role
  /** The household to join; null when a new one is made. */
  readonly household: string | null
  readonly expiresAt: Date
  readonly problem: InviteProblem | null
}

/** The invitation behind a token, or null when there is none. */
export async function inviteByToken(token: string, now: Date): Promise<OpenedInvite | null> {
  if (!InviteToken.safeParse(token).success) return null
  const invite = await database().invite.findUnique({
    where: { tokenHash: hashInviteToken(token) },
    select: {
      groupId: true,
      role: true,
      expiresAt: true,
      usedAt: true,
      revokedAt: true,
      group: { select: { name: true } },
      household: { select: { name: true } },
    },
  })
  if (!invite) return null
  const { groupId, role, expiresAt, group, household } = invite
  return {
    group: group.name,
    groupId,
    role: role as Role,
    household: household?.name ?? null,
    expiresAt,
    problem: inviteProblem(invite, now),
  }
}
