import { describe, expect, it } from 'vitest'
import { gapFall } from '@/shared/drawing/gap-fall'

const BOX = { width: 100, height: 50 }

describe('the falling finish of a search', () => {
  it('begins at the top, falls at each better plan in proportion to what is left, and goes on level to now', () => {
    const { line, yOf } = gapFall(
      [
        [2, 1300],
        [7, 1290],
        [12, 1280],
      ],
      1250,
      22,
      BOX,
    )
    // 20 s are 100 wide: the falls lie at 25 and 50. 50 minutes are 50 high: the falls go to 10 and 20.
    expect(line).toBe('M0 0H20Q25 0 25 5V10H45Q50 10 50 15V20H100')
    expect([yOf(1300), yOf(1250)]).toEqual([0, 50])
  })

  it('holds water down to the bound, and none where the bound is met', () => {
    expect(gapFall([[0, 1300]], 1250, 10, BOX).water).toBe('M0 0H100V50H0Z')
    const met = gapFall(
      [
        [0, 1300],
        [10, 1250],
      ],
      1250,
      10,
      BOX,
    )
    expect(met.line).toBe('M0 0H95Q100 0 100 5V50H100')
  })

  it('of a search that has found nothing is nothing', () => {
    expect(gapFall([], 1250, 10, BOX)).toMatchObject({ line: '', water: '' })
  })
})
