import { describe, expect, it } from 'vitest'
import { fromOurPages } from '@/lib/http/same-origin'

process.env.DATABASE_URL ??= 'postgresql://nobody@localhost/none'
process.env.NEXTAUTH_URL = 'http://localhost:3000'
process.env.NEXTAUTH_SECRET ??= 'a secret that only the tests know of'

const isOurs = (headers: Record<string, string>) => fromOurPages(new Headers(headers)).ok

describe('a change', () => {
  it.each([
    ['the page says our own origin', { origin: 'http://localhost:3000' }],
    ['the browser says same-origin and hides the page', { 'sec-fetch-site': 'same-origin' }],
    ['the browser says same-origin and the page sends no referrer', { origin: 'null', 'sec-fetch-site': 'same-origin' }],
  ])('is let in when %s', (_, headers) => {
    expect(isOurs(headers)).toBe(true)
  })

  it.each([
    ['nothing says where it is from', {}],
    ['its page hides', { origin: 'null' }],
    ['it is another site', { origin: 'https://evil.example' }],
    ['it is another port', { origin: 'http://localhost:3001' }],
    ['it is another scheme', { origin: 'https://localhost:3000' }],
    ['its host begins like ours', { origin: 'http://localhost:3000.evil.example' }],
    ['it is a neighbour of the site', { 'sec-fetch-site': 'same-site' }],
    ['it was typed in', { 'sec-fetch-site': 'none' }],
    ['another site calls itself same-origin', { origin: 'https://evil.example', 'sec-fetch-site': 'same-origin' }],
    [
      'the host is forged to fit a foreign origin',
      { origin: 'https://evil.example', host: 'evil.example', 'x-forwarded-host': 'evil.example' },
    ],
  ])('is refused when %s', (_, headers) => {
    expect(isOurs(headers)).toBe(false)
  })

  it('is refused as forbidden, with what to do', () => {
    const answer = fromOurPages(new Headers())
    expect(answer.ok ? null : answer.problem).toMatchObject({
      status: 403,
      code: 'foreign-page',
      instead: expect.stringMatching(/Open Lidsong/),
    })
  })
})
