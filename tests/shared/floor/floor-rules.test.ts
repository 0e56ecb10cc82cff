import { describe, expect, it } from 'vitest'
import { cannerHolds } from '@/shared/floor/canner-holds'
import { type CannerNow, checkLoading, type Operator, operatorSkill, type WaitingJars } from '@/shared/floor/check-loading'
import { checkFilling, checkLids, type LidStock } from '@/shared/floor/fill-batch'
import { type LoadQuery, loadProcess, readRowKey } from '@/shared/floor/load-process'
import { minutesDone, nextStep } from '@/shared/floor/next-step'
import type { LoadClock } from '@/shared/floor/process-clock'
import { checkSeal, keepingDeadline, settleUnsealed } from '@/shared/floor/unsealed-jars'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { PUBLISHED_ROWS } from '@/shared/process/published-rows'

const capacity = { halfPints: 12, pints: 9, quarts: 7 }
const jam: WaitingJars = {
  batch: 'J1',
  jars: 8,
  jarSize: 'half-pint',
  pack: 'hot',
  method: 'boiling-water',
  processRowKey: 'jam',
  processMinutes: 10,
}
const canner: CannerNow = { label: 'BW1', method: 'boiling-water', gauge: null, outOfUse: null, busyWith: null, ...capacity }
const ada: Operator = { name: 'Ada', ageClass: 'adult', skills: ['organiser', 'boiling-water-operator'] }

describe('what a canner holds', () => {
  it('is what was measured, and of sizes between, never more than of the next larger', () => {
    expect(JAR_SIZES.map((size) => cannerHolds(capacity, size))).toEqual([12, 9, 9, 7, 7, 0])
  })
})

describe('loading a canner', () => {
  it('takes jars up to its last place', () => {
    expect(checkLoading([jam], canner, ada)).toEqual({ ok: true, value: 8 })
    expect(checkLoading([jam, { ...jam, batch: 'J2', jars: 4 }], canner, ada)).toEqual({ ok: true, value: 12 })
    expect(checkLoading([{ ...jam, jars: 13 }], canner, ada)).toEqual({
      ok: false,
      problem: { kind: 'canner-too-small', canner: 'BW1', jars: 13, holds: 12, jarSize: 'half-pint' },
    })
  })

  it.each([
    ['methods', { method: 'pressure' as const }],
    ['jar sizes', { jarSize: 'pint' as const }],
    ['packs', { pack: 'raw' as const }],
    ['minutes', { processMinutes: 15 }],
    ['processes', { processRowKey: 'jelly' }],
  ])('refuses mixed %s', (what, other) => {
    expect(checkLoading([jam, { ...jam, ...other }], canner, ada)).toEqual({ ok: false, problem: { kind: 'mixed-load', what } })
  })

  it('refuses no jars, a canner out of use, one that is not empty', () => {
    expect(checkLoading([], canner, ada)).toMatchObject({ problem: { kind: 'nothing-to-load' } })
    expect(checkLoading([jam], { ...canner, outOfUse: 'lid bent' }, ada)).toMatchObject({
      problem: { kind: 'canner-out-of-use', why: 'lid bent' },
    })
    expect(checkLoading([jam], { ...canner, busyWith: 'L02' }, ada)).toMatchObject({ problem: { kind: 'canner-busy', load: 'L02' } })
  })

  it('refuses an operator who is a minor or was not trained for the method', () => {
    expect(checkLoading([jam], canner, { ...ada, ageClass: 'teen' })).toMatchObject({ problem: { kind: 'operator-too-young' } })
    expect(checkLoading([jam], canner, { ...ada, skills: ['pressure-operator'] })).toEqual({
      ok: false,
      problem: { kind: 'operator-unskilled', operator: 'Ada', skill: 'boiling-water-operator' },
    })
    expect(operatorSkill('atmospheric-steam')).toBe('steam-operator')
  })
})

