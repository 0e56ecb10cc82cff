import { createHash, randomBytes, randomUUID } from 'node:crypto'
import { type APIRequestContext, type APIResponse, expect, test } from '@playwright/test'
import { caller, sendChange, signedInCaller } from './support/caller'
import { hiddenFieldsOf, postForm } from './support/posted-form'
import { askDatabase, type Evening, eveningOf, traceOfChanges } from './support/served-database'
import { startGroup } from './support/start-group'

const NEIGHBOURHOOD = 'Wrong Way Lane'
const MEGABYTE = 'x'.repeat(1_000_000)

let evening: Evening
let ada: APIRequestContext
let esme: APIRequestContext
let nobody: APIRequestContext
/** Ids of the demo group, which this group's people are not in. */
let elsewhere: { groupId: string; dayId: string; preparationId: string; householdId: string }

test.beforeAll(async ({ playwright }) => {
  const group = await startGroup(NEIGHBOURHOOD)
  evening = await eveningOf(group.groupId)
  ada = await signedInCaller(playwright, group.addressOf('Ada'))
  esme = await signedInCaller(playwright, group.addressOf('Esme'))
  nobody = await caller(playwright)
  const [other] = await askDatabase<typeof elsewhere>(
    `SELECT p.group_id AS "groupId", p.day_id AS "dayId", p.id AS "preparationId", h.id AS "householdId"
     FROM preparation p JOIN household h ON h.group_id = p.group_id WHERE p.group_id NOT IN (SELECT group_id FROM person JOIN "user" u ON u.id = user_id WHERE u.email = $1) LIMIT 1`,
    [group.addressOf('Ada')],
  )
  if (!other) throw new Error('there is no other group')
  elsewhere = other
})

const claims = () => `/api/v1/groups/${evening.groupId}/claims`
const events = () => `/api/v1/groups/${evening.groupId}/days/${evening.dayId}/events`
const jam = () => evening.products.J ?? { id: '', offered: 0, claimed: 0 }
const goodClaim = () => ({ preparationId: jam().id, householdId: evening.households.Alderby, jars: 9 })

/** It was refused with a 4xx, in words that say what to do, and nothing of the group has moved. */
async function expectRefused(answer: APIResponse, status: number, code: string, before: string): Promise<void> {
  const said = await answer.text()
  expect(answer.status(), said).toBe(status)
  expect(answer.headers()['content-type']).toContain('application/problem+json')
  const problem = JSON.parse(said)
  expect(problem).toMatchObject({ type: `/problems/${code}`, status, title: expect.stringMatching(/\w/) })
  expect(problem.instead, 'what to do instead').toMatch(/\w+ \w+/)
  expect(said, 'nothing of the inside is shown').not.toMatch(/prisma|SELECT |node_modules|\bat .*:\d+:\d+/i)
  expect(await traceOfChanges(evening.groupId)).toBe(before)
}

interface Wrong {
  readonly what: string
  readonly body: () => unknown
  readonly status: number
  readonly code: string
  readonly headers?: Readonly<Record<string, string | undefined>>
}

const claimWith = (changed: Record<string, unknown>) => () => ({ ...goodClaim(), ...changed })
const badInput = (what: string, body: () => unknown): Wrong => ({ what, body, status: 422, code: 'bad-input' })
const badJars = (jars: unknown) => badInput(`${JSON.stringify(jars)} jars`, claimWith({ jars }))
const from = (what: string, headers: Wrong['headers']): Wrong => ({ what, body: goodClaim, status: 403, code: 'foreign-page', headers })

