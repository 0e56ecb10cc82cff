import { type APIResponse, expect, test } from '@playwright/test'

/** What every answer carries, whatever it is an answer to. */
const EVERYWHERE = {
  'strict-transport-security': 'max-age=31536000; includeSubDomains',
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'permissions-policy': 'camera=(self), geolocation=(), microphone=()',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
}

const KINDS: [kind: string, path: string, status: number][] = [
  ['a page', '/', 200],
  ['a form', '/sign-in', 200],
  ['a page that is not there', '/nowhere/at/all', 404],
  ['a page of a group, to a stranger', '/g/no-such-group', 307],
  ['a handler', '/api/health/live', 200],
  ['a handler that is not there', '/api/nowhere', 404],
  ['a file', '/icon.svg', 200],
  ['the manifest', '/manifest.webmanifest', 200],
]

const nonceOf = (reply: APIResponse) => /'nonce-([^']+)'/.exec(reply.headers()['content-security-policy'] ?? '')?.[1]

test.describe('every answer', () => {
  for (const [kind, path, status] of KINDS) {
    test(`to a request for ${kind} carries the headers that protect it`, async ({ request }) => {
      const reply = await request.get(path, { maxRedirects: 0 })
      expect(reply.status()).toBe(status)
      const headers = reply.headers()
      expect(headers).toMatchObject(EVERYWHERE)
      expect(headers['referrer-policy']).toMatch(/^(strict-origin-when-cross-origin|no-referrer)$/)
      expect(headers['x-powered-by']).toBeUndefined()
      const policy = headers['content-security-policy'] ?? ''
      for (const rule of ["default-src 'self'", "object-src 'none'", "base-uri 'none'", "form-action 'self'", "frame-ancestors 'none'"]) {
        expect(policy).toContain(rule)
      }
      expect(policy).not.toMatch(/unsafe-eval|script-src[^;]*unsafe-inline/)
    })
  }

  test('to a sign-in page sends no referrer on, and to a page no copy into a shared store', async ({ request }) => {
    const reply = await request.get('/sign-in')
    expect(reply.headers()['referrer-policy']).toBe('no-referrer')
    expect(reply.headers()['cache-control']).toContain('no-store')
  })

  test('has a nonce and an id of its own, whatever the request says', async ({ request }) => {
    const forged = { 'x-nonce': 'forged', 'x-request-id': 'forged', 'content-security-policy': "script-src 'nonce-forged'" }
    const replies = await Promise.all([0, 1, 2].map(() => request.get('/', { headers: forged })))
    const nonces = replies.map(nonceOf)
    expect(new Set(nonces).size).toBe(3)
    for (const nonce of nonces) expect(Buffer.from(nonce ?? '', 'base64')).toHaveLength(16)
    expect(new Set(replies.map((reply) => reply.headers()['x-request-id'])).size).toBe(3)
    for (const reply of replies) expect(await reply.text()).not.toContain('forged')
  })

  test('that is a page puts its own nonce on each script', async ({ request }) => {
    const reply = await request.get('/')
    const scripts = (await reply.text()).match(/<script\b[^>]*>/g) ?? []
    expect(scripts.length).toBeGreaterThan(0)
    for (const script of scripts) expect(script).toContain(`nonce="${nonceOf(reply)}"`)
  })

  test('that names a secret of ours does not exist: no version, path or map', async ({ request, page }) => {
    const addresses = new Set<string>()
    page.on('response', (response) => addresses.add(response.url()))
    await page.goto('/', { waitUntil: 'load' })
    const scripts = [...addresses].filter((address) => address.endsWith('.js'))
    expect(scripts.length).toBeGreaterThan(0)
    for (const script of scripts) expect((await request.get(`${script}.map`)).status()).toBe(404)
    for (const path of ['/api/health/ready', '/api/health/live', '/nowhere']) {
      const text = await (await request.get(path)).text()
      expect(text).not.toMatch(/postgres(ql)?:|node_modules|\/lib\/|at \w+ \(/)
    }
  })
})
