import { describe, expect, it } from 'vitest'
import { dayMeasures } from '@/shared/day/day-measures'
import { checkSupplies, type StockLot } from '@/shared/day/supply-check'
import { containersToBuy } from '@/shared/supplies/containers-to-buy'
import { planOnce } from '@/shared/planning/plan-once'
import { s1DayProblem } from '../../fixtures/s1-day-problem'

const lot = (kind: string, count: number, more: Partial<StockLot> = {}): StockLot => ({
  kind,
  count,
  jarSize: null,
  mouth: 'regular',
  boughtOn: null,
  chipped: 0,
  isShopJar: false,
  ...more,
})
const stock = [
  lot('jar', 52, { jarSize: 'half-pint' }),
  lot('jar', 38, { jarSize: 'pint' }),
  lot('band', 95),
  lot('lid', 24, { boughtOn: '2020-08-01' }),
]

describe('supplies of the evening', () => {
  it('are 80 lids planned and 88 with spare: eight boxes of 12, because the 24 in stock are too old', () => {
    const planned = [
      { size: 'half-pint', jars: 48, method: 'boiling-water' },
      { size: 'pint', jars: 32, method: 'boiling-water' },
    ] as const
    const check = checkSupplies(planned, stock, '2027-08-26', 10)
    expect(check.lids).toEqual({ planned: 80, withSpare: 88, usable: 0, missing: 88, boxes: 8, over: 8 })
    expect(check.lidsOut).toBe(24)
    expect(check.jars.map(({ size, planned: needed, usable }) => [size, needed, usable])).toEqual([
      ['half-pint', 48, 52],
      ['pint', 32, 38],
    ])
    expect(check.bands).toMatchObject({ planned: 80, usable: 95, missing: 0 })
  })

  it('leave out chipped jars, and shop jars of a size that goes under pressure, as the shopping list does', () => {
    const jars = [lot('jar', 20, { jarSize: 'quart', chipped: 3 }), lot('jar', 12, { jarSize: 'quart', chipped: 2, isShopJar: true })]
    for (const [method, usable] of [
      ['pressure', 17],
      ['boiling-water', 27],
    ] as const) {
      const planned = [{ size: 'quart', jars: 14, method }] as const
      expect(checkSupplies(planned, jars, '2027-08-26', 10).jars).toMatchObject([{ usable }])
      const [list] = containersToBuy(planned, jars, { date: '2027-08-26', sparePercent: 10, promised: {} })
      expect(list?.usable).toBe(usable)
    }
  })

  it('count lids that are young enough, and leave out those whose age nobody knows', () => {
    const planned = [{ size: 'pint', jars: 10, method: 'boiling-water' }] as const
    const lids = [lot('lid', 12, { boughtOn: '2027-01-01' }), lot('lid', 50)]
    expect(checkSupplies(planned, lids, '2027-08-26', 10)).toMatchObject({ lids: { usable: 12, missing: 0 }, lidsOut: 50 })
  })
})

describe('what the evening’s plan takes', () => {
  it('is 410 of 430 canner minutes, all five burners, and nine of fourteen people', () => {
    const planned = planOnce(s1DayProblem)
    if (!planned.ok) throw new Error('the evening has a plan')
    const measures = dayMeasures(s1DayProblem, planned.value, stock, { date: '2027-08-26', sparePercent: 10 })
    expect(measures.map(({ kind, needed, available }) => [kind, needed, available])).toEqual([
      ['canners', 410, 430],
      ['burners', 5, 5],
      ['jars', 48, 52],
      ['jars', 32, 38],
      ['lids', 80, 0],
      ['people', 9, 14],
    ])
  })
})
