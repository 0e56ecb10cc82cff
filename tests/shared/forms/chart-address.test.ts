import { describe, expect, it } from 'vitest'
import { chartAddress, readChartAddress } from '@/shared/forms/chart-address'

describe('the address of a chart', () => {
  it('is read back as it was written', () => {
    const asked = { view: 'person', span: 60, from: 18 * 60 + 5, isRoll: false } as const
    const query = Object.fromEntries(new URLSearchParams(chartAddress(asked)))
    expect(chartAddress(asked)).toBe('?by=person&span=60&from=18%3A05')
    expect(readChartAddress(query)).toEqual(asked)
  })

  it('leaves out what nobody offers, and shows the day', () => {
    const day = { view: 'station', span: null, from: null, isRoll: false }
    expect(readChartAddress({ by: 'kettle', span: '61', from: '25:99', paper: 'wallpaper' })).toEqual(day)
    expect(readChartAddress({ by: ['person', 'person'], span: [], from: undefined })).toEqual(day)
    expect(readChartAddress({ span: '-10', from: '' })).toEqual(day)
  })
})
