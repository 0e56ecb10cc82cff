import { describe, expect, it } from 'vitest'
import { eventAddress } from '@/app/_forms/send-event'
import { FloorEvent } from '@/shared/forms/floor-event'

describe('the events of a day', () => {
  it('go from a form to the day’s own address, each of them', () => {
    for (const { shape } of FloorEvent.options) {
      const [type] = shape.type.values
      expect(eventAddress(String(type), 'g 1', 'd/1')).toBe('/api/v1/groups/g%201/days/d%2F1/events')
    }
  })

  it('are not every change: a claim or a plan goes its own way', () => {
    expect([eventAddress('claim-jars', 'g', 'd'), eventAddress('plan-day', 'g', 'd'), eventAddress('start-batch', 'g', undefined)]).toEqual(
      [null, null, null],
    )
  })
})
