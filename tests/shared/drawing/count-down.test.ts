import { describe, expect, it } from 'vitest'
import { countDown } from '@/shared/drawing/count-down'

const end = 1_800_000_000_000
const minute = 60_000

describe('countDown', () => {
  it('says five minutes left and five cells done at half of ten minutes', () => {
    expect(countDown(end, end - 5 * minute, 10)).toEqual({ left: '5:00', minutesDone: 5, isOver: false })
  })

  it('rounds what is left up, so it is never over a second early', () => {
    expect(countDown(end, end - 1, 10)).toEqual({ left: '0:01', minutesDone: 9, isOver: false })
    expect(countDown(end, end, 10)).toEqual({ left: '0:00', minutesDone: 10, isOver: true })
  })

  it('stays over after a sleep of forty minutes', () => {
    expect(countDown(end, end + 40 * minute, 10)).toEqual({ left: '0:00', minutesDone: 10, isOver: true })
  })

  it('fills no cell when read before the start', () => {
    expect(countDown(end, end - 11 * minute, 10)).toEqual({ left: '11:00', minutesDone: 0, isOver: false })
  })
})
