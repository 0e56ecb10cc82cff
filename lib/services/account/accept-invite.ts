import 'server-only'
import { randomUUID } from 'node:crypto'
import type { SignedIn } from '@/lib/auth/current-actor'
import { type Answer, answerOnce } from '@/lib/commands/answer-once'
import { appendHistory } from '@/lib/commands/append-history'
import type { Tx } from '@/lib/db/in-transaction'
import { HOUSEHOLD_NAME_TAKEN } from '@/lib/services/group/add-household'
import { hashInviteToken } from '@/lib/services/group/invite-token'
import type { AcceptInvite } from '@/shared/forms/invite'
import { ok, type Result, refuse } from '@/shared/result/result'
import { inviteIsOver, inviteProblem } from '@/shared/wording/invite'
import { badInput, notFound, notNow, type Refusal } from '@/shared/wording/refusal'

interface LockedInvite {
  readonly groupId: string
  readonly id: string
  readonly role: string
  readonly householdId: string | null
  readonly expiresAt: Date
  readonly usedAt: Date | null
  readonly revokedAt: Date | null
}

/** Takes an invitation up: the person joins its household, or a new one when it names none. One person, once. */
export async function acceptInvite(user: SignedIn, input: AcceptInvite, key: string, now = new Date()): Promise<Result<Answer, Refusal>> {
  const { token, ...typed } = input
  const tokenHash = hashInviteToken(token)
  return answerOnce({ key, by: user.userId, command: 'accept-invite', body: { tokenHash, ...typed } }, async (tx) => {
    const invite = await lockByToken(tx, tokenHash)
    if (!invite) return refuse(notFound('Invitation'))
    const here = await tx.person.findUnique({
      where: { groupId_userId: { groupId: invite.groupId, userId: user.userId } },
      select: { active: true },
    })
    if (here) return refuse(here.active ? ALREADY_HERE : NO_LONGER_HERE)
    const problem = inviteProblem(invite, now)
    if (problem) return refuse(inviteIsOver(problem))

    const household = invite.householdId ? ok(invite.householdId) : await newHousehold(tx, invite.groupId, input)
    if (!household.ok) return household
    return ok(await join(tx, { user, invite, householdId: household.value, name: input.name, now }))
  })
}

/** Locked until the transaction ends: of several who open the same invitation one gets in. */
async function lockByToken(tx: Tx, tokenHash: string): Promise<LockedInvite | undefined> {
  const [invite] = await tx.$queryRaw<LockedInvite[]>`
    SELECT group_id AS "groupId", id, role, household_id AS "householdId", expires_at AS "expiresAt", used_at AS "usedAt", revoked_at AS "revokedAt"
    FROM invite WHERE token_hash = ${tokenHash} FOR UPDATE`
  return invite
}

async function newHousehold(tx: Tx, groupId: string, { householdName: name, headcount }: AcceptInvite): Promise<Result<string, Refusal>> {
  if (!name) return refuse(badInput({ householdName: ['Give your household a name.'] }))
  const taken = await tx.household.findUnique({ where: { groupId_name: { groupId, name } }, select: { id: true } })
  if (taken) return refuse(badInput({ householdName: [HOUSEHOLD_NAME_TAKEN] }))
  const id = randomUUID()
  await tx.household.create({ data: { groupId, id, name, headcount } })
  return ok(id)
}

interface Joining {
  readonly user: SignedIn
  readonly invite: LockedInvite
  readonly householdId: string
  readonly name: string
  readonly now: Date
}

async function join(tx: Tx, { user, invite: { groupId, id, role }, householdId, name, now }: Joining) {
  const personId = randomUUID()
  await tx.person.create({ data: { groupId, id: personId, householdId, userId: user.userId, name, role } })
  await tx.invite.update({ where: { groupId_id: { groupId, id } }, data: { usedAt: now } })
  const entry = { groupId, command: 'accept-invite', subject: `person ${personId}`, detail: { inviteId: id, role, householdId, name } }
  await appendHistory(tx, [{ ...entry, actorId: user.userId, actorName: name, recordedAt: now }])
  return { groupId, personId, householdId }
}

const ALREADY_HERE: Refusal = notNow(
  'already-here',
  'Nothing to do: you are in this group already.',
  'One account is one person in a group.',
  'Open the group from the start page, or sign in with another account.',
)

const NO_LONGER_HERE: Refusal = notNow(
  'no-longer-here',
  'Not joined.',
  'The organiser has noted that you are no longer in this group.',
  'Ask the organiser to note that you are here again.',
)
