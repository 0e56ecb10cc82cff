import { describe, expect, it } from 'vitest'
import { blockPath, heatPath } from '@/shared/drawing/heat-path'

const frame = { xOf: (minute: number) => 100 + 2 * minute, base: 88, full: 62 }

describe('heatPath', () => {
  it('stands every corner over its minute at its height above the ground line', () => {
    const slope = [
      { at: 0, level: 0 },
      { at: 5, level: 0.5 },
      { at: 17, level: 1 },
      { at: 27, level: 0 },
    ]
    expect(heatPath(slope, frame)).toBe('M100 88L110 57L134 26L154 88Z')
  })

  it('draws nothing for a load without an outline', () => {
    expect(heatPath([], frame)).toBe('')
  })
})

describe('blockPath', () => {
  it('fills the process from the ground to the full boil', () => {
    expect(blockPath(17, 27, frame)).toBe('M134 26H154V88H134Z')
  })
})
