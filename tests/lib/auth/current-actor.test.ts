import { encode } from 'next-auth/jwt'
import { beforeAll, describe, expect, it, vi } from 'vitest'
import { currentActor, currentUser } from '@/lib/auth/current-actor'
import { env } from '@/lib/env'
import { signOutEverywhere } from '@/lib/services/account/sign-out-everywhere'
import type { Actor } from '@/shared/access/actor'
import { freshDatabase } from '../../support/fresh-database'
import { done, makeGroup, type TestGroup } from '../../support/two-groups'

const jar = vi.hoisted(() => ({ token: '' }))

vi.mock('next/headers', () => ({
  cookies: async () => {
    const sent = [{ name: 'lidsong.session', value: jar.token }]
    return { get: (name: string) => sent.find((cookie) => cookie.name === name), getAll: () => sent }
  },
  headers: async () => new Headers(),
}))

const fresh = freshDatabase()
let ours: TestGroup
let theirs: TestGroup

beforeAll(async () => {
  ours = await makeGroup(fresh.client, 'ours')
  theirs = await makeGroup(fresh.client, 'theirs')
})

/** The browser of somebody whose session began with that session version. */
async function browserOf({ userId }: Actor, version = 1, secret = env().authSecret): Promise<void> {
  jar.token = await encode({ token: { sub: userId, version }, secret })
}

describe('who is acting', () => {
  it('is the person with the role that they have at this request', async () => {
    const { operator, organiser } = ours.as
    await browserOf(operator)
    expect(await currentActor(ours.groupId)).toEqual(operator)
    await done(organiser, 'change-person-role', { personId: operator.personId, role: 'helper' })
    expect((await currentActor(ours.groupId))?.role).toBe('helper')
  })

  it('is nobody from the request after they are no longer here, until they are here again', async () => {
    const { member, organiser } = ours.as
    await browserOf(member)
    await done(organiser, 'set-person-active', { personId: member.personId, active: 'no' })
    expect(await currentActor(ours.groupId)).toBeNull()
    await done(organiser, 'set-person-active', { personId: member.personId, active: 'yes' })
    expect(await currentActor(ours.groupId)).not.toBeNull()
  })

  it('is nobody in another group', async () => {
    await browserOf(ours.as.organiser)
    expect(await currentActor(theirs.groupId)).toBeNull()
    expect(await currentActor('no such group')).toBeNull()
    expect((await currentUser())?.userId).toBe(ours.as.organiser.userId)
  })

  it('is nobody with a session from before signing out everywhere', async () => {
    const visitor = ours.as.visitor
    await browserOf(visitor)
    expect(await currentActor(ours.groupId)).not.toBeNull()
    await signOutEverywhere(visitor.userId)
    expect([await currentActor(ours.groupId), await currentUser()]).toEqual([null, null])
    await browserOf(visitor, 2)
    expect(await currentActor(ours.groupId)).not.toBeNull()
  })

  it('is nobody with a token that somebody else signed, or with none', async () => {
    await browserOf(ours.as.organiser, 1, 'a secret of somebody who would like to come in')
    expect([await currentActor(ours.groupId), await currentUser()]).toEqual([null, null])
    jar.token = ''
    expect([await currentActor(ours.groupId), await currentUser()]).toEqual([null, null])
  })
})