const WRONG_CLAIMS: readonly Wrong[] = [
  { what: 'a body that is no JSON', body: () => '{oops', status: 400, code: 'no-json' },
  { what: 'an empty body', body: () => '', status: 400, code: 'no-json' },
  {
    what: 'a form',
    body: goodClaim,
    status: 400,
    code: 'wrong-content-type',
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
  },
  {
    what: 'a body that says it is text',
    body: goodClaim,
    status: 400,
    code: 'wrong-content-type',
    headers: { 'content-type': 'text/plain' },
  },
  { what: 'a text of 1 MB', body: claimWith({ preparationId: MEGABYTE }), status: 413, code: 'too-large' },
  { what: 'lists nine deep', body: claimWith({ jars: [[[[[[[[1]]]]]]]] }), status: 413, code: 'too-large' },
  { what: 'a list of 501', body: () => Array.from({ length: 501 }, () => 1), status: 413, code: 'too-large' },
  { what: 'an id with NUL', body: claimWith({ preparationId: 'a\u0000b' }), status: 400, code: 'no-text' },
  badInput('nothing', () => 'null'),
  badInput('a list', () => [goodClaim()]),
  badInput('a number', () => '7'),
  badInput('a field that is not asked for', claimWith({ offered: 1000 })),
  badInput('a role smuggled in', claimWith({ role: 'organiser' })),
  badInput('a prototype smuggled in', () => JSON.stringify(goodClaim()).replace('{', '{"__proto__":{"jars":1},')),
  badInput('a missing field', () => ({ preparationId: jam().id, jars: 1 })),
  badInput('an object for an id', claimWith({ preparationId: { not: '' } })),
  badInput('another object for an id', claimWith({ householdId: { contains: '' } })),
  badInput('a list for an id', claimWith({ householdId: ['alderby'] })),
  badInput('an id with a way up', claimWith({ preparationId: '../../x' })),
  badInput('an id of a thousand letters', claimWith({ householdId: 'h'.repeat(1000) })),
  badJars(2.5),
  badJars('2.5'),
  badJars(-1),
  badJars(1_000_001),
  badJars('seven'),
  badJars(''),
  badJars(null),
  badJars(true),
  badJars([3]),
  { what: 'an id that nobody has', body: claimWith({ preparationId: randomUUID() }), status: 404, code: 'not-found' },
  {
    what: "another group's product",
    body: () => ({ ...goodClaim(), preparationId: elsewhere.preparationId }),
    status: 404,
    code: 'not-found',
  },
  {
    what: "another group's household",
    body: () => ({ ...goodClaim(), householdId: elsewhere.householdId }),
    status: 404,
    code: 'not-found',
  },
  {
    what: 'more jars than are on offer',
    body: () => ({ ...goodClaim(), jars: jam().offered + 1 }),
    status: 409,
    code: 'more-than-offered',
  },
  { ...badInput('no key', goodClaim), headers: { 'idempotency-key': undefined } },
  { ...badInput('a key that is no UUID', goodClaim), headers: { 'idempotency-key': 'again' } },
  from('another site', { origin: 'https://evil.example' }),
  from('nowhere', { origin: undefined }),
  from('a hidden page', { origin: 'null' }),
  from('a neighbour of the site', { origin: undefined, 'sec-fetch-site': 'same-site' }),
  from('another site that forges our name', { origin: 'https://evil.example', 'x-forwarded-host': 'evil.example' }),
]

test.describe('a claim over HTTP is refused, and nothing written, with', () => {
  for (const { what, body, status, code, headers } of WRONG_CLAIMS)
    test(what, async () => {
      const before = await traceOfChanges(evening.groupId)
      await expectRefused(await sendChange(ada, claims(), body(), headers), status, code, before)
    })
})

