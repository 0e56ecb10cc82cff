import { readFile } from 'node:fs/promises'
import { type IncomingHttpHeaders, request } from 'node:http'
import { join } from 'node:path'
import { text } from 'node:stream/consumers'
import { type APIRequestContext, type APIResponse, expect, test } from '@playwright/test'
import { encode } from 'next-auth/jwt'
import { caller, SITE, sendChange, signedInCaller } from './support/caller'
import { pagesOfBuild } from './support/pages-of-build'
import { askDatabase, dataFolder, type Evening, eveningOf } from './support/served-database'
import { signIn } from './support/sign-in'
import { type StartedGroup, startGroup } from './support/start-group'

let group: StartedGroup
let evening: Evening
let ada: APIRequestContext
let nobody: APIRequestContext
let addressOfAda: string
/** Addresses of pages, for somebody who may see them all. */
let pages: string[]

test.beforeAll(async ({ playwright }) => {
  group = await startGroup('Header Heath')
  evening = await eveningOf(group.groupId)
  addressOfAda = group.addressOf('Ada')
  ada = await signedInCaller(playwright, addressOfAda)
  nobody = await caller(playwright)
  const { groupId, dayId } = evening
  const [kitchen] = await askDatabase<{ id: string }>('SELECT id FROM kitchen WHERE group_id = $1', [groupId])
  const [person] = await askDatabase<{ id: string }>('SELECT id FROM person WHERE group_id = $1 ORDER BY name', [groupId])
  const known = { groupId, dayId, kitchenId: kitchen?.id ?? '', personId: person?.id ?? '', householdId: evening.households.Alderby ?? '' }
  pages = await pagesOfBuild(known)
})

const home = () => `/g/${evening.groupId}`
const claims = () => `/api/v1/groups/${evening.groupId}/claims`
const aClaim = () => ({ preparationId: evening.products.J?.id, householdId: evening.households.Alderby, jars: 9 })

/** On every answer, whatever it is. */
const ALWAYS = {
  'strict-transport-security': 'max-age=31536000; includeSubDomains',
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'permissions-policy': 'camera=(self), geolocation=(), microphone=()',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
}

const nonceOf = (answer: APIResponse): string =>
  /'nonce-([A-Za-z0-9+/=]+)'/.exec(answer.headers()['content-security-policy'] ?? '')?.[1] ?? ''

function expectPolicy(answer: APIResponse, what: string): void {
  const policy = answer.headers()['content-security-policy'] ?? ''
  const nonce = nonceOf(answer)
  expect(Buffer.from(nonce, 'base64').length, `${what}: bytes of the nonce`).toBeGreaterThanOrEqual(16)
  expect(policy.split('; ').sort(), what).toEqual(
    [
      "default-src 'self'",
      `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'`,
      `style-src 'self' 'nonce-${nonce}'`,
      "img-src 'self' data: blob:",
      "font-src 'self'",
      "connect-src 'self'",
      "worker-src 'self'",
      "manifest-src 'self'",
      "object-src 'none'",
      "base-uri 'none'",
      "form-action 'self'",
      "frame-ancestors 'none'",
    ].sort(),
  )
}

function expectHeaders(answer: APIResponse, what: string): void {
  const headers = answer.headers()
  expect(headers, what).toMatchObject(ALWAYS)
  expect(headers['referrer-policy'], what).toMatch(/^(strict-origin-when-cross-origin|no-referrer)$/)
  for (const name of ['x-powered-by', 'server', 'x-nextjs-matched-path', 'x-middleware-rewrite', 'x-middleware-next'])
    expect(headers[name], `${what}: ${name}`).toBeUndefined()
}

