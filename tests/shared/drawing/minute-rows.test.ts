import { describe, expect, it } from 'vitest'
import { minuteRows } from '@/shared/drawing/minute-rows'

describe('minuteRows', () => {
  it('gives ten minutes ten cells, five of them filled after five minutes and a half', () => {
    expect(minuteRows(10, 5.5)).toEqual([{ before: 0, cells: 10, filled: 5 }])
  })

  it('breaks long processes into even rows and loses no minute', () => {
    const rows = minuteRows(85, 20) // 6 rows of at most 15, so 15 cells a row and 10 in the last
    expect(rows.map((row) => row.cells)).toEqual([15, 15, 15, 15, 15, 10])
    expect(rows.map((row) => row.filled)).toEqual([15, 5, 0, 0, 0, 0])
  })

  it('never fills before the clock starts nor past its end', () => {
    expect(minuteRows(10, -3)).toEqual([{ before: 0, cells: 10, filled: 0 }])
    expect(minuteRows(10, 99)).toEqual([{ before: 0, cells: 10, filled: 10 }])
  })
})