describe('the process of a load', () => {
  const pickles: LoadQuery = {
    processRowKey: 'dill-pickles-fresh-pack--boiling-water/boiling-water/raw/pint/0-1000-ft',
    jarSize: 'pint',
    method: 'boiling-water',
    gauge: null,
    gaugeErrorPsi: null,
    gaugeTestedOn: null,
    elevationFeet: 650,
    day: '2027-08-26',
    jarTreatment: 'washed-hot',
  }
  const jamQuery: LoadQuery = {
    ...pickles,
    processRowKey: 'jam-jelly-added-pectin--boiling-water/boiling-water/hot/half-pint/0-1000-ft',
    jarSize: 'half-pint',
  }

  it('is read again at this kitchen elevation, not copied from the plan', () => {
    expect(loadProcess(pickles)).toMatchObject({ ok: true, value: { minutes: 10, psi: null, pack: 'raw', rowKey: pickles.processRowKey } })
    expect(loadProcess({ ...pickles, elevationFeet: 1001 })).toMatchObject({
      ok: true,
      value: { minutes: 15, rowKey: 'dill-pickles-fresh-pack--boiling-water/boiling-water/raw/pint/1001-6000-ft' },
    })
  })

  it('is 10 minutes for jam in jars that were only washed hot, 5 in boiled ones, and says where both are from', () => {
    const washed = loadProcess(jamQuery)
    expect(washed).toMatchObject({ ok: true, value: { minutes: 10 } })
    expect(washed.ok && washed.value.source).toContain('10 min for jars that were not boiled')
    expect(loadProcess({ ...jamQuery, jarTreatment: 'boiled-in-pot' })).toMatchObject({ ok: true, value: { minutes: 5 } })
  })

  it('is refused for jars that need boiling where no longer time is published', () => {
    expect(loadProcess({ ...jamQuery, method: 'atmospheric-steam' })).toEqual({
      ok: false,
      problem: { kind: 'jars-need-boiling', minutes: 10 },
    })
  })

  it('is refused on a dial gauge without a test of this year, and corrects the needle of a tested one', () => {
    const beans: LoadQuery = {
      ...pickles,
      processRowKey: 'green-beans--dial/pressure/hot/pint/0-2000-ft',
      method: 'pressure',
      gauge: 'dial',
      gaugeErrorPsi: 1,
      gaugeTestedOn: '2027-08-01',
    }
    expect(loadProcess(beans)).toMatchObject({ ok: true, value: { psi: 12, minutes: 20 } }) // 11 psi published, 1 shown too much
    expect(loadProcess({ ...beans, gaugeTestedOn: null })).toMatchObject({
      problem: { kind: 'no-process', refusal: { code: 'gauge-untested' } },
    })
    expect(loadProcess({ ...beans, gaugeTestedOn: '2026-08-25' })).toMatchObject({ problem: { refusal: { code: 'gauge-test-expired' } } })
    expect(loadProcess({ ...beans, gaugeErrorPsi: null })).toMatchObject({ ok: true, value: { psi: 11 } })
    expect(loadProcess({ ...beans, gauge: 'weighted', elevationFeet: 650 })).toMatchObject({ ok: true, value: { psi: 10 } })
  })

  it('finds the food again by the row key of every published row', () => {
    for (const row of PUBLISHED_ROWS) expect(readRowKey(`${row.id}/x/hot/pint/0-1000-ft`).food).toBe(row.foodId)
    expect(readRowKey('tomatoes--dial/pressure/raw/quart/option-2/0-2000-ft')).toEqual({ food: 'tomatoes', pack: 'raw', option: 2 })
    expect(() => readRowKey('nonsense')).toThrow(RangeError)
  })
})

describe('filling a batch', () => {
  it('takes up to the highest yield, and more only when it was counted again', () => {
    expect(checkFilling({ jars: 9, high: 9, isCountedAgain: false }).ok).toBe(true)
    expect(checkFilling({ jars: 10, high: 9, isCountedAgain: false })).toEqual({
      ok: false,
      problem: { kind: 'above-yield', jars: 10, high: 9 },
    })
    expect(checkFilling({ jars: 10, high: 9, isCountedAgain: true }).ok).toBe(true)
  })

  const lids: LidStock = { lot: 'LID-27', mouth: 'regular', count: 96, used: 90, since: '2027-08-01' }
  it('counts the lids of the lot down', () => {
    expect(checkLids(lids, 6, '2027-08-26')).toEqual({ ok: true, value: 0 })
    expect(checkLids(lids, 7, '2027-08-26')).toEqual({ ok: false, problem: { kind: 'too-few-lids', lot: 'LID-27', left: 6, jars: 7 } })
    expect(checkLids({ ...lids, used: 99 }, 1, '2027-08-26')).toMatchObject({ problem: { kind: 'too-few-lids', left: 0 } })
  })

  it('refuses lids past their age, and lids whose age nobody knows', () => {
    expect(checkLids({ ...lids, since: '2020-08-01' }, 1, '2027-08-26')).toMatchObject({ problem: { kind: 'lids-not-usable' } })
    const unknown = checkLids({ ...lids, since: null }, 1, '2027-08-26')
    expect(unknown).toEqual({ ok: false, problem: { kind: 'lids-not-usable', lot: 'LID-27', why: 'Nobody knows how old they are.' } })
  })
})

