import { describe, expect, it } from 'vitest'
import {
  brokeOff,
  CHANGED_SINCE,
  notFoundInTime,
  REPLACED,
  STOPPED_EARLY,
  sayGap,
  sayTried,
  tooManyBatches,
} from '@/shared/wording/say-search'

describe('what there is to say of a search', () => {
  const all = [CHANGED_SINCE, REPLACED, STOPPED_EARLY, brokeOff('It needed more memory than it may.', true), tooManyBatches(10_000)]
  it.each(all.map((refusal) => [refusal.code, refusal] as const))('%s says what, why and what instead', (_, { what, why, instead }) => {
    for (const part of [what, why, instead]) expect(part).toMatch(/^[A-Z].*\.$/)
  })

  it('names the plan that is left, where there is one', () => {
    expect(brokeOff('Why.', true).instead).toContain('last good plan')
    expect(brokeOff('Why.', false).instead).not.toContain('last good plan')
  })

  it('names figures with their unit', () => {
    expect(tooManyBatches(10_000)).toMatchObject({
      what: 'No plan: 10,000 batches in one day.',
      why: 'A day may have at most 2,000 tested batches.',
    })
    expect(sayGap(1300, 1289)).toBe('at most 11 min')
    expect(sayGap(1300, 1300)).toBe('none: no plan can end earlier')
    expect([sayTried(1, 2), sayTried(1234, 60)]).toEqual(['1 order of the loads in 2 s', '1,234 orders of the loads in 60 s'])
    expect(notFoundInTime(120, 'The kettles are not free in time.').why).toContain('120 s')
  })
})
