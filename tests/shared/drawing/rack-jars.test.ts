import { describe, expect, it } from 'vitest'
import { rackJars } from '@/shared/drawing/rack-jars'

describe('rackJars', () => {
  it('gives eight jars their full width when there is room', () => {
    expect(rackJars(8, 212)).toEqual({ drawn: 8, pitch: 13, width: 10, says: '8' })
  })

  it('never reaches into the next load', () => {
    for (const jars of [1, 7, 14, 18, 24, 36]) {
      const fit = rackJars(jars, 212)
      expect(fit.drawn * fit.pitch).toBeLessThanOrEqual(212 - 44)
    }
  })

  it('draws every jar or none, and counts in words those that would be too thin to tell apart', () => {
    expect(rackJars(36, 200)).toMatchObject({ drawn: 0, says: '36 jars' })
    expect(rackJars(8, 82)).toMatchObject({ drawn: 0, says: '8' })
    expect(rackJars(14, 99)).toMatchObject({ drawn: 0, says: '14 jars' })
    for (const room of [20, 45, 80, 100, 300]) expect([0, 9]).toContain(rackJars(9, room).drawn)
  })
})
