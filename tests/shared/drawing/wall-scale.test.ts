import { describe, expect, it } from 'vitest'
import { WALL, wallTicks, wallX } from '@/shared/drawing/wall-scale'

const evening = { from: 1050, emptyBy: 1295, closesAt: 1335 } // 17:30, 21:35, 22:15

describe('wallX', () => {
  it('puts the first minute at the left edge of the work and "canners empty" on the double line', () => {
    expect([wallX(evening, 1050), wallX(evening, 1295), wallX(evening, 1335)]).toEqual([WALL.work, WALL.emptyBy, WALL.closed])
  })

  it('keeps the order of times across the double line', () => {
    const times = Array.from({ length: 60 }, (_, index) => 1045 + index * 5)
    const lengths = times.map((time) => wallX(evening, time))
    expect(lengths).toEqual([...lengths].sort((a, b) => a - b))
  })

  it('draws nothing outside the hall, even where closing and empty are one', () => {
    expect(wallX(evening, 2000)).toBe(WALL.closed)
    expect(wallX({ ...evening, closesAt: 1295 }, 1300)).toBe(WALL.closed)
  })
})

describe('wallTicks', () => {
  it('labels every hour of an evening', () => {
    const labels = wallTicks(evening).filter((tick) => tick.hasLabel)
    expect(labels.map((tick) => tick.time)).toEqual([1080, 1140, 1200, 1260, 1320])
  })

  it('labels every second hour of a long day', () => {
    const labels = wallTicks({ from: 360, emptyBy: 1260, closesAt: 1320 }).filter((tick) => tick.hasLabel)
    expect(labels.map((tick) => tick.time / 60)).toEqual([6, 8, 10, 12, 14, 16, 18, 20]) // 22:00 would stand on the closed hall and be cut
  })
})
