import { describe, expect, it } from 'vitest'
import { capLimit } from '@/shared/allocation/claim-caps'

describe('caps for a household', () => {
  it.each([
    [null, null, 5, null],
    [6, null, 99, { most: 6, by: 'offer' }],
    [null, 10, 4, { most: 6, by: 'day' }],
    [null, 10, 12, { most: 0, by: 'day' }],
    [6, 10, 4, { most: 6, by: 'offer' }],
    [8, 10, 4, { most: 6, by: 'day' }],
  ])('of %s a product and %s a day, with %i elsewhere: %j', (ofOffer, ofDay, elsewhere, limit) =>
    expect(capLimit({ ofOffer, ofDay }, elsewhere)).toEqual(limit),
  )
})
