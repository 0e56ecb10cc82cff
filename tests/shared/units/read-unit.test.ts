import { describe, expect, it } from 'vitest'
import { poundsOf } from '@/shared/day/produce-amount'
import { readUnit } from '@/shared/units/read-unit'
import { UNITS, type UnitId } from '@/shared/units/units'

describe('a unit as people type it', () => {
  it.each([
    ['lb', 'lb'],
    ['Lbs.', 'lb'],
    ['pounds', 'lb'],
    ['OZ', 'oz'],
    ['ounces', 'oz'],
    ['g', 'g'],
    ['grams', 'g'],
    ['kilo', 'kg'],
    ['kilos', 'kg'],
    ['kilograms', 'kg'],
    ['qt', 'us-qt'],
    ['imp qt', 'imp-qt'],
    ['cups', 'us-cup'],
    ['metric cup', 'metric-cup'],
    ['litres', 'L'],
    ['liters', 'L'],
    ['bu.', 'us-dry-bu'],
    ['pieces', 'each'],
  ] as const)('%j is %s', (typed, id) => {
    expect(readUnit(typed)).toBe(id)
  })

  it.each(['crate', 'bag', 'box of 12', 'toString', 'constructor', ''])('%j is none of ours', (typed) => {
    expect(readUnit(typed)).toBeNull()
  })

  it('counts as produce wherever it is a weight, by its id, its name, and as what a box holds', () => {
    for (const id of Object.keys(UNITS) as UnitId[]) {
      const { name, dimension, factor } = UNITS[id]
      const pounds = dimension === 'mass' ? ((2 * Number(factor[0])) / Number(factor[1]) / 45359237) * 100000 : null
      if (/\d/.test(name)) continue // A 12 oz can says its own weight.
      for (const typed of [id, name, `${name}s`]) {
        const found = poundsOf(2, typed)
        if (pounds === null) expect([typed, found]).toEqual([typed, null])
        else if (readUnit(typed) !== null) expect(found).toBeCloseTo(pounds, 6)
      }
    }
    expect(poundsOf(2, '10 pounds box')).toBe(20)
    expect(poundsOf(2, '10 litre box')).toBeNull()
  })
})
