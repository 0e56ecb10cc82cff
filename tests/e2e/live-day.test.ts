import { setTimeout as sleep } from 'node:timers/promises'
import { type APIRequestContext, expect, test } from '@playwright/test'
import { SITE, sendChange, signedInCaller } from './support/caller'
import { withSecondApp } from './support/second-app'
import { askDatabase, type Evening, eveningOf } from './support/served-database'
import { signIn } from './support/sign-in'
import { type StartedGroup, startGroup } from './support/start-group'

let group: StartedGroup
let evening: Evening
let ada: APIRequestContext

test.describe.configure({ mode: 'serial' })

test.beforeAll(async ({ playwright }) => {
  group = await startGroup('Lively Lane')
  evening = await eveningOf(group.groupId)
  ada = await signedInCaller(playwright, group.addressOf('Ada'))
})

const livePath = () => `/api/v1/groups/${evening.groupId}/days/${evening.dayId}/live`
const claim = (jars: number) =>
  sendChange(ada, `/api/v1/groups/${evening.groupId}/claims`, {
    preparationId: evening.products.J?.id,
    householdId: evening.households.Alderby,
    jars,
  })

interface Heard {
  readonly status: number
  readonly headers: Headers
  readonly said: () => string
  /** When it was first told to look again, at this moment or after it. */
  readonly lookSince: (from: number) => Promise<number>
  readonly looks: () => number
  readonly ended: Promise<void>
  readonly leave: () => void
}

/** Opens the day's stream at a process and reads along, from the notice on that the day was changed since whoever asks last looked, long ago. */
async function listen(site = SITE): Promise<Heard> {
  const cookies = (await ada.storageState()).cookies.map(({ name, value }) => `${name}=${value}`).join('; ')
  const left = new AbortController()
  const reply = await fetch(`${site}${livePath()}?since=1`, { headers: { cookie: cookies }, signal: left.signal })
  let said = ''
  const moments: number[] = []
  const ended = (async () => {
    const reader = reply.body?.pipeThrough(new TextDecoderStream()).getReader()
    for (let part = await reader?.read(); part && !part.done; part = await reader?.read()) {
      said += part.value
      if (part.value.includes('event: look')) moments.push(performance.now())
    }
  })().catch(() => {})
  await expect.poll(() => said).toContain('event: open')
  await expect.poll(() => moments.length).toBe(1)
  return {
    status: reply.status,
    headers: reply.headers,
    said: () => said,
    lookSince: async (from) => {
      const first = () => moments.find((moment) => moment >= from)
      await expect.poll(first, { timeout: 5_000 }).toBeDefined()
      return first() ?? Number.NaN
    },
    looks: () => moments.length,
    ended,
    leave: () => left.abort(),
  }
}

/** A stream tells at most once a second: after so long, what was told belongs to what comes next. */
const QUIET_MS = 1_200

test('each change of the day is noticed once by whoever listens, and a refused one is not', async () => {
  const heard = await listen()
  expect(heard.headers.get('content-type')).toContain('text/event-stream')
  expect(heard.headers.get('content-encoding')).toBeNull()
  await sleep(QUIET_MS)
  const delays: number[] = []
  for (const jars of [9, 8, 7, 6, 5]) {
    const [before, from] = [heard.looks(), performance.now()]
    expect((await claim(jars)).status()).toBe(200)
    delays.push((await heard.lookSince(from)) - from)
    await sleep(QUIET_MS)
    expect(heard.looks() - before, `notices of ${jars} jars`).toBe(1)
  }
  console.log(`from sending a claim to the notice: ${delays.map((ms) => ms.toFixed(0)).join(', ')} ms`)
  const before = heard.said()
  expect((await claim(5_000)).status()).toBeGreaterThanOrEqual(400)
  await sleep(500)
  expect(heard.said()).toBe(before)
  heard.leave()
})

test('another process on the same database passes it on too, and its streams end with it', async () => {
  let ended = Promise.resolve()
  await withSecondApp({ NEXTAUTH_URL: SITE }, async ({ address }) => {
    const heard = await listen(address)
    ended = heard.ended
    const from = performance.now()
    expect((await claim(8)).status()).toBe(200)
    await heard.lookSince(from)
  })
  await ended
})

