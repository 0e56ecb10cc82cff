import { randomUUID } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { checkSignIn } from '@/lib/auth/check-sign-in'
import { createGroup } from '@/lib/services/account/create-group'
import { setPassword } from '@/lib/services/account/set-password'
import { signOutEverywhere } from '@/lib/services/account/sign-out-everywhere'
import { signUp } from '@/lib/services/account/sign-up'
import { signUpAndIn } from '@/lib/services/account/sign-up-and-in'
import { CreateGroup } from '@/shared/forms/group'
import { SignUp } from '@/shared/forms/sign-in'
import { freshDatabase } from '../../../support/fresh-database'
import { outcome } from '../../../support/two-groups'

const fresh = freshDatabase()

const PASSWORD = 'plum and pickle'
const typed = (email: string, more: object = {}) => SignUp.parse({ name: 'Ada', email, password: PASSWORD, ...more })
const groupInput = (more: object = {}) => ({
  name: 'Fern Hollow',
  code: 'fh',
  timeZone: 'America/New_York',
  askLine: 'Ask at the hall',
  personName: 'Ada',
  householdName: 'Alderby',
  headcount: '4',
  ...more,
})

async function account(email: string) {
  const made = await signUp(typed(email), randomUUID())
  if (!made.ok) throw new Error(made.problem.what)
  return { userId: String(made.value.reply.userId), name: 'Ada', email }
}

describe('signing up', () => {
  it('makes one account for an address, however it is written', async () => {
    expect(outcome(await signUp(typed('Ada@Example.org'), randomUUID()))).toBe('saved')
    expect(outcome(await signUp(typed(' ada@example.ORG '), randomUUID()))).toBe('409 address-in-use')
    expect(await fresh.client.user.count({ where: { email: 'ada@example.org' } })).toBe(1)
  })

  it('makes one account for a form sent four times at once', async () => {
    const key = randomUUID()
    const answers = await Promise.all([1, 2, 3, 4].map(() => signUp(typed('four@example.org'), key)))
    expect(answers.map(outcome)).toEqual(['saved', 'saved', 'saved', 'saved'])
    expect(await fresh.client.user.count({ where: { email: 'four@example.org' } })).toBe(1)
  })

  it('gives no session to somebody who repeats the form with another password', async () => {
    const key = randomUUID()
    expect((await signUpAndIn(typed('bram@example.org'), key, 'here')).ok).toBe(true)
    expect(outcome(await signUpAndIn(typed('bram@example.org', { password: 'another password' }), key, 'here'))).toBe('409 address-in-use')
  })

  it('keeps the password as an argon2id hash, and no trace of it elsewhere', async () => {
    await signUp(typed('hash@example.org'), randomUUID())
    const user = await fresh.client.user.findUniqueOrThrow({ where: { email: 'hash@example.org' } })
    expect(user.passwordHash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/)
    const { rows } = await fresh.asOwner(
      `SELECT count(*)::int AS found FROM idempotent_request AS kept WHERE kept::text LIKE '%' || $1 || '%'`,
      [PASSWORD],
    )
    expect(rows[0]?.found).toBe(0)
  })

  it.each([
    ['a short password', { password: 'short' }],
    ['a password of a million letters', { password: 'x'.repeat(1_000_000) }],
    ['a name with a control character', { name: 'Ada\u0000' }],
    ['an address with letters that look alike', { email: 'аda@example.org' }],
    ['an entry nobody asked for', { sessionVersion: 7 }],
  ])('is refused with %s', (_, wrong) => {
    expect(SignUp.safeParse({ name: 'Ada', email: 'x@example.org', password: PASSWORD, ...wrong }).success).toBe(false)
  })
})

describe('signing in', () => {
  it('answers an unknown address like a wrong password, and counts both', async () => {
    await account('cleo@example.org')
    const wrong = await checkSignIn({ email: 'cleo@example.org', password: 'not hers' }, 'place-1')
    const unknown = await checkSignIn({ email: 'nobody@example.org', password: 'not hers' }, 'place-1')
    expect([wrong, unknown]).toEqual([{ kind: 'no-fit' }, { kind: 'no-fit' }])
  })

  it('stops after five tries in a minute for one address, the right password included', async () => {
    await account('dov@example.org')
    const kinds: string[] = []
    // Eleven, because a new minute may begin in between: five before it and five after it are let through.
    for (let tries = 0; tries < 11; tries++)
      kinds.push((await checkSignIn({ email: 'dov@example.org', password: 'wrong' }, `place-${tries}`)).kind)
    const right = await checkSignIn({ email: 'dov@example.org', password: PASSWORD }, 'another place')
    expect(kinds[0]).toBe('no-fit')
    expect([kinds.at(-1), right.kind]).toEqual(['too-many-tries', 'too-many-tries'])
  })

  it.each([{ not: '' }, ['cleo@example.org'], 7, null])('never hands %s on to the database', async (email) => {
    expect(await checkSignIn({ email, password: { not: '' } }, 'place-2')).toEqual({ kind: 'no-fit' })
  })

  it('begins with the version that counts, which a new password and signing out everywhere raise', async () => {
    const { userId } = await account('esme@example.org')
    const versionNow = async (password: string) => {
      const check = await checkSignIn({ email: 'esme@example.org', password }, 'place-3')
      return check.kind === 'fits' ? check.session.version : check.kind
    }
    expect(await versionNow(PASSWORD)).toBe(1)
    await signOutEverywhere(userId)
    expect(await versionNow(PASSWORD)).toBe(2)
    expect(await setPassword(userId, 'a newer password')).toBe(3)
    expect([await versionNow(PASSWORD), await versionNow('a newer password')]).toEqual(['no-fit', 3])
  })
})

describe('making a group', () => {
  it('makes its founder the organiser, in a household, with a history that begins there', async () => {
    const user = await account('flora@example.org')
    const made = await createGroup(user, CreateGroup.parse(groupInput()), randomUUID())
    const groupId = made.ok ? String(made.value.reply.groupId) : ''
    const group = await fresh.client.group.findUniqueOrThrow({ where: { id: groupId }, include: { people: true, households: true } })
    expect(group).toMatchObject({
      code: 'FH',
      isDemo: false,
      people: [{ userId: user.userId, role: 'organiser' }],
      households: [{ name: 'Alderby', headcount: 4 }],
    })
    expect(await fresh.client.history.findMany({ where: { groupId } })).toMatchObject([{ number: 1n, command: 'create-group' }])
  })

  it('makes one group of a form sent twice, and refuses the key to somebody else', async () => {
    const [user, other, key] = [await account('gil@example.org'), await account('hana@example.org'), randomUUID()]
    const input = CreateGroup.parse(groupInput({ name: 'Once only' }))
    const answers = [await createGroup(user, input, key), await createGroup(user, input, key), await createGroup(other, input, key)]
    expect(answers.map(outcome)).toEqual(['saved', 'saved', '409 key-used-before'])
    expect(await fresh.client.group.count({ where: { name: 'Once only' } })).toBe(1)
  })

  it.each([
    ['a code with a letter that looks like a number', { code: 'FO' }],
    ['a code of one letter', { code: 'F' }],
    ['a time zone that nobody keeps', { timeZone: 'Mars/Olympus' }],
    ['a time zone that is a path', { timeZone: '../etc/passwd' }],
    ['a currency that is none', { currency: 'JARS' }],
    ['no way to ask', { askLine: ' ' }],
    ['an entry nobody asked for', { isDemo: true }],
  ])('is refused with %s', (_, wrong) => {
    expect(CreateGroup.safeParse(groupInput(wrong)).success).toBe(false)
  })
})