test.describe('a claim over HTTP is refused, and nothing written,', () => {
  test('of somebody who is not signed in', async () => {
    const before = await traceOfChanges(evening.groupId)
    await expectRefused(await sendChange(nobody, claims(), goodClaim()), 401, 'sign-in-first', before)
  })

  test('for a household next door', async () => {
    const before = await traceOfChanges(evening.groupId)
    await expectRefused(await sendChange(esme, claims(), goodClaim()), 403, 'not-allowed', before)
  })

  test('in another group', async () => {
    const before = await traceOfChanges(elsewhere.groupId)
    const answer = await sendChange(ada, `/api/v1/groups/${elsewhere.groupId}/claims`, {
      ...elsewhere,
      groupId: undefined,
      dayId: undefined,
      jars: 1,
    })
    expect(answer.status()).toBe(404)
    expect(await traceOfChanges(elsewhere.groupId)).toBe(before)
  })

  test('in a group that cannot be', async () => {
    for (const groupId of ['nowhere', '%00', 'a%00b', '..%2f..', '%7B%22not%22:%22%22%7D', 'g'.repeat(500)]) {
      const answer = await sendChange(ada, `/api/v1/groups/${groupId}/claims`, goodClaim())
      expect(answer.status(), groupId).toBeGreaterThanOrEqual(400)
      expect(answer.status(), groupId).toBeLessThan(500)
    }
  })

  test('by any other method', async () => {
    const before = await traceOfChanges(evening.groupId)
    const headers = {
      origin: new URL(String(process.env.TEST_BASE_URL)).origin,
      'idempotency-key': randomUUID(),
      'x-http-method-override': 'POST',
    }
    for (const method of ['GET', 'HEAD', 'PUT', 'PATCH', 'DELETE']) {
      const answer = await ada.fetch(claims(), { method, headers, data: method === 'GET' || method === 'HEAD' ? undefined : goodClaim() })
      expect(answer.status(), method).toBe(405)
    }
    expect(await traceOfChanges(evening.groupId)).toBe(before)
  })
})

test.describe('a claim that is sent again', () => {
  test('with the same key is answered with the same bytes, and counts once', async () => {
    const headers = { 'idempotency-key': randomUUID() }
    const first = await sendChange(ada, claims(), goodClaim(), headers)
    expect(first.status(), await first.text()).toBe(200)
    expect(first.headers()['idempotent-replayed']).toBeUndefined()
    const after = await traceOfChanges(evening.groupId)

    const again = await Promise.all(Array.from({ length: 5 }, () => sendChange(ada, claims(), goodClaim(), headers)))
    for (const answer of again) {
      expect(answer.status()).toBe(200)
      expect(await answer.body()).toEqual(await first.body())
      expect(answer.headers()['idempotent-replayed']).toBe('true')
    }
    expect(await traceOfChanges(evening.groupId)).toBe(after)
  })

  test('five times at once counts once', async () => {
    const headers = { 'idempotency-key': randomUUID() }
    const [before] = await askDatabase<{ entries: string }>('SELECT count(*) AS entries FROM history WHERE group_id = $1', [
      evening.groupId,
    ])
    const answers = await Promise.all(Array.from({ length: 5 }, () => sendChange(ada, claims(), { ...goodClaim(), jars: 8 }, headers)))
    const bodies = await Promise.all(answers.map((answer) => answer.text()))
    expect(answers.map((answer) => answer.status())).toEqual([200, 200, 200, 200, 200])
    expect(new Set(bodies).size).toBe(1)
    expect(answers.filter((answer) => answer.headers()['idempotent-replayed'] === undefined)).toHaveLength(1)
    const [after] = await askDatabase<{ entries: string }>('SELECT count(*) AS entries FROM history WHERE group_id = $1', [evening.groupId])
    expect(Number(after?.entries)).toBe(Number(before?.entries) + 1)
  })

  test('with the same key and other jars is refused', async () => {
    const headers = { 'idempotency-key': randomUUID() }
    expect((await sendChange(ada, claims(), goodClaim(), headers)).status()).toBe(200)
    const before = await traceOfChanges(evening.groupId)
    await expectRefused(await sendChange(ada, claims(), { ...goodClaim(), jars: 7 }, headers), 409, 'key-used-before', before)
  })

  test('with the key of somebody else is refused', async () => {
    const headers = { 'idempotency-key': randomUUID() }
    expect((await sendChange(ada, claims(), goodClaim(), headers)).status()).toBe(200)
    const before = await traceOfChanges(evening.groupId)
    const own = { preparationId: jam().id, householdId: evening.households.Dunmarrow, jars: 1 }
    await expectRefused(await sendChange(esme, claims(), own, headers), 409, 'key-used-before', before)
  })
})

