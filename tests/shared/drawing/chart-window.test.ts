import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { acrossWindow, type CHART_SPANS, chartStrips, chartTicks, chartWindow } from '@/shared/drawing/chart-window'

const EVENING = { from: 17 * 60 + 10, to: 22 * 60 }

describe('the window of a chart', () => {
  it('is the whole day on half hours when no length is asked for', () => {
    expect(chartWindow(EVENING, null, null, null)).toEqual({ from: 1020, to: 1320, tickMinutes: 60, earlierFrom: null, laterFrom: null })
  })

  it('begins a quarter of its length before now, on one of its lines', () => {
    expect(chartWindow(EVENING, 60, null, 19 * 60 + 3)).toMatchObject({ from: 18 * 60 + 40, to: 19 * 60 + 40, tickMinutes: 10 })
  })

  it('turns by half of what it shows and stops at both ends of the day', () => {
    const first = chartWindow(EVENING, 60, null, null)
    expect(first).toMatchObject({ from: 1020, earlierFrom: null, laterFrom: 1050 })
    expect(chartWindow(EVENING, 60, 9_999, null)).toMatchObject({ from: 1260, to: 1320, earlierFrom: 1230, laterFrom: null })
  })

  it('shows a day shorter than the window from its beginning', () => {
    expect(chartWindow({ from: 600, to: 660 }, 240, null, null)).toMatchObject({ from: 600, to: 840, earlierFrom: null, laterFrom: null })
  })

  it('reaches every minute of the day by turning, and never leaves it', () => {
    const days = fc.tuple(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 30, max: 900 }))
    fc.assert(
      fc.property(days, fc.constantFrom(240, 60, 10), ([from, length], span) => {
        const day = { from, to: from + length }
        let window = chartWindow(day, span as (typeof CHART_SPANS)[number], null, null)
        for (let turns = 0; window.laterFrom !== null; turns++) {
          expect(turns).toBeLessThan(500)
          const next = chartWindow(day, span as (typeof CHART_SPANS)[number], window.laterFrom, null)
          expect(next.from).toBeGreaterThan(window.from)
          expect(next.from).toBeLessThanOrEqual(window.to)
          window = next
        }
        expect(window.to).toBeGreaterThanOrEqual(day.to)
      }),
    )
  })

  it('has its lines inside it, each on its own minute', () => {
    expect(chartTicks({ from: 1125, to: 1185, tickMinutes: 10 })).toEqual([1130, 1140, 1150, 1160, 1170, 1180])
  })

  it('puts a minute between 0 and 1, and what lies outside on its edge', () => {
    const window = { from: 100, to: 200 }
    expect([50, 100, 150, 200, 250].map((at) => acrossWindow(window, at))).toEqual([0, 0, 0.5, 1, 1])
  })

  it('cuts a roll into strips that follow each other without a gap', () => {
    const strips = chartStrips(EVENING, 120)
    expect(strips.map(({ from, to }) => [from, to])).toEqual([
      [1020, 1140],
      [1140, 1260],
      [1260, 1380],
    ])
  })
})
