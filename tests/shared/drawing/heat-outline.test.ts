import { describe, expect, it } from 'vitest'
import { heatOutline } from '@/shared/drawing/heat-outline'

describe('heatOutline', () => {
  const frame = { xOf: (minutes: number) => 100 + 2 * minutes, base: 88, full: 62, step: 8, half: 24 }

  it('steps, climbs, blocks, rests and steps for a boiling-water load', () => {
    const outline = heatOutline({ loading: 5, comeUp: 12, process: 10, rest: 5, unloading: 5 }, frame)
    expect(outline.load).toBe('M100 88V80H110L134 26H154V64H164V80H174V88Z')
    expect(outline.block).toBe('M134 26H154V88H134Z')
    expect([outline.blockFrom, outline.blockTo]).toEqual([134, 154])
  })

  it('has a shelf for venting and a slope for the pressure that falls', () => {
    const outline = heatOutline({ loading: 5, comeUp: 8, vent: 10, pressurise: 4, process: 20, rest: 30, unloading: 5 }, frame)
    // shelf from minute 5 + 8 = 13 for 10 minutes, at 8 + 36 = 44 above the base
    expect(outline.load).toBe('M100 88V80H110L126 44H146L154 26H194L254 80H264V88Z')
  })
})
