import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  earliestEnd,
  emptyCanner,
  failLoad,
  finishProcess,
  type LoadClock,
  loseTemperature,
  momentsOf,
  reachTemperature,
  startLoad,
} from '@/shared/floor/process-clock'
import type { Result } from '@/shared/result/result'

const planned: LoadClock = {
  code: 'L01',
  state: 'planned',
  processMinutes: null,
  loadedAt: null,
  atTemperatureAt: null,
  temperatureLostAt: null,
  processedAt: null,
  emptiedAt: null,
  restarts: 0,
}
const must = <Value, Problem>(result: Result<Value, Problem>): Value => {
  if (!result.ok) throw new Error(JSON.stringify(result.problem))
  return result.value
}
// L01 of the Plum and Pickle Evening: loaded 18:02 (1082), full boil after 24 min, 10 min of process.
const loaded = must(startLoad(planned, 1082, 10))
const boiling = must(reachTemperature(loaded, 1106))

describe('the process clock', () => {
  it('does not run at loading', () => {
    expect(loaded).toMatchObject({ state: 'coming-up', loadedAt: 1082, atTemperatureAt: null, processMinutes: 10 })
    expect(earliestEnd(loaded)).toBeNull()
    expect(finishProcess(loaded, 1200)).toMatchObject({
      ok: false,
      problem: { kind: 'wrong-state', state: 'coming-up', to: 'cooling-down' },
    })
  })

  it('starts at the full boil', () => {
    expect(boiling).toMatchObject({ state: 'processing', atTemperatureAt: 1106 })
    expect(earliestEnd(boiling)).toBe(1116)
  })

  it('ends at the published minute and never before', () => {
    expect(finishProcess(boiling, 1115)).toEqual({
      ok: false,
      problem: { kind: 'process-too-short', at: 1115, notBefore: 1116, minutes: 10, since: 1106 },
    })
    expect(must(finishProcess(boiling, 1116))).toMatchObject({ state: 'cooling-down', processedAt: 1116 })
  })

  it('starts again from zero when the boil is lost, and counts it', () => {
    const lost = must(loseTemperature(boiling, 1115))
    expect(lost).toMatchObject({ state: 'coming-up', atTemperatureAt: null, temperatureLostAt: 1115, restarts: 1 })
    expect(finishProcess(lost, 1116).ok).toBe(false)

    const again = must(reachTemperature(lost, 1118))
    expect(finishProcess(again, 1127)).toMatchObject({ ok: false, problem: { kind: 'process-too-short', notBefore: 1128, since: 1118 } })
    expect(must(finishProcess(again, 1128))).toMatchObject({ state: 'cooling-down', restarts: 1 })
  })

  it('cannot be set back to before the boil was lost', () => {
    const lost = must(loseTemperature(boiling, 1115))
    expect(reachTemperature(lost, 1106)).toEqual({
      ok: false,
      problem: { kind: 'out-of-order', at: 1106, after: 'the boil or the pressure lost', afterAt: 1115 },
    })
  })

  it('is not lost before it ran, nor reached twice', () => {
    expect(loseTemperature(loaded, 1100)).toMatchObject({ ok: false, problem: { kind: 'wrong-state', to: 'coming-up' } })
    expect(reachTemperature(boiling, 1107)).toMatchObject({ ok: false, problem: { kind: 'wrong-state', to: 'processing' } })
    expect(reachTemperature(loaded, 1081)).toMatchObject({ ok: false, problem: { kind: 'out-of-order', after: 'loading' } })
    expect(loseTemperature(boiling, 1105)).toMatchObject({ ok: false, problem: { kind: 'out-of-order' } })
    expect(finishProcess(boiling, 1105)).toMatchObject({ ok: false, problem: { kind: 'out-of-order' } })
  })

  it('never ends a load whose clock is not there, whatever its state says', () => {
    expect(finishProcess({ ...boiling, atTemperatureAt: null }, 1200)).toMatchObject({
      ok: false,
      problem: { kind: 'wrong-state', to: 'cooling-down' },
    })
    expect(finishProcess({ ...boiling, processMinutes: null }, 1200)).toMatchObject({ ok: false, problem: { kind: 'wrong-state' } })
  })
})