/** Each class of answer: how to get one, its status, and whether caches may keep it. */
const CLASSES: readonly [what: string, status: number, ask: () => Promise<APIResponse>, kept: 'never' | 'maybe'][] = [
  ['a page for anybody', 200, () => nobody.get('/'), 'never'],
  ['a page of a group', 200, () => ada.get(home()), 'never'],
  ['a way to the sign-in', 307, () => nobody.get(home()), 'never'],
  ['a page that is not there', 404, () => nobody.get('/nowhere'), 'never'],
  ['a group that is not theirs', 404, () => ada.get('/g/nowhere'), 'never'],
  ['an API address that is not there', 404, () => nobody.get('/api/v1/nowhere'), 'never'],
  ['a change that was saved', 200, () => sendChange(ada, claims(), aClaim()), 'never'],
  ['a change without sign-in', 401, () => sendChange(nobody, claims(), aClaim()), 'never'],
  ['a change from another site', 403, () => sendChange(ada, claims(), aClaim(), { origin: 'https://evil.example' }), 'never'],
  ['a change that does not fit', 422, () => sendChange(ada, claims(), {}), 'never'],
  ['a change that is too large', 413, () => sendChange(ada, claims(), 'x'.repeat(100_000)), 'never'],
  ['a method that is not taken', 405, () => ada.get(claims()), 'maybe'],
  ['a look-up', 200, () => sendChange(nobody, '/api/v1/processes/lookup', []), 'never'],
  ['the description of the API', 200, () => nobody.get('/api/v1/openapi.json'), 'maybe'],
  ['whether the process lives', 200, () => nobody.get('/api/health/live'), 'never'],
  ['whether it is ready', 200, () => nobody.get('/api/health/ready'), 'never'],
  ["next-auth's answer", 200, () => nobody.get('/api/auth/csrf'), 'never'],
  ['the session', 200, () => ada.get('/api/auth/session'), 'never'],
  [
    'a form from another site',
    403,
    () => nobody.post('/sign-in', { headers: { origin: 'https://evil.example' }, form: { a: 'b' } }),
    'never',
  ],
  ['an address that is too long', 414, () => nobody.get(`/?q=${'x'.repeat(3000)}`), 'never'],
  ['an address that cannot be', 400, () => nobody.get('/g/%00'), 'never'],
  ['the icon', 200, () => nobody.get('/icon.svg'), 'maybe'],
  ['the manifest', 200, () => nobody.get('/manifest.webmanifest'), 'maybe'],
]

test.describe('the headers of', () => {
  for (const [what, status, ask, kept] of CLASSES)
    test(what, async () => {
      const answer = await ask()
      expect(answer.status(), (await answer.text()).slice(0, 300)).toBe(status)
      expectHeaders(answer, what)
      expectPolicy(answer, what)
      expect(answer.headers()['x-request-id'], what).toMatch(/^[0-9a-f-]{36}$/)
      if (kept === 'never') expect(answer.headers()['cache-control'], what).toContain('no-store')
    })

  test('each built file', async () => {
    const html = await (await nobody.get('/')).text()
    const files = [...new Set(html.match(/\/_next\/static\/[\w./~-]+/g) ?? [])]
    for (const kind of ['.js', '.css', '.woff2']) expect(files.filter((file) => file.endsWith(kind)).length, kind).toBeGreaterThan(0)
    for (const file of files) {
      const answer = await nobody.get(file)
      expect(answer.status(), file).toBe(200)
      expectHeaders(answer, file)
      expect(answer.headers()['content-security-policy'], file).toBe("default-src 'none'; frame-ancestors 'none'")
      expect(answer.headers()['cache-control'], file).toContain('immutable')
    }
  })

  test('no source map', async () => {
    const html = await (await nobody.get('/')).text()
    for (const file of new Set(html.match(/\/_next\/static\/[\w./~-]+\.js/g) ?? [])) {
      expect((await nobody.get(`${file}.map`)).status(), file).toBe(404)
      expect(await (await nobody.get(file)).text(), file).not.toContain('sourceMappingURL')
    }
  })
})

test('addresses that hold a secret send no referrer', async () => {
  for (const path of ['/invite/x', '/j/x', '/sign-in', '/api/auth/csrf'])
    expect((await nobody.get(path)).headers()['referrer-policy'], path).toBe('no-referrer')
})

test.describe('every page of the build', () => {
  test('carries the nonce of its own policy on every script and style, a new one each time', async () => {
    expect(pages.length).toBeGreaterThan(10)
    const nonces = new Set<string>()
    for (const path of [...pages, '/nowhere']) {
      const answer = await ada.get(path)
      expect(answer.status(), path).toBeLessThan(500)
      expectHeaders(answer, path)
      expectPolicy(answer, path)
      expect(answer.headers()['cache-control'], path).toMatch(/private.*no-store/)
      const html = await answer.text()
      const nonce = nonceOf(answer)
      for (const tag of html.match(/<(script|style)\b[^>]*>/g) ?? []) expect(tag, path).toContain(`nonce="${nonce}"`)
      expect(html.replaceAll(/<script\b[^>]*>.*?<\/script>/gs, ''), `${path}: no style and no script in a tag`).not.toMatch(
        /<[^>]*\s(style|on[a-z]+)="/,
      )
      expect(nonces.has(nonce), path).toBe(false)
      nonces.add(nonce)
    }
  })

  test('runs in a browser without breaking its policy', async ({ page }) => {
    const broken: string[] = []
    page.on('console', (message) => {
      if (/Content.Security.Policy|violates/i.test(message.text())) broken.push(`${page.url()}: ${message.text()}`)
    })
    page.on('pageerror', (error) => broken.push(`${page.url()}: ${error.message}`))
    await signIn(page, addressOfAda)
    for (const path of pages) {
      await page.goto(path)
      await page.waitForLoadState('load')
    }
    expect(broken).toEqual([])
  })
})

