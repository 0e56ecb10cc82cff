import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { optionalNumber, someOf } from '@/shared/forms/choices'
import { typedNumber, whole } from '@/shared/forms/fields'

const jars = whole(0, 400, 'How many jars?')

describe('a number that somebody typed', () => {
  it('is read from digits and from JSON alike', () => {
    for (const typed of ['12', ' 12 ', 12, '12.0']) expect(jars.parse(typed)).toBe(12)
    expect(typedNumber('').parse('-0.5')).toBe(-0.5)
  })

  it.each([
    '',
    ' ',
    null,
    undefined,
    [],
    ['12'],
    {},
    true,
    false,
    'twelve',
    '1e2',
    '0x10',
    '12 jars',
    Number.NaN,
    Number.POSITIVE_INFINITY,
  ])('is not %j', (typed) => {
    expect(jars.safeParse(typed).success).toBe(false)
  })

  it('is kept exactly, whatever whole number it is', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 400 }), (count) => jars.parse(String(count)) === count && jars.parse(count) === count))
  })

  it('is nothing, not 0, where it may be left empty', () => {
    const psi = optionalNumber(-20, 20, 'By how many psi?')
    expect([psi.parse(undefined), psi.parse(''), psi.parse(null), psi.parse('0'), psi.parse('-1.5')]).toEqual([null, null, null, 0, -1.5])
    for (const wrong of ['21', 'a bit', [], false]) expect(psi.safeParse(wrong).success).toBe(false)
  })
})

describe('several of a list', () => {
  it('are taken as one word or as many, once each, and only from the list', () => {
    const uses = someOf(['canner', 'brine'], 'Choose from the list.')
    expect([uses.parse(undefined), uses.parse('brine'), uses.parse(['brine', 'brine', 'canner'])]).toEqual([
      [],
      ['brine'],
      ['brine', 'canner'],
    ])
    for (const wrong of [['soup'], [7], { not: 'brine' }, '']) expect(uses.safeParse(wrong).success).toBe(false)
  })
})
