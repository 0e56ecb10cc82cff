import { describe, expect, it } from 'vitest'
import { type LoadQuery, loadProcess, readRowKey } from '@/shared/floor/load-process'
import { lookUpProcess } from '@/shared/process/look-up-process'
import { bindingConditions } from '@/shared/recipes/own-recipe'

const query: LoadQuery = {
  processRowKey: 'tomato-juice--dial/pressure/hot/pint/option-2/0-2000-ft',
  jarSize: 'pint',
  method: 'pressure',
  gauge: 'dial',
  gaugeErrorPsi: 0,
  gaugeTestedOn: '2027-08-01',
  elevationFeet: 650,
  day: '2027-08-26',
  jarTreatment: 'washed-hot',
}

describe('the process of a load', () => {
  it('keeps the pressure option that the day chose', () => {
    // USDA AIB No. 539, Guide 3, Tomato juice, dial gauge: 20 min at 6 psi or 15 min at 11 psi.
    expect(loadProcess(query)).toMatchObject({ ok: true, value: { minutes: 15, psi: 11 } })
    expect(loadProcess({ ...query, processRowKey: query.processRowKey.replace('/option-2', '') })).toMatchObject({
      ok: true,
      value: { minutes: 20, psi: 6 },
    })
  })

  it('of a group’s own recipe waits for every condition, in the words and the edition that were confirmed', () => {
    const found = lookUpProcess({
      ...{ food: 'tomato-juice', pack: 'hot', jar: 'pint', method: 'pressure', gauge: 'dial', elevation: { feet: 650 }, option: 2 },
      ...{ gaugeErrorPsi: 0, gaugeTestedOn: '2027-08-01', askedOn: '2027-08-26' },
    })
    if (!found.ok) return expect.unreachable()
    const confirmed = bindingConditions(found.value).map((each) => ({ ...each, edition: found.value.edition }))
    expect(loadProcess({ ...query, confirmed })).toMatchObject({ ok: true, value: { minutes: 15 } })
    const [open, ...others] = confirmed
    expect(loadProcess({ ...query, confirmed: others })).toEqual({
      ok: false,
      problem: { kind: 'conditions-open', statements: [open?.statement] },
    })
    expect(loadProcess({ ...query, confirmed: confirmed.map((each) => ({ ...each, edition: 'older' })) }).ok).toBe(false)
    expect(loadProcess({ ...query, confirmed: [] }).ok).toBe(false)
  })

  it('names the one source where nothing is longer than published', () => {
    const answer = loadProcess(query)
    expect(answer.ok && answer.value.source).toMatch(/Guide 3, Tomato juice$/)
  })

  const peaches = { processRowKey: 'peaches--boiling-water/boiling-water/hot/quart/0-1000-ft', jarSize: 'quart' } as const
  const inWater: LoadQuery = { ...query, ...peaches, method: 'boiling-water', gauge: null, gaugeTestedOn: null }

  it('asks no gauge of a canner without one, and one that was tested of a dial', () => {
    expect(loadProcess({ ...inWater, gaugeErrorPsi: 2 })).toMatchObject({ ok: true, value: { psi: null } })
    expect(loadProcess({ ...query, gaugeErrorPsi: 1 })).toMatchObject({ ok: true, value: { psi: 12 } }) // 11 published, 1 shown too much
    expect(loadProcess({ ...query, gaugeTestedOn: null })).toMatchObject({ ok: false, problem: { kind: 'no-process' } })
  })
})

describe('a row key', () => {
  it('holds food, pack and option', () => {
    expect(readRowKey(query.processRowKey)).toEqual({ food: 'tomato-juice', pack: 'hot', option: 2 })
    expect(readRowKey('figs--boiling-water/boiling-water/raw/pint/0-1000-ft')).toEqual({ food: 'figs', pack: 'raw', option: undefined })
    expect(readRowKey('figs--boiling-water/boiling-water/raw')).toEqual({ food: 'figs', pack: 'raw', option: undefined })
  })

  it.each(['', 'figs', 'figs/boiling-water', 'figs/boiling-water/warm/pint'])('is not %j', (key) => {
    expect(() => readRowKey(key)).toThrow(RangeError)
    expect(() => readRowKey(key)).toThrow(`Not a row key: ${key}`)
  })
})
