import { randomUUID } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { authOptions } from '@/lib/auth/auth-options'
import { checkSignIn } from '@/lib/auth/check-sign-in'
import { signUp } from '@/lib/services/account/sign-up'
import { freshDatabase } from '../../support/fresh-database'
import { mailOutbox } from '../../support/mail-outbox'

const fresh = freshDatabase()
const { mails } = mailOutbox()

const PASSWORD = 'not the owner of it'

/** Somebody signs up with an address; nobody has proved yet that it is theirs. */
async function signedUp(): Promise<{ id: string; email: string }> {
  const email = `${randomUUID()}@example.org`
  await signUp({ name: 'Ada', email, password: PASSWORD }, randomUUID())
  const { id } = await fresh.client.user.findUniqueOrThrow({ where: { email } })
  return { id, email }
}

const openLink = (user: { id: string; email: string }) =>
  authOptions().callbacks?.signIn?.({ user, account: { provider: 'email', type: 'email', providerAccountId: user.email } })

const versionOf = async (id: string) => (await fresh.client.user.findUniqueOrThrow({ where: { id } })).sessionVersion

describe('a mailed link', () => {
  it('opened for the first time drops the password and the sessions from before: they may be a stranger’s', async () => {
    const user = await signedUp()
    const before = await versionOf(user.id)
    expect(await openLink(user)).toBe(true)
    expect(await versionOf(user.id)).toBe(before + 1)
    expect(await checkSignIn({ email: user.email, password: PASSWORD }, 'here')).toEqual({ kind: 'no-fit' })
  })

  it('opened again leaves the password and the sessions alone', async () => {
    const user = await signedUp()
    await fresh.client.user.update({ where: { id: user.id }, data: { emailVerified: new Date() } })
    const before = await versionOf(user.id)
    expect(await openLink(user)).toBe(true)
    expect(await versionOf(user.id)).toBe(before)
    expect((await checkSignIn({ email: user.email, password: PASSWORD }, 'here')).kind).toBe('fits')
  })

  it('is mailed to an address with an account, and to no other', async () => {
    const user = await signedUp()
    const provider = authOptions().providers.find(({ id }) => id === 'email')
    if (provider?.type !== 'email') throw new Error('no mailed link')
    const request = (identifier: string) =>
      provider.options.sendVerificationRequest?.({
        identifier,
        url: 'http://localhost/link',
        expires: new Date(),
        provider,
        token: 't',
        theme: {},
      })
    await request(user.email)
    await request('nobody@example.org')
    expect(mails().filter((mail) => mail.includes(`To: ${user.email}`))).toHaveLength(1)
    expect(mails().filter((mail) => mail.includes('nobody@example.org'))).toHaveLength(0)
  })

  it('is asked for five times a minute at most', async () => {
    const { id, email } = await signedUp()
    const ask = () =>
      authOptions().callbacks?.signIn?.({
        user: { id, email },
        account: { provider: 'email', type: 'email', providerAccountId: email },
        email: { verificationRequest: true },
      })
    const answers: unknown[] = []
    for (let tries = 0; tries < 11; tries++) answers.push(await ask())
    expect([answers[0], answers.at(-1)]).toEqual([true, false])
  })
})
