import { describe, expect, it } from 'vitest'
import { wallRows } from '@/shared/drawing/wall-rows'

describe('wallRows', () => {
  it('fills a wall of 1,080 lines with three kettles, one table and two canners', () => {
    expect(wallRows({ kettles: 3, tables: 1, canners: 2 })).toMatchObject({
      kettles: [262, 316, 370],
      tables: [440],
      canners: [602, 798],
      bottom: 868,
      rackBelow: 58,
    })
  })

  it('pushes more stations together without laying one on another', () => {
    const rows = wallRows({ kettles: 5, tables: 2, canners: 4 })
    const down = [...rows.kettles, ...rows.tables, ...rows.canners]
    expect(down).toEqual([...down].sort((a, b) => a - b))
    expect(Math.min(...rows.kettles.slice(1).map((y, row) => y - (rows.kettles[row] ?? 0)))).toBeGreaterThanOrEqual(37)
    const cannerPitch = (rows.canners[1] ?? 0) - (rows.canners[0] ?? 0)
    expect(cannerPitch).toBeGreaterThan(rows.heat.full + rows.rackBelow)
  })

  it('gives each soak a line of its own above the kettles, on the same wall', () => {
    const rows = wallRows({ soaks: 2, kettles: 3, tables: 1, canners: 2 })
    expect(rows.soaks).toEqual([242, 274])
    expect((rows.kettles[0] ?? 0) - 15).toBeGreaterThan(274 + 14)
    expect(rows.bottom).toBeLessThanOrEqual(869)
    expect((rows.canners[1] ?? 0) - rows.heat.full).toBeGreaterThan((rows.canners[0] ?? 0) + rows.rackBelow)
  })

  it('has room for a kitchen without kettles or tables', () => {
    const rows = wallRows({ kettles: 0, tables: 0, canners: 1 })
    expect(rows.canners[0]).toBeGreaterThan(226 + rows.heat.full)
  })
})
