import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import type { SignedIn } from '@/lib/auth/current-actor'
import { deliverMail } from '@/lib/effects/deliver-mail'
import { inviteByToken } from '@/lib/queries/invite-by-token'
import { freshInviteAddress, listInvites } from '@/lib/queries/list-invites'
import { acceptInvite } from '@/lib/services/account/accept-invite'
import { inviteToken } from '@/lib/services/group/invite-token'
import type { AcceptInvite } from '@/shared/forms/invite'
import { freshDatabase } from '../../../support/fresh-database'
import { mailOutbox } from '../../../support/mail-outbox'
import { done, makeGroup, outcome, send, type TestGroup } from '../../../support/two-groups'

const fresh = freshDatabase()
const { mails } = mailOutbox()
let ours: TestGroup
let theirs: TestGroup

beforeAll(async () => {
  ours = await makeGroup(fresh.client, 'ours')
  theirs = await makeGroup(fresh.client, 'theirs')
})

const DAY_MS = 24 * 60 * 60 * 1000

async function stranger(): Promise<SignedIn> {
  const userId = randomUUID()
  await fresh.client.user.create({ data: { id: userId, email: `${userId}@example.org` } })
  return { userId, name: 'Gil', email: `${userId}@example.org` }
}

async function invite(input: object = {}): Promise<{ id: string; token: string }> {
  const { inviteId } = await done(ours.as.organiser, 'invite-person', input)
  const id = String(inviteId)
  return { id, token: inviteToken(id) }
}

const accept = (user: SignedIn, input: Partial<AcceptInvite> & { token: string }, now = new Date(), key: string = randomUUID()) =>
  acceptInvite(user, { name: 'Gil', headcount: 4, householdName: `Household ${randomUUID()}`, ...input }, key, now)

describe('an invitation', () => {
  it('is made by the organiser alone', async () => {
    for (const role of ['station-lead', 'operator', 'member', 'helper', 'visitor'] as const)
      expect(outcome(await send(ours.as[role], 'invite-person', {}))).toBe('403 not-allowed')
    expect(outcome(await send(ours.as.organiser, 'invite-person', {}))).toBe('saved')
  })

  it.each([
    ['an unknown role', { role: 'owner' }],
    ['no day to live', { days: '0' }],
    ['more than a month to live', { days: '31' }],
    ['an address that is none', { email: 'gil at example' }],
    ['an address with a line break', { email: 'gil@example.org\nBcc: all@example.org' }],
    ['an entry nobody asked for', { groupId: 'theirs' }],
  ])('is refused with %s', async (_, wrong) => {
    expect(outcome(await send(ours.as.organiser, 'invite-person', wrong))).toBe('422 bad-input')
  })

  it('into a household of another group is answered as not found', async () => {
    expect(outcome(await send(ours.as.organiser, 'invite-person', { householdId: theirs.ash }))).toBe('404 not-found')
  })

  it('is kept as a hash: its address is in no table and no history', async () => {
    const { id, token } = await invite()
    const tables = ['invite', 'history', 'idempotent_request', 'outgoing_mail'] as const
    for (const table of tables) {
      const { rows } = await fresh.asOwner(`SELECT count(*)::int AS found FROM ${table} AS kept WHERE kept::text LIKE '%' || $1 || '%'`, [
        token,
      ])
      expect([table, rows[0]?.found]).toEqual([table, 0])
    }
    expect((await inviteByToken(token, new Date()))?.groupId).toBe(ours.groupId)
    expect(id).not.toBe(token)
  })

  it('shows its address to whoever made it, for ten minutes and while it is open', async () => {
    const { id, token } = await invite()
    const now = new Date()
    expect(await freshInviteAddress(ours.as.organiser, id, now)).toContain(`/invite/${token}`)
    expect(await freshInviteAddress(ours.as.organiser, id, new Date(now.getTime() + 11 * 60 * 1000))).toBeNull()
    expect(await freshInviteAddress({ ...ours.as.organiser, personId: 'another' }, id, now)).toBeNull()
    expect(await freshInviteAddress(theirs.as.organiser, id, now)).toBeNull()
    await done(ours.as.organiser, 'revoke-invite', { inviteId: id })
    expect(await freshInviteAddress(ours.as.organiser, id, now)).toBeNull()
  })

  it('is mailed once the invitation is saved, and not when it is refused', async () => {
    const { token } = await invite({ email: 'Gil@Example.org', role: 'operator' })
    const waiting = await fresh.asOwner(`SELECT key FROM graphile_worker._private_jobs WHERE key = 'deliver-mail'`)
    expect(waiting.rows).toHaveLength(1)
    await deliverMail()
    expect(mails().join('\n').replaceAll('=\n', '')).toContain(token)
    expect(mails().join()).toContain('To: gil@example.org')
    await send(ours.as.organiser, 'invite-person', { email: 'nobody@example.org', householdId: 'nowhere' })
    expect(await fresh.client.outgoingMail.count({ where: { to: 'nobody@example.org' } })).toBe(0)
  })
})

