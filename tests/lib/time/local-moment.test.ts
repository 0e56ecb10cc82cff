import { describe, expect, it } from 'vitest'
import { dayClock } from '@/lib/queries/day-clock'
import { calendarTimeOf, type DayOfClock, instantOf, kitchenTimeOf, localMomentOf } from '@/lib/time/local-moment'

const evening = (date: string, timeZone = 'America/New_York'): DayOfClock => ({ date, timeZone, accessAt: 17 * 60 })

describe('the kitchen’s clock', () => {
  it('is the zone’s, with seconds as a part of a minute', () => {
    expect(kitchenTimeOf(new Date('2027-08-26T22:02:30Z'), evening('2027-08-26'))).toBe(18 * 60 + 2.5)
    expect(kitchenTimeOf(new Date('2027-08-27T04:20:00Z'), evening('2027-08-26'))).toBe(24 * 60 + 20)
    // Newfoundland is 2 h 30 min behind in summer, Kiritimati 14 h ahead: there it is the evening of the 26th while it is the 26th, 03:00, in UTC.
    expect(kitchenTimeOf(new Date('2027-08-26T20:32:00Z'), evening('2027-08-26', 'America/St_Johns'))).toBe(18 * 60 + 2)
    expect(kitchenTimeOf(new Date('2027-08-26T04:02:00Z'), evening('2027-08-26', 'Pacific/Kiritimati'))).toBe(18 * 60 + 2)
    expect(kitchenTimeOf(new Date('2028-03-01T04:59:00Z'), evening('2028-02-29'))).toBe(24 * 60 - 1)
  })

  it('counts no minute that the clocks skip: five minutes of a process are five in the night they are put forward', () => {
    // New York, 14 March 2027: 01:59 EST is followed by 03:00 EDT. A boil at 01:55 EST is 06:55 UTC; at 07:00 UTC the phones show 03:00.
    const day = evening('2027-03-13')
    const boil = kitchenTimeOf(new Date('2027-03-14T06:55:00Z'), day)
    expect(boil).toBe(24 * 60 + 115)
    expect(kitchenTimeOf(new Date('2027-03-14T07:00:00Z'), day) - boil).toBe(5)
    expect(calendarTimeOf(new Date('2027-03-14T07:00:00Z'), day.date, day.timeZone)).toBe(24 * 60 + 180)
  })

  it('never goes back: ten minutes later is ten minutes later in the night the clocks are put back', () => {
    // New York, 7 November 2027: 01:59 EDT is followed by 01:00 EST. 01:55 EDT is 05:55 UTC; ten minutes later the phones show 01:05.
    const day = evening('2027-11-06')
    const boil = kitchenTimeOf(new Date('2027-11-07T05:55:00Z'), day)
    expect(kitchenTimeOf(new Date('2027-11-07T06:05:00Z'), day) - boil).toBe(10)
  })

  it('is right on the day itself on which they were changed', () => {
    expect(kitchenTimeOf(new Date('2027-03-14T22:02:00Z'), evening('2027-03-14'))).toBe(18 * 60 + 2) // 18:02 EDT
    expect(kitchenTimeOf(new Date('2027-11-07T23:02:00Z'), evening('2027-11-07'))).toBe(18 * 60 + 2) // 18:02 EST
  })

  it('is what a running day asks', async () => {
    const day = { id: 'day', isDemo: false, hardEnd: 28 * 60, ...evening('2027-03-13') }
    const noDatabase = undefined as never // a real day's clock needs no row
    expect(await dayClock(noDatabase, 'fern-hollow', day, new Date('2027-03-14T07:00:30Z'))).toBe(26 * 60 + 0.5)
  })
})

describe('a moment of the zone’s clocks', () => {
  it('is an instant and back, also where a day is a half-hour off or a date ahead', () => {
    for (const zone of ['America/New_York', 'America/St_Johns', 'Pacific/Kiritimati', 'Asia/Kathmandu', 'UTC'])
      for (const moment of ['2027-08-24T20:00', '2028-02-29T23:58', '2027-12-31T23:59', '2027-01-01T00:00'])
        expect(localMomentOf(instantOf(moment, zone), zone), zone).toBe(moment)
  })

  it('that the clocks skip is the later reading', () => {
    expect(localMomentOf(instantOf('2027-03-14T02:30', 'America/New_York'), 'America/New_York')).toBe('2027-03-14T03:30')
  })
})
