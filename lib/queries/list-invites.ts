import 'server-only'
import { database } from '@/lib/db/client'
import { inviteAddress } from '@/lib/services/group/invite-token'
import type { Actor, Role } from '@/shared/access/actor'
import { type InviteProblem, inviteProblem } from '@/shared/wording/invite'

/** One invitation as the list shows it. Its address is not in it. */
export interface ListedInvite {
  readonly id: string
  readonly role: Role
  readonly household: string | null
  readonly email: string | null
  readonly expiresAt: Date
  readonly problem: InviteProblem | null
}

const MOST = 100

/** The group's newest invitations. */
export async function listInvites({ groupId }: Actor, now: Date): Promise<ListedInvite[]> {
  const rows = await database().invite.findMany({
    where: { groupId },
    select: { id: true, role: true, email: true, expiresAt: true, usedAt: true, revokedAt: true, household: { select: { name: true } } },
    orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
    take: MOST,
  })
  return rows.map(({ id, role, email, household, expiresAt, ...rest }) => {
    const problem = inviteProblem({ expiresAt, ...rest }, now)
    return { id, role: role as Role, email, expiresAt, household: household?.name ?? null, problem }
  })
}

const SHOWN_FOR_MS = 10 * 60 * 1000

/** The address of an invitation that this person made in the last ten minutes and nobody has used; later it is shown to nobody. */
export async function freshInviteAddress({ groupId, personId }: Actor, id: string, now: Date): Promise<string | null> {
  const invite = await database().invite.findUnique({
    where: { groupId_id: { groupId, id } },
    select: { createdBy: true, createdAt: true, expiresAt: true, usedAt: true, revokedAt: true },
  })
  const isFresh = invite && invite.createdBy === personId && now.getTime() - invite.createdAt.getTime() < SHOWN_FOR_MS
  return isFresh && !inviteProblem(invite, now) ? inviteAddress(id) : null
}
