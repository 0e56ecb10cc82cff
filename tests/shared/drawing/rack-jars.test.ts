import { describe, expect, it } from 'vitest'
import { rackJars } from '@/shared/drawing/rack-jars'

describe('rackJars', () => {
  it('gives eight jars their full width when there is room', () => {
    expect(rackJars(8, 212)).toEqual({ drawn: 8, pitch: 13, width: 10 })
  })

  it('never reaches into the next load', () => {
    for (const jars of [1, 7, 14, 18, 24, 36]) {
      const fit = rackJars(jars, 212)
      expect(fit.drawn * fit.pitch).toBeLessThanOrEqual(212 - 44)
    }
  })

  it('lets one jar stand for all where they would be too thin to count', () => {
    expect(rackJars(36, 200).drawn).toBe(1)
  })
})