describe('taking an invitation up', () => {
  it('joins with a new household, in the role that was offered', async () => {
    const user = await stranger()
    const { token } = await invite({ role: 'operator' })
    expect(outcome(await accept(user, { token, householdName: 'Fennick' }))).toBe('saved')
    const person = await fresh.client.person.findUniqueOrThrow({
      where: { groupId_userId: { groupId: ours.groupId, userId: user.userId } },
      include: { household: true },
    })
    expect(person).toMatchObject({ role: 'operator', name: 'Gil', household: { name: 'Fennick', headcount: 4 } })
    expect(await fresh.client.history.count({ where: { command: 'accept-invite', actorId: user.userId } })).toBe(1)
  })

  it('joins the household that the invitation names, whatever else was typed', async () => {
    const user = await stranger()
    const { token } = await invite({ householdId: ours.birch })
    expect(outcome(await accept(user, { token, householdName: 'Elsewhere' }))).toBe('saved')
    const person = await fresh.client.person.findUniqueOrThrow({
      where: { groupId_userId: { groupId: ours.groupId, userId: user.userId } },
    })
    expect(person.householdId).toBe(ours.birch)
    expect(await fresh.client.household.count({ where: { name: 'Elsewhere' } })).toBe(0)
  })

  it('is refused when the invitation has expired, was used or was taken back, each said apart', async () => {
    const expired = await invite({ days: 1 })
    const used = await invite()
    await accept(await stranger(), used)
    const revoked = await invite()
    await done(ours.as.organiser, 'revoke-invite', { inviteId: revoked.id })
    const later = new Date(Date.now() + DAY_MS + 1000)
    const people = await fresh.client.person.count()
    const answers = [
      await accept(await stranger(), expired, later),
      await accept(await stranger(), used),
      await accept(await stranger(), revoked),
    ]
    expect(answers.map(outcome)).toEqual(['410 invite-expired', '410 invite-used', '410 invite-revoked'])
    for (const answer of answers)
      expect(!answer.ok && [answer.problem.what, answer.problem.why, answer.problem.instead].every(Boolean)).toBe(true)
    expect(await fresh.client.person.count()).toBe(people)
  })

  it('is refused to somebody who is in the group, and the invitation stays open', async () => {
    const { token } = await invite()
    const { userId, name } = ours.as.member
    expect(outcome(await accept({ userId, name, email: 'x@example.org' }, { token }))).toBe('409 already-here')
    await fresh.client.person.updateMany({ where: { userId: ours.as.visitor.userId }, data: { active: false } })
    expect(outcome(await accept({ ...ours.as.visitor, email: 'y@example.org' }, { token }))).toBe('409 no-longer-here')
    expect(outcome(await accept(await stranger(), { token }))).toBe('saved')
  })

  it('asks for another name when the household is there already, and for one when none was typed', async () => {
    const { token } = await invite()
    const user = await stranger()
    expect(outcome(await accept(user, { token, householdName: 'Ash' }))).toBe('422 bad-input')
    expect(outcome(await accept(user, { token, householdName: undefined }))).toBe('422 bad-input')
    expect(outcome(await accept(user, { token, householdName: 'Ashby' }))).toBe('saved')
  })

  it('with an address that nobody made finds nothing', async () => {
    expect(outcome(await accept(await stranger(), { token: 'x'.repeat(43) }))).toBe('404 not-found')
    expect(await inviteByToken('x'.repeat(43), new Date())).toBeNull()
    expect(await inviteByToken("' OR 1=1 --", new Date())).toBeNull()
  })

  it('lets one of four in, in each of twenty rounds', async () => {
    for (let round = 0; round < 20; round++) {
      const { token } = await invite({ householdId: ours.ash })
      const users = await Promise.all([1, 2, 3, 4].map(stranger))
      const answers = await Promise.all(users.map((user) => accept(user, { token })))
      expect(answers.map(outcome).sort()).toEqual(['410 invite-used', '410 invite-used', '410 invite-used', 'saved'])
      expect(await fresh.client.person.count({ where: { userId: { in: users.map(({ userId }) => userId) } } })).toBe(1)
    }
  })

  it('counts once for one person who taps twice', async () => {
    const user = await stranger()
    const { token } = await invite()
    const [key, now, typed] = [randomUUID(), new Date(), { token, householdName: 'Tapped twice' }]
    const answers = await Promise.all([accept(user, typed, now, key), accept(user, typed, now, key)])
    expect(answers.map(outcome)).toEqual(['saved', 'saved'])
    expect(await fresh.client.person.count({ where: { userId: user.userId } })).toBe(1)
  })
})

describe('taking an invitation back', () => {
  it('is for the organiser of the same group, and not after it was taken up', async () => {
    const { id, token } = await invite()
    expect(outcome(await send(ours.as.member, 'revoke-invite', { inviteId: id }))).toBe('403 not-allowed')
    expect(outcome(await send(theirs.as.organiser, 'revoke-invite', { inviteId: id }))).toBe('404 not-found')
    await accept(await stranger(), { token })
    expect(outcome(await send(ours.as.organiser, 'revoke-invite', { inviteId: id }))).toBe('409 invite-used')
  })

  it('leaves its address out of the list', async () => {
    const { id, token } = await invite()
    const listed = await listInvites(ours.as.organiser, new Date())
    expect(listed.find((found) => found.id === id)?.problem).toBeNull()
    expect(JSON.stringify(listed)).not.toContain(token)
  })
})
