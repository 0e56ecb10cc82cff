import { readdirSync } from 'node:fs'
import { setTimeout as sleep } from 'node:timers/promises'
import { type APIRequestContext, expect, type PlaywrightWorkerArgs, test } from '@playwright/test'
import { sendChange } from './support/caller'
import { postActionForm } from './support/posted-form'
import { type SecondApp, withSecondApp } from './support/second-app'
import { askDatabase, eveningOf, traceOfChanges } from './support/served-database'
import { PASSWORD, type StartedGroup, startGroup } from './support/start-group'

type Playwright = PlaywrightWorkerArgs['playwright']

const LOW = { LIDSONG_SIGN_INS_PER_MINUTE: '5', LIDSONG_CHANGES_PER_MINUTE: '3' }

let group: StartedGroup

test.beforeAll(async () => {
  group = await startGroup('Hurry Hill')
})

/** Tries are counted by the minute of the clock: a burst must fit into one. */
async function roomInThisMinute(seconds = 25): Promise<void> {
  const left = 60 - ((Date.now() / 1000) % 60)
  if (left < seconds) await sleep(left * 1000 + 200)
}

/** Everybody who is counted may try again, as after a minute. */
const letAMinutePass = () => askDatabase(`UPDATE rate_window SET starts_at = starts_at - interval '1 minute'`)

/** Somebody at the second app, coming from an address of their own. */
async function visitor(playwright: Playwright, { address }: SecondApp, from: string): Promise<APIRequestContext> {
  return playwright.request.newContext({
    baseURL: address,
    maxRedirects: 0,
    extraHTTPHeaders: { 'x-forwarded-for': from, origin: address },
  })
}

/** What a try to sign in was answered: "in", or the code of why not. */
async function trySignIn(context: APIRequestContext, email: string, password: string): Promise<string> {
  const { csrfToken } = await (await context.get('/api/auth/csrf')).json()
  const answer = await context.post('/api/auth/callback/credentials', { form: { csrfToken, email, password, json: 'true' } })
  const { url } = await answer.json()
  return answer.status() === 200 ? 'in' : (new URL(url).searchParams.get('error') ?? `${answer.status()}`)
}

async function tries(context: APIRequestContext, emails: readonly string[], password: string): Promise<string[]> {
  const said: string[] = []
  for (const email of emails) said.push(await trySignIn(context, email, password))
  return said
}

const times = <T>(count: number, value: T): T[] => Array.from({ length: count }, () => value)

test('guessing a password ends after five tries a minute, for a right guess too, and for nobody else', async ({ playwright }) => {
  await withSecondApp(LOW, async (app) => {
    await roomInThisMinute()
    const guesser = await visitor(playwright, app, '198.51.100.1')
    const ada = group.addressOf('Ada')
    expect(await tries(guesser, times(5, ada), 'wrong-guess')).toEqual(times(5, 'CredentialsSignin'))
    expect(await trySignIn(guesser, ada, 'wrong-guess')).toBe('too-many-tries')
    expect(await trySignIn(guesser, ada, PASSWORD), 'the right one, too late').toBe('too-many-tries')
    expect(await trySignIn(await visitor(playwright, app, '198.51.100.2'), ada, PASSWORD), 'from elsewhere').toBe('too-many-tries')
    expect(await trySignIn(await visitor(playwright, app, '198.51.100.2'), group.addressOf('Gil'), PASSWORD), 'a neighbour').toBe('in')

    await letAMinutePass()
    expect(await trySignIn(guesser, ada, PASSWORD), 'a minute later').toBe('in')
  })
})

test('an address that nobody has is answered like a wrong password, and counted alike', async ({ playwright }) => {
  await withSecondApp(LOW, async (app) => {
    await roomInThisMinute()
    const guesser = await visitor(playwright, app, '198.51.100.3')
    expect(await tries(guesser, times(6, 'nobody@nowhere.example'), PASSWORD)).toEqual([...times(5, 'CredentialsSignin'), 'too-many-tries'])
  })
})

test('one place may try many accounts twenty times a minute, and only the last hop says where it is', async ({ playwright }) => {
  await withSecondApp(LOW, async (app) => {
    await roomInThisMinute()
    const emails = Array.from({ length: 21 }, (_, index) => `guess-${index}@nowhere.example`)
    const guesser = await visitor(playwright, app, '203.0.113.9, 198.51.100.4')
    const said = await tries(guesser, emails, 'wrong-guess')
    expect(said).toEqual([...times(20, 'CredentialsSignin'), 'too-many-tries'])
    const forged = await visitor(playwright, app, '203.0.113.77, 198.51.100.4')
    expect(await trySignIn(forged, 'guess-99@nowhere.example', 'wrong-guess'), 'a made-up first hop').toBe('too-many-tries')
  })
})

