import { describe, expect, it } from 'vitest'
import { CROWD_INSET, crowdFrom, crowdMinutesAt, crowdRows } from '@/shared/drawing/crowd-rows'
import { WALL_TOP } from '@/shared/drawing/wall-rows'

describe('crowdRows', () => {
  it('fits fourteen canners on one wall, with room for letters of 28 px in each', () => {
    const { lines, full, bottom } = crowdRows(14)
    expect(bottom - WALL_TOP).toBeLessThanOrEqual(660)
    const pitches = lines.map((line, row) => line - (lines[row - 1] ?? WALL_TOP))
    expect(new Set(pitches)).toEqual(new Set([45]))
    expect(full).toBeGreaterThanOrEqual(28)
    expect(full).toBeLessThan(45)
  })

  it('draws few canners no larger than they need, and grows downwards past what a wall holds', () => {
    expect(crowdRows(2).lines).toEqual([WALL_TOP + 96, WALL_TOP + 192])
    expect(crowdRows(40).lines.at(-1)).toBe(WALL_TOP + 40 * 44)
  })
})

describe('crowdFrom', () => {
  it('keeps the whole day before it begins, and an hour behind now while it runs', () => {
    expect(crowdFrom(420, null)).toBe(420)
    expect(crowdFrom(420, 450)).toBe(420)
    expect(crowdFrom(420, 725)).toBe(660)
  })
})

describe('crowdMinutesAt', () => {
  it('is the middle of the process where the name leaves room, else right of the name, else nowhere', () => {
    expect(crowdMinutesAt('T4', 45, { from: 100, middle: 190, to: 260 })).toBe(190)
    const pushed = crowdMinutesAt('J11', 10, { from: 100, middle: 150, to: 200 })
    expect(pushed).toBe(100 + CROWD_INSET + 3 * 18 + 4 + 18)
    expect(crowdMinutesAt('J11', 10, { from: 100, middle: 150, to: 182 })).toBeNull()
  })
})
