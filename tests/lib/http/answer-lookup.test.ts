import { describe, expect, it } from 'vitest'
import { answerLookup } from '@/lib/http/answer-lookup'
import { answerCases } from '@/shared/process/answer-cases'
import { freshDatabase } from '@/tests/support/fresh-database'

freshDatabase()

const CASE = { id: 'a', food: 'figs', pack: null, jar: 'pint', method: 'boiling-water', gauge: null, elevationFeet: 650 }

async function send(body: string, kind = 'application/json'): Promise<{ status: number; said: unknown }> {
  const reply = await answerLookup(new Request('http://localhost/look', { method: 'POST', body, headers: { 'content-type': kind } }))
  return { status: reply.status, said: await reply.json() }
}

describe('look-ups over HTTP', () => {
  it('answer like the command line: each case in its place, refusals too', async () => {
    const cases = [
      CASE,
      { ...CASE, id: 2, food: 'green beans' },
      { ...CASE, id: 'c', elevationFeet: 1000.2 },
      { ...CASE, id: 'd', elevationFeet: null },
    ]
    const { status, said } = await send(JSON.stringify(cases))
    expect(status).toBe(200)
    expect(said).toMatchObject([
      { id: 'a', ok: true, minutes: 45, psi: null, process: 'figs--boiling-water' },
      { id: 2, ok: false, reason: 'low-acid-needs-pressure' },
      { id: 'c', ok: true, minutes: 50 },
      { id: 'd', ok: false, reason: 'elevation-unknown' },
    ])
    expect({ ok: true, value: said }).toEqual(JSON.parse(JSON.stringify(answerCases(cases))))
  })

  it('name the case and the field that cannot be read', async () => {
    expect(await send(JSON.stringify([CASE, { ...CASE, id: 'b', jar: 'bucket' }]))).toEqual({
      status: 422,
      said: {
        type: '/problems/bad-input',
        title: 'Not looked up: something does not fit.',
        status: 422,
        detail: 'case 2 ("b"), field jar: expected one of half-pint, 12-oz, pint, pint-and-half, quart, half-gallon',
        instead: 'Mend that case.',
        fields: { 'case 2 ("b")': ['case 2 ("b"), field jar: expected one of half-pint, 12-oz, pint, pint-and-half, quart, half-gallon'] },
      },
    })
  })

  it.each([
    ['no JSON', 'figs', 'application/json', 400, 'Not looked up: the body is no JSON.', /JSON array of cases/],
    ['another kind of body', '[]', 'text/plain', 400, 'Not looked up: this door takes JSON only.', /JSON array of cases/],
    ['an object', '{}', 'application/json', 422, 'Not looked up: something does not fit.', /Mend that case/],
    ['501 cases', JSON.stringify(Array(501).fill(1)), 'application/json', 413, 'Not looked up: too much at once.', /in several requests/],
  ])('refuse %s, and speak of nothing saved', async (_, body, kind, status, title, instead) => {
    expect(await send(body, kind)).toMatchObject({ status, said: { title, instead: expect.stringMatching(instead) } })
  })
})
