import { describe, expect, it } from 'vitest'
import { LABEL_SHEETS, labelSheet, placeLabels } from '@/shared/trace/label-sheets'

const sheets = LABEL_SHEETS.map((sheet) => [sheet.id, sheet] as const)

describe.each(sheets)('the sheet %s', (_id, sheet) => {
  const cells = sheet.columns * sheet.rows
  const places = placeLabels(sheet, cells)

  it('has every label on the page and none over another', () => {
    if (!places.ok) throw new Error('not placed')
    for (const { x, y, page } of places.value) {
      expect(page).toBe(0)
      expect(x).toBeGreaterThanOrEqual(0)
      expect(y).toBeGreaterThanOrEqual(0)
      expect(x + sheet.labelWidth).toBeLessThanOrEqual(sheet.pageWidth + 0.01)
      expect(y + sheet.labelHeight).toBeLessThanOrEqual(sheet.pageHeight + 0.01)
    }
    expect(sheet.pitchX).toBeGreaterThanOrEqual(sheet.labelWidth)
    expect(sheet.pitchY).toBeGreaterThanOrEqual(sheet.labelHeight)
    expect(new Set(places.value.map(({ x, y }) => `${x} ${y}`)).size).toBe(cells)
  })

  it('lies in the middle of the page, to 0.3 mm', () => {
    const right = sheet.pageWidth - sheet.marginLeft - (sheet.columns - 1) * sheet.pitchX - sheet.labelWidth
    expect(Math.abs(right - sheet.marginLeft)).toBeLessThanOrEqual(0.3)
    if (sheet.isCut) return
    const bottom = sheet.pageHeight - sheet.marginTop - (sheet.rows - 1) * sheet.pitchY - sheet.labelHeight
    expect(Math.abs(bottom - sheet.marginTop)).toBeLessThanOrEqual(0.3)
  })
})

describe('placing labels', () => {
  const sheet = labelSheet('a4-3x7')

  it('goes row by row and on to the next page', () => {
    if (!sheet) throw new Error('no sheet')
    const places = placeLabels(sheet, 22)
    expect(places.ok && places.value.map(({ page }) => page)).toEqual([...Array.from({ length: 21 }, () => 0), 1])
    expect(places.ok && places.value[0]).toEqual({ page: 0, x: 7.2, y: 15.15 })
    expect(places.ok && places.value[1]).toEqual({ page: 0, x: 73.2, y: 15.15 })
    expect(places.ok && places.value[3]).toMatchObject({ page: 0, x: 7.2, y: 15.15 + 38.1 })
    expect(places.ok && places.value[21]).toEqual({ page: 1, x: 7.2, y: 15.15 })
  })

  it('starts at any cell of a sheet that was begun', () => {
    if (!sheet) throw new Error('no sheet')
    const places = placeLabels(sheet, 2, 21)
    expect(places.ok && places.value.map(({ page, x, y }) => [page, x, Math.round(y * 100) / 100])).toEqual([
      [0, 139.2, 243.75],
      [1, 7.2, 15.15],
    ])
  })

  it.each([0, 22, 1.5, Number.NaN])('refuses the cell %d', (cell) => {
    if (!sheet) throw new Error('no sheet')
    expect(placeLabels(sheet, 1, cell)).toEqual({ ok: false, problem: { kind: 'no-such-cell', cell, cells: 21 } })
  })

  it('knows its sheets by their ids', () => {
    expect(labelSheet('no-such-sheet')).toBeUndefined()
    expect(new Set(LABEL_SHEETS.map(({ id }) => id)).size).toBe(LABEL_SHEETS.length)
  })
})
