import { randomUUID } from 'node:crypto'
import { setTimeout as sleep } from 'node:timers/promises'
import { type APIRequestContext, type APIResponse, expect, test } from '@playwright/test'
import { sendChange, signedInCaller } from './support/caller'
import { whileDatabaseIsFrozen } from './support/frozen-database'
import { hiddenFieldsOf, postForm } from './support/posted-form'
import { askDatabase, type Evening, eveningOf } from './support/served-database'
import { signIn } from './support/sign-in'
import { startGroup } from './support/start-group'

const LONGEST_MS = 5_000

let evening: Evening
let ada: APIRequestContext
let addressOfAda: string

test.beforeAll(async ({ playwright }) => {
  const group = await startGroup('Frozen Ford')
  evening = await eveningOf(group.groupId)
  addressOfAda = group.addressOf('Ada')
  ada = await signedInCaller(playwright, addressOfAda)
})

const claims = () => `/api/v1/groups/${evening.groupId}/claims`
const home = () => `/g/${evening.groupId}`
const day = () => `${home()}/days/${evening.dayId}`
const claim = (jars = 9) => ({ preparationId: evening.products.J?.id, householdId: evening.households.Alderby, jars })

interface Timed {
  readonly answer: APIResponse
  readonly said: string
  readonly ms: number
}

async function timed(asking: Promise<APIResponse>): Promise<Timed> {
  const startedAt = Date.now()
  const answer = await asking
  const said = await answer.text()
  return { answer, said, ms: Date.now() - startedAt }
}

/** It was answered in time, with 503, and says that nothing was saved. */
function expectNotSaved(what: string, { answer, said, ms }: Timed): void {
  expect(answer.status(), what).toBe(503)
  expect(ms, `${what}: milliseconds`).toBeLessThan(LONGEST_MS)
  expect(said, what).toMatch(/not saved|not sure whether it was saved/i)
  expect(Number(answer.headers()['retry-after']), `${what}: when to come back`).toBeGreaterThan(0)
  expect(said, what).not.toMatch(/prisma|postgres|node_modules/i)
}

/** Waits until the app answers again by itself. */
async function expectRecovery(): Promise<void> {
  const startedAt = Date.now()
  await expect.poll(async () => (await ada.get(home())).status(), { timeout: LONGEST_MS, intervals: [100] }).toBe(200)
  await expect.poll(async () => (await ada.get('/api/health/ready')).status(), { timeout: LONGEST_MS, intervals: [100] }).toBe(200)
  expect(Date.now() - startedAt, 'milliseconds until it answers again').toBeLessThan(LONGEST_MS)
}

/** Sends it again as phones do: under the same key, a little later, until it is answered as saved. */
async function untilSaved(send: () => Promise<APIResponse>): Promise<APIResponse> {
  const deadline = Date.now() + 30_000
  for (;;) {
    const answer = await send()
    if (answer.status() !== 503 || Date.now() > deadline) return answer
    await sleep(200)
  }
}

const claimsInHistory = async (): Promise<number> => {
  const [row] = await askDatabase<{ count: string }>(`SELECT count(*) FROM history WHERE group_id = $1 AND command = 'claim-jars'`, [
    evening.groupId,
  ])
  return Number(row?.count)
}