test('changes end after the allowed number a minute, with a time to come back, and nothing is written', async ({ playwright }) => {
  await withSecondApp(LOW, async (app) => {
    await roomInThisMinute()
    const { groupId, products, households } = await eveningOf(group.groupId)
    const dov = await visitor(playwright, app, '198.51.100.5')
    expect(await trySignIn(dov, group.addressOf('Dov'), PASSWORD)).toBe('in')
    const claim = { preparationId: products.J?.id, householdId: households.Copperfold, jars: 5 }
    const change = () => sendChange(dov, `/api/v1/groups/${groupId}/claims`, claim, { origin: app.address })
    for (const _ of times(3, 0)) expect((await change()).status()).toBe(200)
    const before = await traceOfChanges(groupId)
    const late = await change()
    expect(late.status()).toBe(429)
    expect(Number(late.headers()['retry-after'])).toBeGreaterThan(0)
    expect(await late.json()).toMatchObject({ type: '/problems/too-many-requests', status: 429, instead: expect.stringMatching(/Wait/) })
    expect(await traceOfChanges(groupId)).toBe(before)
    await letAMinutePass()
    expect((await change()).status()).toBe(200)
  })
})

test('look-ups end after sixty a minute from one place', async ({ playwright }) => {
  await withSecondApp(LOW, async (app) => {
    await roomInThisMinute()
    const asker = await visitor(playwright, app, '198.51.100.6')
    const look = () => sendChange(asker, '/api/v1/processes/lookup', [], { origin: app.address })
    for (const _ of times(60, 0)) expect((await look()).status()).toBe(200)
    const late = await look()
    expect(late.status()).toBe(429)
    expect(Number(late.headers()['retry-after'])).toBeGreaterThan(0)
  })
})

test('a mailbox gets at most five links a minute', async ({ playwright }) => {
  await withSecondApp({ ...LOW, LIDSONG_CHANGES_PER_MINUTE: '60' }, async (app) => {
    await roomInThisMinute()
    const asker = await visitor(playwright, app, '198.51.100.7')
    for (const _ of times(7, 0)) await postActionForm(asker, '/sign-in', 'Send a link to', { email: group.addressOf('Flora') })
    await expect.poll(() => readdirSync(app.outboxFolder).length).toBe(5)
    await sleep(500)
    expect(readdirSync(app.outboxFolder)).toHaveLength(5)
  })
})

test('opened by https, the cookies are bound to this host and to https', async () => {
  await withSecondApp({ NEXTAUTH_URL: 'https://lidsong.example' }, async ({ address }) => {
    await letAMinutePass()
    const first = await fetch(`${address}/api/auth/csrf`)
    const { csrfToken } = (await first.json()) as { csrfToken: string }
    const cookie = first.headers
      .getSetCookie()
      .map((line) => line.split(';')[0])
      .join('; ')
    const body = new URLSearchParams({ csrfToken, email: group.addressOf('Cleo'), password: PASSWORD, json: 'true' })
    const answer = await fetch(`${address}/api/auth/callback/credentials`, {
      method: 'POST',
      headers: { cookie, origin: 'https://lidsong.example' },
      body,
      redirect: 'manual',
    })
    expect(answer.status).toBe(200)
    const lines = [...first.headers.getSetCookie(), ...answer.headers.getSetCookie()]
    const named = (name: string) => lines.find((line) => line.startsWith(`${name}=`)) ?? `no ${name}`
    for (const name of ['__Host-lidsong.session', '__Host-lidsong.csrf']) {
      expect(named(name)).toMatch(/; Secure(;|$)/i)
      expect(named(name)).toMatch(/; HttpOnly(;|$)/i)
      expect(named(name)).toMatch(/; Path=\/(;|$)/i)
      expect(named(name)).not.toMatch(/; Domain=/i)
    }
    for (const line of lines) expect(line).toMatch(/; Secure(;|$)/i)
    expect(
      lines.some((line) => /^lidsong\./.test(line)),
      'no unbound twin',
    ).toBe(false)
  })
})