describe('a jar without a seal', () => {
  const processed = { pack: 'hot' as const, wasProcessed: true, since: 1116 }

  it('has 24 hours after a whole process and 2 hours after a failed one', () => {
    expect(keepingDeadline(processed).until).toBe(1116 + 1440)
    expect(keepingDeadline({ ...processed, wasProcessed: false }).until).toBe(1116 + 120)
    expect(keepingDeadline(processed).rule.source).toContain('NC State')
  })

  it('is chilled or processed again until then, and thrown out after', () => {
    expect(settleUnsealed(processed, 'fridge', 1116 + 1440).ok).toBe(true)
    expect(settleUnsealed(processed, 'again', 1116 + 1440).ok).toBe(true)
    expect(settleUnsealed(processed, 'fridge', 1116 + 1441)).toEqual({
      ok: false,
      problem: { kind: 'too-late-to-keep', hours: 24, deadline: 2556 },
    })
    expect(settleUnsealed({ ...processed, wasProcessed: false }, 'again', 1116 + 121)).toMatchObject({ problem: { hours: 2 } })
    expect(settleUnsealed(processed, 'discard', 1116 + 5000).ok).toBe(true)
  })

  it('is not processed again when it was packed raw', () => {
    expect(settleUnsealed({ ...processed, pack: 'raw' }, 'again', 1200)).toEqual({ ok: false, problem: { kind: 'raw-pack-not-again' } })
    expect(settleUnsealed({ ...processed, pack: 'raw' }, 'fridge', 1200).ok).toBe(true)
  })

  it('is called sealed only after 12 hours of cooling', () => {
    expect(checkSeal(1126, 1126 + 719)).toEqual({ ok: false, problem: { kind: 'seal-too-early', at: 1845, notBefore: 1846 } })
    expect(checkSeal(1126, 1126 + 720).ok).toBe(true)
  })
})

describe('what a canner wants next', () => {
  const load: LoadClock = {
    code: 'L05',
    state: 'processing',
    processMinutes: 10,
    loadedAt: 1165,
    atTemperatureAt: 1187,
    temperatureLostAt: null,
    processedAt: null,
    emptiedAt: null,
    restarts: 0,
  }

  it('is the next step of its life, with the minute from which it may be done', () => {
    expect(nextStep({ ...load, state: 'planned' }, 'boiling-water')).toEqual({ kind: 'load' })
    expect(nextStep({ ...load, state: 'loading' }, 'boiling-water')).toEqual({ kind: 'reach' })
    expect(nextStep({ ...load, state: 'coming-up' }, 'boiling-water')).toEqual({ kind: 'reach' })
    expect(nextStep(load, 'boiling-water')).toEqual({ kind: 'finish', notBefore: 1197 })
    expect(nextStep({ ...load, atTemperatureAt: null }, 'boiling-water')).toEqual({ kind: 'reach' })
    expect(nextStep({ ...load, state: 'cooling-down', processedAt: 1197 }, 'boiling-water')).toEqual({ kind: 'empty', notBefore: 1202 })
    expect(nextStep({ ...load, state: 'cooling-down', processedAt: 1197 }, 'pressure')).toEqual({ kind: 'empty', notBefore: null })
    expect(nextStep({ ...load, state: 'cooling-down' }, 'boiling-water')).toEqual({ kind: 'empty', notBefore: null })
    expect(nextStep({ ...load, state: 'done' }, 'boiling-water')).toEqual({ kind: 'nothing' })
    expect(nextStep({ ...load, state: 'failed' }, 'boiling-water')).toEqual({ kind: 'nothing' })
  })

  it('counts whole minutes of the process, never more than there are', () => {
    expect([1186, 1187, 1191.9, 1192, 1197, 1300].map((now) => minutesDone(load, now))).toEqual([0, 0, 4, 5, 10, 10])
    expect(minutesDone({ ...load, atTemperatureAt: null }, 1200)).toBe(0)
  })
})