test.describe('while the database is frozen', () => {
  test('every page and every change says "not saved" within five seconds, twice over, and the app recovers by itself', async () => {
    const fields = {
      ...(await hiddenFieldsOf(ada, `${home()}/households`, 'add-household')),
      name: 'Frost',
      headcount: '2',
      language: 'en',
      contact: '',
    }
    const before = await claimsInHistory()
    await whileDatabaseIsFrozen(async () => {
      for (const round of ['first', 'second']) {
        const [live, ready, ...rest] = await Promise.all([
          timed(ada.get('/api/health/live')),
          timed(ada.get('/api/health/ready')),
          ...[home(), day(), `${day()}/claims`, '/'].map((path) => timed(ada.get(path))),
          timed(ada.head(home())),
          timed(sendChange(ada, claims(), claim())),
          timed(postForm(ada, `${home()}/households`, fields)),
          timed(sendChange(ada, `/api/v1/groups/${evening.groupId}/days/${evening.dayId}/events`, { kind: 'note-incident' })),
        ])
        const [homePage, dayPage, claimsPage, start, head, change, form, event] = rest
        expect(live.answer.status(), `${round}: the process lives`).toBe(200)
        expect(live.ms, 'live: milliseconds').toBeLessThan(LONGEST_MS)
        expect(ready.answer.status(), `${round}: it is not ready`).toBe(503)
        expect(ready.ms, 'ready: milliseconds').toBeLessThan(LONGEST_MS)
        expect(JSON.parse(ready.said).reasons).toEqual(['database'])
        expect(head?.answer.status()).toBe(503)
        for (const [what, one] of Object.entries({ homePage, dayPage, claimsPage, start, change, form, event })) {
          if (!one) throw new Error(`${what} was not asked`)
          expectNotSaved(`${round}, ${what}`, one)
        }
        expect(JSON.parse(String(event?.said))).toMatchObject({
          type: '/problems/not-saved',
          instead: expect.stringMatching(/send it again/),
        })
        expect(JSON.parse(String(change?.said))).toMatchObject({
          // A claim is one statement: who sent it and heard nothing cannot know. That it was not saved is counted below.
          type: expect.stringMatching(/^\/problems\/not-(saved|sure)$/),
          instead: expect.stringMatching(/send (it|the same form) again/i),
        })
      }
    })
    await expectRecovery()
    expect(await claimsInHistory(), 'nothing was half-written').toBe(before)
    expect(await askDatabase(`SELECT 1 FROM household WHERE group_id = $1 AND name = 'Frost'`, [evening.groupId])).toHaveLength(0)
  })

  test('a page keeps its headers', async () => {
    const { answer, said } = await whileDatabaseIsFrozen(() => timed(ada.get(home())))
    const headers = answer.headers()
    const policy = headers['content-security-policy'] ?? ''
    expect(headers['cache-control']).toContain('no-store')
    expect(headers['x-content-type-options']).toBe('nosniff')
    expect(policy).toContain("default-src 'self'")
    expect(said).toContain(`nonce="${/'nonce-([^']+)'/.exec(policy)?.[1]}"`)
    await expectRecovery()
  })

  test('changes under way are saved once or not at all, and sent again they all are', async () => {
    const before = await claimsInHistory()
    const taps = Array.from({ length: 40 }, (_, index) => ({ key: randomUUID(), jars: 1 + (index % 9) }))
    const send = ({ key, jars }: { key: string; jars: number }) => sendChange(ada, claims(), claim(jars), { 'idempotency-key': key })

    const underWay = taps.map(async (tap, index) => {
      await sleep(index * 15)
      return timed(send(tap))
    })
    await sleep(250)
    const first = await whileDatabaseIsFrozen(() => Promise.all(underWay))
    for (const one of first) {
      if (one.answer.status() !== 200) expectNotSaved('a change under way', one)
      expect(one.ms, 'milliseconds').toBeLessThan(LONGEST_MS)
    }
    expect(first.filter(({ answer }) => answer.status() === 503).length, 'some met the frost').toBeGreaterThan(0)
    await expectRecovery()

    const again = await Promise.all(taps.map((tap) => untilSaved(() => send(tap))))
    expect(again.map((answer) => answer.status())).toEqual(taps.map(() => 200))
    for (const [index, { answer, said }] of first.entries()) {
      if (answer.status() === 200) expect(await again[index]?.text(), 'what was answered stays').toBe(said)
    }
    expect(await claimsInHistory(), 'each tap counts once').toBe(before + taps.length)
    const [sums] = await askDatabase<{ claimed: number; summed: string }>(
      'SELECT p.claimed, sum(c.jars) AS summed FROM preparation p JOIN claim c ON c.group_id = p.group_id AND c.preparation_id = p.id WHERE p.group_id = $1 AND p.id = $2 GROUP BY p.claimed',
      [evening.groupId, evening.products.J?.id],
    )
    expect(Number(sums?.summed)).toBe(sums?.claimed)
  })

  test('a form says so, keeps what was typed, and is saved once when it is sent again', async ({ page }) => {
    await signIn(page, addressOfAda)
    await page.goto(`${home()}/households`)
    const form = page.locator('form').filter({ has: page.locator('input[value="add-household"]') })
    await form.getByLabel('Name').fill('Thawfield')
    await form.getByLabel('People in it').fill('3')
    await whileDatabaseIsFrozen(async () => {
      const startedAt = Date.now()
      await form.getByRole('button').click()
      await expect(form.getByRole('alert')).toContainText(/not saved|not sure/i)
      expect(Date.now() - startedAt, 'milliseconds').toBeLessThan(LONGEST_MS + 1_000) // the browser draws too
      await expect(form.getByLabel('Name')).toHaveValue('Thawfield')
    })
    await expectRecovery()
    await form.getByRole('button').click()
    await expect(
      page
        .getByRole('cell', { name: 'Thawfield' })
        .or(page.getByRole('link', { name: 'Thawfield' }))
        .first(),
    ).toBeVisible()
    expect(await askDatabase(`SELECT 1 FROM household WHERE group_id = $1 AND name = 'Thawfield'`, [evening.groupId])).toHaveLength(1)
  })
})
