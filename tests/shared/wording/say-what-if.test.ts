import { describe, expect, it } from 'vitest'
import { sayEarlier, sayLost, sayWorkMinutes } from '@/shared/wording/say-what-if'

describe('another way to run a day, in words', () => {
  it('is earlier, later or the same', () => {
    expect([30, -5, 0].map(sayEarlier)).toEqual(['30 min earlier', '5 min later', 'the same'])
  })

  it('says hours of work as hours and minutes', () => {
    expect([45, 60, 185].map(sayWorkMinutes)).toEqual(['45 min', '1 h 00 min', '3 h 05 min'])
  })

  it('names what is lost, or that nothing is', () => {
    expect(sayLost([{ title: 'Plum jam', jarSize: 'half-pint', jars: 8 }])).toBe('Lost: 8 half-pints of Plum jam.')
    expect(sayLost([])).toBe('No jar is lost.')
  })
})