test('two busy processes hold sixteen connections to the database at most', async () => {
  await withSecondApp({ NEXTAUTH_URL: SITE }, async ({ address }) => {
    const heard = await Promise.all([listen(), listen(address)])
    // As many at once as open every connection that a process may have; a slow machine may turn some of them away.
    const dayPath = livePath().replace(/\/live$/, '')
    await Promise.all(Array.from({ length: 8 }, () => [SITE, address].map((site) => ada.get(site + dayPath))).flat())
    const [held] = await askDatabase<{ count: number }>(
      `SELECT count(*)::int AS count FROM pg_stat_activity WHERE usename = 'lidsong_app' AND datname = current_database()`,
    )
    expect(held?.count, 'both are there').toBeGreaterThan(8)
    expect(held?.count).toBeLessThanOrEqual(16)
    for (const stream of heard) stream.leave()
  })
})

test('a page looks again by itself when somebody else has claimed', async ({ browser }) => {
  const page = await (await browser.newContext()).newPage()
  await signIn(page, group.addressOf('Gil'))
  await page.goto(`/g/${evening.groupId}/days/${evening.dayId}`)
  await page.waitForRequest((request) => request.url().includes('/live'))
  const asked = page.waitForRequest((request) => request.headers().rsc === '1' && request.url().includes(evening.dayId), {
    timeout: 20_000,
  })
  await expect(async () => expect((await claim(7)).status()).toBe(200)).toPass()
  await asked
  await page.context().close()
})

test('an address that the API does not have is a problem in JSON', async ({ request }) => {
  const reply = await request.get('/api/v1/nowhere/at/all')
  expect(reply.status()).toBe(404)
  expect(reply.headers()['content-type']).toContain('application/problem+json')
  expect(await reply.json()).toMatchObject({ status: 404, type: '/problems/not-found' })
})

test('a large day is searched apart: its finish comes down on a phone, and the best plan is taken at will', async ({ browser }) => {
  test.setTimeout(240_000)
  await makeLarge(evening)
  const page = await (await browser.newContext({ viewport: { width: 390, height: 844 } })).newPage()
  await signIn(page, group.addressOf('Ada'))
  await page.goto(`/g/${evening.groupId}/days/${evening.dayId}/plan`)
  await expect(page.getByRole('heading', { name: 'A large day' })).toBeVisible()
  await page.getByRole('button', { name: 'Plan the day' }).click()
  // Nothing is tapped: the page is told that there is something to see.
  await expect(page.getByRole('button', { name: 'Stop and take this' })).toBeVisible({ timeout: 120_000 })
  await expect(page.getByText('No plan can end before')).toBeVisible()
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390)
  await page.getByRole('button', { name: 'Stop and take this' }).click()
  await expect(page.getByRole('heading', { name: 'Station by station' })).toBeVisible({ timeout: 30_000 })
  const [search] = await askDatabase<{ state: string; taken_as: number }>('SELECT state, taken_as FROM plan_search WHERE group_id = $1', [
    evening.groupId,
  ])
  expect(search).toEqual({ state: 'stopped', taken_as: 1 })
  await page.context().close()
})

/** Twice the jars in five hours more, with one pair of hands fewer. */
async function makeLarge({ groupId, dayId }: Evening): Promise<void> {
  const day = [groupId, dayId]
  await askDatabase('UPDATE preparation SET offered = 2 * offered WHERE group_id = $1 AND day_id = $2', day)
  await askDatabase(
    'UPDATE claim SET jars = 2 * jars WHERE group_id = $1 AND preparation_id IN (SELECT id FROM preparation WHERE group_id = $1 AND day_id = $2)',
    day,
  )
  await askDatabase(
    `UPDATE preparation p SET claimed = (SELECT sum(jars) FROM claim c WHERE c.group_id = p.group_id AND c.preparation_id = p.id)
     WHERE group_id = $1 AND day_id = $2`,
    day,
  )
  await askDatabase(
    'UPDATE day SET canners_empty_by = canners_empty_by + 300, hard_end = hard_end + 300 WHERE group_id = $1 AND id = $2',
    day,
  )
  await askDatabase('UPDATE kitchen SET rack_jars = 500 WHERE group_id = $1', [groupId])
  await askDatabase('UPDATE person SET available_until = available_until + 360 WHERE group_id = $1', [groupId])
  await askDatabase(`UPDATE person SET active = false WHERE group_id = $1 AND name = 'Dov'`, [groupId])
}