test.describe('an event of the floor is refused, and nothing written, with', () => {
  const WRONG_EVENTS: readonly Wrong[] = [
    badInput('no type', () => ({})),
    badInput('a type that is none', () => ({ type: 'explode' })),
    badInput('an object for a type', () => ({ type: { not: '' } })),
    badInput('a load that is an object', () => ({ type: 'finish-process', loadId: { not: '' }, at: '18:40' })),
    badInput('a time that is none', () => ({ type: 'finish-process', loadId: 'L1', at: '25:99' })),
    badInput('a field that is not asked for', () => ({ type: 'finish-process', loadId: 'L1', at: '18:40', dayId: elsewhere.dayId })),
    { what: 'a text of 1 MB', body: () => ({ type: 'note-incident', text: MEGABYTE }), status: 413, code: 'too-large' },
  ]
  for (const { what, body, status, code } of WRONG_EVENTS)
    test(what, async () => {
      const before = await traceOfChanges(evening.groupId)
      await expectRefused(await sendChange(ada, events(), body()), status, code, before)
    })

  test("another group's day", async () => {
    const before = await traceOfChanges(evening.groupId)
    const path = `/api/v1/groups/${evening.groupId}/days/${elsewhere.dayId}/events`
    const answer = await sendChange(ada, path, { type: 'finish-process', loadId: 'L1', at: '18:40' })
    await expectRefused(answer, 404, 'not-found', before)
  })
})

test.describe('the form for a household', () => {
  const path = () => `/g/${evening.groupId}/households`
  const good = { name: 'Gladewood', headcount: '3', language: 'en', contact: '' }
  const hidden = () => hiddenFieldsOf(ada, path(), 'add-household')

  interface WrongForm {
    readonly what: string
    readonly fields?: Readonly<Record<string, string>>
    readonly headers?: Readonly<Record<string, string | undefined>>
    readonly status: number
    readonly says: RegExp
  }

  const WRONG_FORMS: readonly WrongForm[] = [
    { what: 'no name', fields: { name: '' }, status: 422, says: /Give the household a name/ },
    { what: 'a name of 61 letters', fields: { name: 'n'.repeat(61) }, status: 422, says: /At most 60 characters/ },
    { what: 'half a person', fields: { headcount: '2.5' }, status: 422, says: /whole number/ },
    { what: 'a text for a number', fields: { headcount: 'many' }, status: 422, says: /How many people/ },
    { what: 'a language that is none', fields: { language: 'xx' }, status: 422, says: /Choose a language/ },
    { what: 'a field that is not asked for', fields: { groupId: 'x' }, status: 422, says: /does not fit/ },
    { what: 'a spoilt key', fields: { _key: 'again' }, status: 422, says: /does not fit/ },
    { what: 'a change that is none', fields: { _command: 'drop-everything' }, status: 404, says: /not found/ },
    { what: 'a name of 1 MB', fields: { name: MEGABYTE }, status: 413, says: /64 kB/ },
    { what: 'a page of another site', headers: { origin: 'https://evil.example' }, status: 403, says: /did not come from this site/ },
    { what: 'no word of where it is from', headers: { origin: undefined }, status: 403, says: /did not come from this site/ },
  ]

  for (const { what, fields, headers, status, says } of WRONG_FORMS)
    test(`is refused, and nothing written, with ${what}`, async () => {
      const before = await traceOfChanges(evening.groupId)
      const answer = await postForm(ada, path(), { ...(await hidden()), ...good, ...fields }, headers)
      expect(answer.status()).toBe(status)
      expect(await answer.text()).toMatch(says)
      expect(await traceOfChanges(evening.groupId)).toBe(before)
    })

  test("is refused for another group's household list", async () => {
    const before = await traceOfChanges(elsewhere.groupId)
    for (const _group of [elsewhere.groupId, 'nowhere', '', 'a\u0000b', '{"not":""}']) {
      const answer = await postForm(ada, path(), { ...(await hidden()), ...good, _group })
      expect(answer.status(), _group).toBe(404)
    }
    expect(await traceOfChanges(elsewhere.groupId)).toBe(before)
  })

  test('gives back what was typed', async () => {
    const answer = await postForm(ada, path(), { ...(await hidden()), ...good, name: 'Typed Once', headcount: '77' })
    expect(answer.status()).toBe(422)
    expect(await answer.text()).toContain('value="Typed Once"')
  })

  test('counts once when it is tapped twice, and never leads off the site', async () => {
    const fields = { ...(await hidden()), ...good, name: 'Tapped Twice', _next: '//evil.example/' }
    const answers = await Promise.all([postForm(ada, path(), fields), postForm(ada, path(), fields)])
    for (const answer of answers) {
      expect(answer.status()).toBe(303)
      expect(new URL(String(answer.headers().location), String(process.env.TEST_BASE_URL)).pathname).toBe(`/g/${evening.groupId}`)
    }
    const rows = await askDatabase('SELECT 1 FROM household WHERE group_id = $1 AND name = $2', [evening.groupId, 'Tapped Twice'])
    expect(rows).toHaveLength(1)
  })

  test('is not sent by opening an address', async () => {
    const before = await traceOfChanges(evening.groupId)
    const query = new URLSearchParams({ ...(await hidden()), ...good, name: 'By Address' })
    for (const name of [...query.keys()].filter((key) => key.startsWith('$'))) query.delete(name)
    await ada.get(`${path()}?${query}`)
    expect(await traceOfChanges(evening.groupId)).toBe(before)
  })
})