/** What a client may claim about itself to get past a guard that looks at headers. */
const FORGED: readonly Readonly<Record<string, string>>[] = [
  { 'content-security-policy': "default-src * 'unsafe-inline'", 'x-nonce': 'Zm9yZ2VkZm9yZ2VkZm9yZ2Vk' },
  { 'content-security-policy-report-only': "script-src 'nonce-Zm9yZ2VkZm9yZ2VkZm9yZ2Vk'" },
  ...['proxy', 'middleware', 'src/proxy', 'src/middleware', 'pages/_middleware'].map((name) => ({
    'x-middleware-subrequest': Array.from({ length: 6 }, () => name).join(':'),
  })),
  { 'x-middleware-rewrite': '/api/health/live' },
  { 'x-middleware-next': '1' },
  { 'x-middleware-override-headers': 'cookie', 'x-middleware-request-cookie': 'lidsong.session=x' },
  { rsc: '1' },
  { rsc: '1', 'next-router-prefetch': '1' },
  { rsc: '1', 'next-router-prefetch': '1', 'next-router-segment-prefetch': '/_tree' },
  { 'next-router-prefetch': '1' },
  { 'x-nextjs-data': '1' },
  { 'x-now-route-matches': '1' },
  { 'x-forwarded-host': 'evil.example', 'x-forwarded-proto': 'https' },
  { 'x-original-url': '/api/health/live', 'x-rewrite-url': '/api/health/live' },
  { 'x-http-method-override': 'POST' },
  { 'x-invoke-path': '/api/health/live', 'x-invoke-status': '200', 'x-matched-path': '/' },
  { 'next-action': '00000000000000000000000000000000000000000000' },
]

test.describe('a forged header opens nothing:', () => {
  for (const headers of FORGED)
    test(
      Object.entries(headers)
        .map(([name, value]) => `${name}: ${value.slice(0, 30)}`)
        .join(', '),
      async () => {
        const path = `${home()}/households`
        for (const address of [path, `${path}?_rsc=abc12`]) {
          const answer = await nobody.get(address, { headers })
          const said = await answer.text()
          expect(said, 'names of the group').not.toMatch(/Alderby|Dunmarrow/)
          expect(answer.headers().location ?? '', 'where it leads').not.toContain('evil.example')
          expectHeaders(answer, address)
          expectPolicy(answer, address)
          expect(answer.headers()['content-security-policy']).not.toMatch(/unsafe-inline|Zm9yZ2Vk/)
          expect(said).not.toContain('Zm9yZ2Vk')
        }
        // Somebody of another group is no better off, and somebody of this one sees the page under its own policy.
        const mine = await ada.get('/', { headers })
        expectPolicy(mine, 'a page of theirs')
        expect(await mine.text()).not.toContain('Zm9yZ2Vk')
      },
    )

  test('nor anything of the API, which does without the proxy', async () => {
    for (const headers of [...FORGED, { 'x-guarded': '1', 'x-request-id': 'forged' }])
      for (const [address, status] of [
        [`/api/v1${home().replace('/g/', '/groups/')}/days/${evening.dayId}`, 401],
        ['/api/v1/nowhere', 404],
        [`/api/v1/nowhere?q=${'x'.repeat(3000)}`, 414],
        ['/api/v1/%00', 400],
      ] as const) {
        const answer = await nobody.get(address, { headers })
        // Next sends what looks like its own fetch of a page back to the same address with a mark.
        if (answer.status() !== 307) expect(answer.status(), address).toBe(status)
        else expect(answer.headers().location?.split('?')[0], address).toBe(address.split('?')[0])
        expectHeaders(answer, address)
        expectPolicy(answer, address)
        expect(answer.headers()['content-security-policy']).not.toMatch(/unsafe-inline|Zm9yZ2Vk/)
        expect(answer.headers()['x-request-id'], address).toMatch(/^[0-9a-f-]{36}$/)
      }
  })

  /** Addresses of the API in the eyes of one, and of a page in those of another. */
  const CROOKED = [
    '/api/v1/../../sign-in',
    '/api/v1/%2e%2e/%2e%2e/sign-in',
    '/sign-in/../api/v1/nowhere',
    '/%61pi/v1/nowhere',
    '/API/v1/nowhere',
  ]

  test('nor does a crooked address: each page has the nonce of its own policy', async () => {
    for (const path of CROOKED) {
      const { headers, html } = await getRaw(path, { 'x-guarded': '1', 'x-nonce': 'Zm9yZ2VkZm9yZ2VkZm9yZ2Vk' })
      const nonce = /'nonce-([A-Za-z0-9+/=]+)'/.exec(String(headers['content-security-policy']))?.[1]
      expect(nonce, path).toHaveLength(24)
      expect(headers['x-request-id'], path).toMatch(/^[0-9a-f-]{36}$/)
      expect(html, path).not.toContain('Zm9yZ2Vk')
      for (const tag of html.match(/<(script|style)\b[^>]*>/g) ?? []) expect(tag, path).toContain(`nonce="${nonce}"`)
    }
    expect((await getRaw('/api/v1/../../sign-in', {})).html).toContain('<script')
  })

  test('a foreign host does not move the sign-in', async () => {
    const answer = await nobody.get(home(), { headers: { 'x-forwarded-host': 'evil.example', host: 'evil.example' } })
    expect(new URL(String(answer.headers().location), SITE).origin).toBe(SITE)
    const forged = { 'x-forwarded-host': 'evil.example', 'x-forwarded-proto': 'https' }
    const providers = await (await nobody.get('/api/auth/providers', { headers: forged })).text()
    expect(providers).not.toContain('evil.example')
  })
})

