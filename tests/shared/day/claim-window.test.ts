import { describe, expect, it } from 'vitest'
import { type ClaimTimes, claimWindow, claimWindowProblems } from '@/shared/day/claim-window'

const at = (clock: string) => new Date(`2027-08-20T${clock}:00Z`)
const times: ClaimTimes = { state: 'claiming', claimsOpenAt: at('12:00'), claimsCloseAt: at('20:00'), earlyMinutes: 120 }
const kindOf = (clock: string, hasHeadStart = false, change: Partial<ClaimTimes> = {}) =>
  claimWindow({ ...times, ...change }, at(clock), hasHeadStart).kind

describe('the window for asking', () => {
  it.each([
    ['11:59', false, 'not-yet'],
    ['12:00', false, 'open'],
    ['20:00', false, 'open'],
    ['20:01', false, 'over'],
    ['09:59', true, 'not-yet'],
    ['10:00', true, 'open'],
  ] as const)('at %s, head start %s: %s', (clock, hasHeadStart, kind) => expect(kindOf(clock, hasHeadStart)).toBe(kind))

  it('says from when this household may ask', () => {
    expect(claimWindow(times, at('09:00'), true)).toEqual({ kind: 'not-yet', from: at('10:00') })
    expect(claimWindow(times, at('09:00'), false)).toEqual({ kind: 'not-yet', from: at('12:00') })
    expect(claimWindow(times, at('11:00'), true)).toEqual({ kind: 'open', isEarly: true })
  })

  it('is open from the opening by hand, and until the closing by hand, where no moment is set', () => {
    expect(kindOf('03:00', false, { claimsOpenAt: null })).toBe('open')
    expect(kindOf('23:59', false, { claimsCloseAt: null })).toBe('open')
  })

  it('is not there for a draft, and over as soon as the day is planned', () => {
    expect(kindOf('13:00', false, { state: 'draft' })).toBe('draft')
    expect(kindOf('13:00', false, { state: 'planned' })).toBe('over')
  })
})

describe('a window as typed', () => {
  const facts = { begins: '2027-08-26T17:00', now: '2027-08-01T09:00', isDemo: false, kept: null }
  const good = { claimsOpenAt: '2027-08-10T08:00', claimsCloseAt: '2027-08-24T20:00', earlyHours: 24 }

  it('passes when it opens before it closes, and closes before the day begins', () => expect(claimWindowProblems(good, facts)).toEqual({}))

  it.each([
    ['closes after the day began', { claimsCloseAt: '2027-08-26T17:01' }, 'claimsCloseAt'],
    ['closes in the past', { claimsOpenAt: undefined, earlyHours: 0, claimsCloseAt: '2027-08-01T08:59' }, 'claimsCloseAt'],
    ['opens when it closes', { claimsOpenAt: '2027-08-24T20:00' }, 'claimsOpenAt'],
    ['opens with the day', { claimsOpenAt: '2027-08-26T17:00', claimsCloseAt: undefined }, 'claimsOpenAt'],
    ['has a head start to no opening', { claimsOpenAt: undefined }, 'earlyHours'],
  ])('that %s is told', (_, change, field) => expect(Object.keys(claimWindowProblems({ ...good, ...change }, facts))).toEqual([field]))

  it('keeps a moment of closing that stands, and takes a demo’s times as typed', () => {
    const past = { claimsCloseAt: '2027-07-30T20:00', earlyHours: 0 }
    expect(claimWindowProblems(past, { ...facts, kept: '2027-07-30T20:00' })).toEqual({})
    expect(claimWindowProblems(past, { ...facts, isDemo: true })).toEqual({})
  })
})
