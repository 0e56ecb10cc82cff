import { describe, expect, it } from 'vitest'
import { type CountedLot, stockTotals } from '@/shared/supplies/stock-totals'

const lot = (more: Partial<CountedLot>): CountedLot => ({ kind: 'lid', jarSize: null, mouth: 'regular', count: 1, isUsable: true, ...more })

describe('the stock together', () => {
  it('is summed by kind, size and mouth, and what may not be used is counted apart', () => {
    const lots = [
      lot({ count: 96 }),
      lot({ count: 24, isUsable: false }),
      lot({ kind: 'jar', jarSize: 'pint', count: 30 }),
      lot({ kind: 'jar', jarSize: 'pint', count: 8 }),
      lot({ kind: 'jar', jarSize: 'half-pint', count: 52 }),
      lot({ kind: 'band', mouth: 'wide', count: 1 }),
    ]
    expect(stockTotals(lots)).toEqual([
      { label: 'Half-pints, regular', count: 52, unit: 'jars', notUsable: 0 },
      { label: 'Pints, regular', count: 38, unit: 'jars', notUsable: 0 },
      { label: 'Bands, wide', count: 1, unit: 'band', notUsable: 0 },
      { label: 'Lids, regular', count: 96, unit: 'lids', notUsable: 24 },
    ])
  })

  it('leaves out what is used up', () => {
    expect(stockTotals([lot({ count: 0 })])).toEqual([])
  })
})