/** Asks for a path as it stands: whatever else speaks HTTP here straightens it first. */
function getRaw(path: string, headers: Readonly<Record<string, string>>): Promise<{ headers: IncomingHttpHeaders; html: string }> {
  const { hostname, port } = new URL(SITE)
  return new Promise((resolve, reject) => {
    request({ hostname, port, path, headers }, (answer) => {
      text(answer).then((html) => resolve({ headers: answer.headers, html }), reject)
    })
      .on('error', reject)
      .end()
  })
}

test.describe('the cookies', () => {
  /** The lines of Set-Cookie, by the cookie's name. */
  const cookiesOf = (answer: APIResponse) =>
    Object.fromEntries(
      answer
        .headersArray()
        .filter(({ name }) => name.toLowerCase() === 'set-cookie')
        .map(({ value }) => [value.split('=')[0] ?? '', value]),
    )

  test('of signing in are for this site alone, and for no script', async ({ playwright }) => {
    const context = await caller(playwright)
    const first = await context.get('/api/auth/csrf')
    const { csrfToken } = await first.json()
    const answer = await context.post('/api/auth/callback/credentials', {
      headers: { origin: SITE },
      form: { csrfToken, email: addressOfAda, password: 'plums-and-dill', json: 'true' },
    })
    const cookies = { ...cookiesOf(first), ...cookiesOf(answer) }
    expect(Object.keys(cookies)).toEqual(expect.arrayContaining(['lidsong.session', 'lidsong.csrf']))
    for (const [name, line] of Object.entries(cookies)) {
      expect(line, name).toMatch(/; HttpOnly(;|$)/i)
      expect(line, name).toMatch(/; SameSite=(Lax|Strict)(;|$)/i)
      expect(line, name).toMatch(/; Path=\/(;|$)/i)
      expect(line, name).not.toMatch(/; Domain=/i)
    }
  })

  test('of the session run out, also for an app that has seen them before', async ({ playwright }) => {
    const { sessionSecret } = JSON.parse(await readFile(join(dataFolder, 'settings.json'), 'utf8'))
    const [user] = await askDatabase<{ sub: string; version: number }>(
      'SELECT id AS sub, session_version AS version FROM "user" WHERE email = $1',
      [addressOfAda],
    )
    const session = await encode({ token: { ...user }, secret: sessionSecret, maxAge: 3 })
    const visitor = await caller(playwright)
    const visit = () => visitor.get(home(), { headers: { cookie: `lidsong.session=${session}` } })
    expect((await visit()).status()).toBe(200)
    await expect.poll(async () => (await visit()).status(), { timeout: 8_000 }).toBe(307)
  })

  test('of the session end with the session version, also for an app that has seen them before', async ({ playwright }) => {
    const flora = await signedInCaller(playwright, group.addressOf('Flora'))
    expect((await flora.get(home())).status()).toBe(200)
    await askDatabase('UPDATE "user" SET session_version = session_version + 1 WHERE email = $1', [group.addressOf('Flora')])
    expect((await flora.get(home())).status()).toBe(307)
  })

  test('of the session are signed: a changed one is none', async ({ playwright }) => {
    const { cookies } = await ada.storageState()
    const session = cookies.find(({ name }) => name === 'lidsong.session')?.value ?? ''
    for (const value of [`${session.slice(0, -2)}AA`, 'x', '', 'eyJhbGciOiJub25lIn0..']) {
      const forger = await caller(playwright)
      const answer = await forger.get(home(), { headers: { cookie: `lidsong.session=${value}` } })
      expect(answer.status(), value.slice(-6)).toBe(307)
    }
  })
})
