import { describe, expect, it } from 'vitest'
import { problemResponse } from '@/lib/http/problem'
import { badInput, notFound, notSaved } from '@/shared/wording/refusal'

describe('a refusal over HTTP', () => {
  it('is problem details after RFC 9457 and is kept by nobody', async () => {
    const response = problemResponse(badInput({ jars: ['Use a whole number.'] }))
    expect(response.status).toBe(422)
    expect(response.headers.get('content-type')).toBe('application/problem+json')
    expect(response.headers.get('cache-control')).toBe('no-store')
    expect(await response.json()).toEqual({
      type: '/problems/bad-input',
      title: 'Not saved: something does not fit.',
      status: 422,
      detail: 'Use a whole number.',
      instead: 'Change what is marked and send it again.',
      fields: { jars: ['Use a whole number.'] },
    })
  })

  it('says when to come back while the store is away', () => {
    expect(problemResponse(notSaved()).headers.get('retry-after')).toBe('5')
    expect(problemResponse(notSaved(true)).headers.get('retry-after')).toBe('5')
  })

  it('takes a better-known time to come back', () => {
    const response = problemResponse(
      { code: 'too-many-requests', status: 429, what: 'Too fast.', instead: 'Wait.' },
      { 'retry-after': '41' },
    )
    expect(response.headers.get('retry-after')).toBe('41')
  })

  it('says no time when coming back would not help', () => {
    expect(problemResponse(notFound('Day')).headers.get('retry-after')).toBeNull()
  })
})
