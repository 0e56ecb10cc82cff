import { randomUUID } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { checkSignIn } from '@/lib/auth/check-sign-in'
import { mailLink, openMailedLink } from '@/lib/auth/mailed-link'
import { signUp } from '@/lib/services/account/sign-up'
import { freshDatabase } from '../../support/fresh-database'
import { mailOutbox } from '../../support/mail-outbox'

const fresh = freshDatabase()
const { mails } = mailOutbox()

const PASSWORD = 'not the owner of it'
const MINUTE_MS = 60_000
const NOW = new Date('2026-09-05T12:00:00Z')
const later = (minutes: number) => new Date(NOW.getTime() + minutes * MINUTE_MS)

interface Known {
  readonly id: string
  readonly email: string
}

/** Somebody signs up with an address; nobody has proved yet that it is theirs. */
async function signedUp(): Promise<Known> {
  const email = `${randomUUID()}@example.org`
  await signUp({ name: 'Ada', email, password: PASSWORD }, randomUUID())
  const { id } = await fresh.client.user.findUniqueOrThrow({ where: { email } })
  return { id, email }
}

const mailsTo = (email: string) => mails().filter((mail) => mail.includes(`To: ${email}`))

/** What the newest mail to somebody links to. */
async function linkFor({ email }: Known, at = NOW) {
  const before = mailsTo(email)
  expect(await mailLink(email, '/g/brook-end', at)).toEqual({ ok: true, value: true })
  const mail = mailsTo(email).find((one) => !before.includes(one)) ?? ''
  const { pathname, searchParams } = new URL(/https?:\/\/\S+/.exec(mail.replace(/=\n/g, '').replaceAll('=3D', '='))?.[0] ?? '')
  expect(pathname).toBe('/sign-in/link')
  expect(searchParams.get('callbackUrl')).toBe('/g/brook-end')
  return { email, token: searchParams.get('token') ?? '' }
}

const stateOf = async ({ id }: Known) => fresh.client.user.findUniqueOrThrow({ where: { id } })

describe('a mailed link', () => {
  it('opened for the first time drops the password and the sessions from before: they may be a stranger’s', async () => {
    const user = await signedUp()
    const before = await stateOf(user)
    const opened = await openMailedLink(await linkFor(user), NOW)
    const after = await stateOf(user)
    expect(opened).toMatchObject({ ok: true, value: { userId: user.id, version: after.sessionVersion } })
    expect(after).toMatchObject({ sessionVersion: before.sessionVersion + 1, passwordHash: null, emailVerified: NOW })
    expect(await checkSignIn({ email: user.email, password: PASSWORD }, 'here')).toEqual({ kind: 'no-fit' })
  })

  it('opened by whoever proved the address before leaves the password and the sessions alone', async () => {
    const user = await signedUp()
    await fresh.client.user.update({ where: { id: user.id }, data: { emailVerified: NOW } })
    const before = await stateOf(user)
    expect(await openMailedLink(await linkFor(user), NOW)).toMatchObject({ ok: true })
    expect((await stateOf(user)).sessionVersion).toBe(before.sessionVersion)
    expect((await checkSignIn({ email: user.email, password: PASSWORD }, 'here')).kind).toBe('fits')
  })

  it('works once, also for four who open it at the same moment', async () => {
    for (let round = 0; round < 20; round++) {
      const user = await signedUp()
      const link = await linkFor(user)
      const opened = await Promise.all([1, 2, 3, 4].map(() => openMailedLink(link, NOW)))
      expect(opened.filter(({ ok }) => ok)).toHaveLength(1)
      expect(opened.filter(({ ok }) => !ok)).toEqual(
        Array(3).fill({ ok: false, problem: expect.objectContaining({ code: 'link-is-over' }) }),
      )
    }
  })

  it('works for fifteen minutes, for its own address, and as it was sent', async () => {
    const [user, other] = [await signedUp(), await signedUp()]
    const early = await linkFor(user)
    expect((await openMailedLink({ ...early, email: other.email }, NOW)).ok).toBe(false)
    expect((await openMailedLink({ ...early, token: `${early.token.slice(0, -1)}${early.token.endsWith('A') ? 'B' : 'A'}` }, NOW)).ok).toBe(
      false,
    )
    expect((await openMailedLink(early, later(14))).ok).toBe(true)
    expect((await openMailedLink(await linkFor(user), later(15))).ok).toBe(false)
  })

  it('is kept in the database as nothing that signs in', async () => {
    const user = await signedUp()
    const { token } = await linkFor(user)
    const kept = await fresh.client.verificationToken.findFirstOrThrow({ where: { identifier: user.email } })
    expect(kept.token).not.toContain(token)
    expect((await openMailedLink({ email: user.email, token: kept.token.slice(0, 43) }, NOW)).ok).toBe(false)
  })

  it('is mailed to an address with an account, and to no other, with the same answer', async () => {
    const email = `${randomUUID()}@example.org`
    expect(await mailLink(email, '/', NOW)).toEqual({ ok: true, value: true })
    expect(mailsTo(email)).toHaveLength(0)
    expect(await fresh.client.verificationToken.count({ where: { identifier: email } })).toBe(0)
  })

  it('is mailed five times a minute at most, and who asks more often is told so, account or not', async () => {
    const { email } = await signedUp()
    for (const address of [email, `${randomUUID()}@example.org`]) {
      const answers: boolean[] = []
      for (let tries = 0; tries < 11; tries++) answers.push((await mailLink(address, '/', NOW)).ok)
      expect([answers[0], answers.at(-1)]).toEqual([true, false])
    }
  })
})
