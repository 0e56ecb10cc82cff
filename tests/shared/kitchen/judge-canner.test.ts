import { describe, expect, it } from 'vitest'
import { judgeCanner } from '@/shared/kitchen/judge-canner'

const DAY = '2027-08-26'
const dial = { method: 'pressure', gauge: 'dial', gaugeTestedOn: '2027-05-04', gaugeErrorPsi: 1, outOfUse: null }

describe('a canner', () => {
  it('with a dial that was tested within the year and is off by 2 psi at most is usable', () => {
    for (const gaugeErrorPsi of [-2, 0, 1, 2]) expect(judgeCanner({ ...dial, gaugeErrorPsi }, DAY).isUsable).toBe(true)
    for (const gaugeErrorPsi of [-2.1, 2.5]) expect(judgeCanner({ ...dial, gaugeErrorPsi }, DAY).isUsable).toBe(false)
  })

  it('is usable on the anniversary of the test and not the day after', () => {
    expect(judgeCanner({ ...dial, gaugeTestedOn: '2026-08-26' }, DAY).isUsable).toBe(true)
    expect(judgeCanner({ ...dial, gaugeTestedOn: '2026-08-25' }, DAY)).toMatchObject({
      isUsable: false,
      whyNot: 'The dial gauge was last tested on 25 Aug 2026, more than a year before.',
    })
  })

  it('whose test is later than the day, missing, or without a figure is not usable', () => {
    expect(judgeCanner({ ...dial, gaugeTestedOn: '2027-09-01' }, DAY).isUsable).toBe(false)
    expect(judgeCanner({ ...dial, gaugeTestedOn: null }, DAY).isUsable).toBe(false)
    expect(judgeCanner({ ...dial, gaugeErrorPsi: null }, DAY).isUsable).toBe(false)
  })

  it('without a dial needs no test, and out of use is out of use', () => {
    const water = { method: 'boiling-water', gauge: null, gaugeTestedOn: null, gaugeErrorPsi: null, outOfUse: null }
    expect(judgeCanner(water, DAY)).toEqual({ isUsable: true })
    expect(judgeCanner({ ...water, method: 'pressure', gauge: 'weighted' }, DAY)).toEqual({ isUsable: true })
    expect(judgeCanner({ ...water, outOfUse: 'leaks' }, DAY)).toMatchObject({ isUsable: false, whyNot: 'Out of use: leaks' })
  })
})
