import { describe, expect, it } from 'vitest'
import { measureLevel } from '@/shared/drawing/measure-level'

describe('measureLevel', () => {
  it('fills the jar by what is needed and leaves room for what is spare', () => {
    expect(measureLevel(48, 52)).toEqual({ filled: 48 / 52, spare: 4, over: false, tight: false })
  })

  it('calls a twentieth or less tight: 20 of 430 is, 22 of 430 is not', () => {
    expect([measureLevel(410, 430).tight, measureLevel(408, 430).tight, measureLevel(5, 5).tight]).toEqual([true, false, true])
  })

  it('lets the water stand over the brim when more is needed than there is', () => {
    expect(measureLevel(80, 24)).toEqual({ filled: 1, spare: -56, over: true, tight: false })
    expect(measureLevel(80, 0)).toEqual({ filled: 1, spare: -80, over: true, tight: false })
  })

  it('draws an empty jar when nothing is needed of nothing', () => {
    expect(measureLevel(0, 0)).toEqual({ filled: 0, spare: 0, over: false, tight: false })
  })
})