describe('a canner load', () => {
  it('is loaded once', () => {
    expect(startLoad(loaded, 1090, 10)).toMatchObject({ ok: false, problem: { kind: 'wrong-state', name: 'L01', to: 'loading' } })
  })

  it('is emptied after its process, and not before', () => {
    const cooling = must(finishProcess(boiling, 1116))
    expect(emptyCanner(boiling, 1116)).toMatchObject({ ok: false, problem: { kind: 'wrong-state' } })
    expect(emptyCanner(cooling, 1115)).toMatchObject({ ok: false, problem: { kind: 'out-of-order', after: 'the end of the process' } })
    expect(must(emptyCanner(cooling, 1126))).toMatchObject({ state: 'done', emptiedAt: 1126 })
  })

  it('may be given up until it is done', () => {
    expect(must(failLoad(loaded, 1110))).toMatchObject({ state: 'failed', emptiedAt: 1110 })
    expect(must(failLoad(boiling, 1110)).state).toBe('failed')
    expect(failLoad(boiling, 1100)).toMatchObject({ ok: false, problem: { kind: 'out-of-order' } })
    const done = must(emptyCanner(must(finishProcess(boiling, 1116)), 1126))
    expect(failLoad(done, 1130)).toMatchObject({ ok: false, problem: { kind: 'wrong-state' } })
  })

  it('takes what happens in the same minute, and names what a minute before would be too early for', () => {
    const lost = must(loseTemperature(boiling, 1106))
    expect(must(startLoad(planned, 1082, 10))).toMatchObject({ state: 'coming-up', loadedAt: 1082, processMinutes: 10 })
    expect(must(reachTemperature(loaded, 1082)).atTemperatureAt).toBe(1082)
    expect(must(reachTemperature(lost, 1106)).atTemperatureAt).toBe(1106)
    const cooling = must(finishProcess(boiling, 1116))
    expect(must(emptyCanner(cooling, 1116)).emptiedAt).toBe(1116)
    const tooEarly = (answer: ReturnType<typeof failLoad>) =>
      answer.ok || answer.problem.kind !== 'out-of-order' ? null : answer.problem.after
    expect(tooEarly(failLoad(loaded, 1081))).toBe('loading')
    expect(tooEarly(failLoad(boiling, 1105))).toBe('the full boil or pressure')
    expect(tooEarly(failLoad(lost, 1105))).toBe('the boil or the pressure lost')
    expect(tooEarly(failLoad(cooling, 1115))).toBe('the end of the process')
  })

  it('of a day that begins the evening before has times below nothing, and what has not come is in nobody’s way', () => {
    const early = must(startLoad(planned, -90, 10))
    expect(must(finishProcess(must(reachTemperature(early, -60)), -50)).processedAt).toBe(-50)
  })

  it('whose state and clock do not agree goes by its state', () => {
    expect(finishProcess({ ...boiling, state: 'coming-up' }, 1110)).toMatchObject({ ok: false, problem: { kind: 'wrong-state' } })
    expect([earliestEnd({ ...boiling, processMinutes: null }), earliestEnd({ ...boiling, atTemperatureAt: null })]).toEqual([null, null])
  })

  it('lists its moments in the order they must have come', () => {
    expect(momentsOf(boiling).map(({ at }) => at)).toEqual([1082, null, 1106, null])
  })

  it('is processed only when the whole time lay after the last full boil, whatever is tapped in whatever order', () => {
    const tap = fc.record({
      act: fc.constantFrom(reachTemperature, loseTemperature, finishProcess, emptyCanner),
      after: fc.integer({ min: -3, max: 14 }),
    })
    fc.assert(
      fc.property(fc.array(tap, { maxLength: 14 }), (taps) => {
        let clock = loaded
        let now = 1082
        let lastBoil: number | null = null
        for (const { act, after } of taps) {
          now += after
          const next = act(clock, now)
          if (!next.ok) continue
          clock = next.value
          if (act === reachTemperature) lastBoil = now
          if (act === loseTemperature) lastBoil = null
        }
        if (clock.processedAt !== null) expect(clock.processedAt - (lastBoil ?? Number.POSITIVE_INFINITY)).toBeGreaterThanOrEqual(10)
      }),
    )
  })
})