test.describe('an address that cannot be', () => {
  test('is answered with a 4xx', async () => {
    const { groupId, dayId } = evening
    const never = [
      '/g/%00',
      `/g/${groupId}/days/%00`,
      `/g/${groupId}/days/${elsewhere.dayId}`,
      `/g/${elsewhere.groupId}`,
      '/invite/x',
      '/j/%00',
    ]
    const long = [`/g/${groupId}/days/${dayId}?x=${'y'.repeat(3000)}`, `/g/${'g'.repeat(3000)}`]
    for (const path of [...never, ...long]) {
      const answer = await ada.get(path)
      expect(answer.status(), path.slice(0, 60)).toBeGreaterThanOrEqual(400)
      expect(answer.status(), path.slice(0, 60)).toBeLessThan(500)
    }
  })
})

test.describe('an invitation', () => {
  const ENDS: readonly [why: string, columns: string, says: RegExp][] = [
    ['that has expired', `expires_at = now() - interval '1 day'`, /has expired.*Ask the organiser for a new one/s],
    ['that was taken back', 'revoked_at = now()', /was taken back.*Ask the organiser/s],
  ]
  for (const [why, columns, says] of ENDS)
    test(`${why} is gone, and says what to do`, async () => {
      const token = randomBytes(32).toString('base64url')
      const hash = createHash('sha256').update(token).digest('hex')
      await askDatabase(
        `INSERT INTO invite (group_id, id, token_hash, role, expires_at, created_by)
         SELECT $1, $2, $3, 'member', now() + interval '1 day', user_id FROM person WHERE group_id = $1 AND role = 'organiser' LIMIT 1`,
        [evening.groupId, randomUUID(), hash],
      )
      expect((await nobody.get(`/invite/${token}`)).status()).toBe(200)
      await askDatabase(`UPDATE invite SET ${columns} WHERE token_hash = $1`, [hash])
      const answer = await nobody.get(`/invite/${token}`)
      expect(answer.status()).toBe(410)
      expect(await answer.text()).toMatch(says)
    })
})
