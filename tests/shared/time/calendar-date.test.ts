import { describe, expect, it } from 'vitest'
import { dateIn, isoDate, sayDate, sayShortDate } from '@/shared/time/calendar-date'
import { isTimeZone } from '@/shared/forms/group'
import { TIME_ZONES } from '@/shared/time/time-zones'

describe('a calendar date', () => {
  it('is said with its weekday', () => {
    // 26 August 2027 is a Thursday; 29 February 2028 a Tuesday.
    expect(sayDate('2027-08-26')).toBe('Thursday 26 August 2027')
    expect(sayDate('2028-02-29')).toBe('Tuesday 29 February 2028')
    expect(sayShortDate('2027-08-26')).toBe('26 Aug 2027')
  })

  it('is that of the place: late in the evening it is tomorrow further east', () => {
    const moment = new Date('2027-08-27T02:30:00Z')
    expect(['America/New_York', 'Europe/London', 'Pacific/Auckland'].map((zone) => dateIn(zone, moment))).toEqual([
      '2027-08-26',
      '2027-08-27',
      '2027-08-27',
    ])
    expect(isoDate(new Date('2027-08-26T00:00:00Z'))).toBe('2027-08-26')
  })
})

describe('time zones', () => {
  it('are offered once each, and every one that is offered is taken', () => {
    expect(new Set(TIME_ZONES.map(({ value }) => value)).size).toBe(TIME_ZONES.length)
    expect(TIME_ZONES.filter(({ value }) => !isTimeZone(value))).toEqual([])
    expect(TIME_ZONES[0]).toEqual({ value: 'America/New_York', label: 'New York (America)' })
  })
})
