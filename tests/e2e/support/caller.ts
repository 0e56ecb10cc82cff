import { randomUUID } from 'node:crypto'
import { type APIRequestContext, type APIResponse, expect, type PlaywrightWorkerArgs } from '@playwright/test'
import { PASSWORD } from './start-group'

type Playwright = PlaywrightWorkerArgs['playwright']

/** Where the app under test is. */
export const SITE = process.env.TEST_BASE_URL ?? ''

/** Somebody who speaks HTTP and not HTML: follows no redirect and sends what it is told. */
export async function caller(playwright: Pick<Playwright, 'request'>): Promise<APIRequestContext> {
  return playwright.request.newContext({ baseURL: SITE, maxRedirects: 0, ignoreHTTPSErrors: false })
}

/** The same, signed in. */
export async function signedInCaller(playwright: Pick<Playwright, 'request'>, email: string): Promise<APIRequestContext> {
  const context = await caller(playwright)
  const { csrfToken } = await (await context.get('/api/auth/csrf')).json()
  const answer = await context.post('/api/auth/callback/credentials', {
    headers: { origin: SITE },
    form: { csrfToken, email, password: PASSWORD, json: 'true' },
  })
  expect(answer.status(), `sign-in of ${email}`).toBe(200)
  return context
}

/** Sends one change to the API as our own pages do, with a fresh key; `headers` and `body` say what is different. An undefined header is left out. */
export async function sendChange(
  context: APIRequestContext,
  path: string,
  body: unknown,
  headers: Readonly<Record<string, string | undefined>> = {},
): Promise<APIResponse> {
  const all = { origin: SITE, 'content-type': 'application/json', 'idempotency-key': randomUUID(), ...headers }
  const sent = Object.fromEntries(Object.entries(all).filter((entry): entry is [string, string] => entry[1] !== undefined))
  return context.post(path, { headers: sent, data: typeof body === 'string' ? Buffer.from(body) : Buffer.from(JSON.stringify(body)) })
}
