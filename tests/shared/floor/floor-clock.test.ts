import { describe, expect, it } from 'vitest'
import { AHEAD_MINUTES, checkWhen, LATE_MINUTES, placeOnDay, type WhenRules } from '@/shared/floor/floor-clock'
import { parseClock } from '@/shared/time/kitchen-time'

const at = (clock: string) => {
  const read = parseClock(clock)
  if (!read.ok) throw new Error(clock)
  return read.value
}
const evening = { accessAt: at('17:00'), hardEnd: at('22:15') }
const rules = (more: Partial<WhenRules> = {}): WhenRules => ({ hours: evening, kind: 'begin', after: [], now: null, ...more })

describe('a clock time typed on the floor', () => {
  it('stays on the day while the day runs', () => {
    expect(placeOnDay(at('17:00'), evening)).toBe(1020)
    expect(placeOnDay(at('23:59'), evening)).toBe(1439)
  })

  it('stays on a day that fills the clock round, from the minute the kitchen opens', () => {
    const roundTheClock = { accessAt: at('01:00'), hardEnd: at('23:00') } // work may run to 03:00 of the night after
    expect(placeOnDay(at('01:00'), roundTheClock)).toBe(60)
    expect(placeOnDay(at('02:00'), roundTheClock)).toBe(120)
    expect(placeOnDay(at('00:59'), roundTheClock)).toBe(1440 + 59)
  })

  it('belongs to the night after when work may still run then', () => {
    expect(placeOnDay(at('00:20'), evening)).toBe(1460)
    expect(placeOnDay(at('02:15'), evening)).toBe(1440 + 135) // 22:15 and 240 min
  })

  it('stays before the day when the night after is over by then, and is refused there', () => {
    expect(placeOnDay(at('02:16'), evening)).toBe(136)
    expect(placeOnDay(at('16:59'), evening)).toBe(1019)
    expect(checkWhen(at('16:59'), rules())).toEqual({ ok: false, problem: { kind: 'outside-the-day', at: 1019, from: 1020, until: 1335 } })
  })
})

describe('when something may have happened', () => {
  it('begins between key and closing time, both included', () => {
    expect(checkWhen(at('17:00'), rules()).ok).toBe(true)
    expect(checkWhen(at('22:15'), rules()).ok).toBe(true)
    expect(checkWhen(at('22:16'), rules()).ok).toBe(false)
  })

  it('may end later than closing time, but not without end', () => {
    expect(checkWhen(at('22:16'), rules({ kind: 'end' })).ok).toBe(true)
    expect(checkWhen(evening.hardEnd + LATE_MINUTES, rules({ kind: 'end' })).ok).toBe(true)
    expect(checkWhen(evening.hardEnd + LATE_MINUTES + 1, rules({ kind: 'end' })).ok).toBe(false)
  })

  it('is at most five minutes ahead of the clock on the wall', () => {
    expect(checkWhen(at('18:05'), rules({ now: at('18:00') })).ok).toBe(true)
    expect(AHEAD_MINUTES).toBe(5)
    expect(checkWhen(at('18:06'), rules({ now: at('18:00') }))).toEqual({ ok: false, problem: { kind: 'not-yet', at: 1086, now: 1080 } })
  })

  it('is not before what has to come first; what has not come is no hindrance', () => {
    const after = [
      { what: 'loading', at: at('18:02') },
      { what: 'the full boil', at: null },
    ]
    expect(checkWhen(at('18:02'), rules({ after })).ok).toBe(true)
    const eveBefore = rules({ hours: { accessAt: -120, hardEnd: 600 }, after: [{ what: 'the full boil', at: null }] })
    expect(checkWhen(-60, eveBefore)).toEqual({ ok: true, value: -60 })
    expect(checkWhen(at('18:01'), rules({ after }))).toEqual({
      ok: false,
      problem: { kind: 'out-of-order', at: 1081, after: 'loading', afterAt: 1082 },
    })
  })
})
