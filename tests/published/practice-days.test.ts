import { describe, expect, it } from 'vitest'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge } from '@/shared/kitchen/methods'
import { lookUpProcess } from '@/shared/process/look-up-process'
import { recipeById } from '@/shared/recipes/recipe-library'

/**
 * What the three practice days are planned with, by recipe, jar and elevation: minutes, and psi by gauge for pressure.
 *
 * Copied there from the publications named in each recipe; looked up here anew. Applesauce in quarts is planned there with the 20 minutes of
 * AIB 539; here the 25 that Iowa State University Extension prints are used, the longer of the two.
 */
const PRACTICE: [recipe: string, feet: number, jar: JarSize, minutes: number, psi?: Record<Gauge, number>][] = [
  ['plum_jam', 650, 'half-pint', 5],
  ['plum_jam', 650, 'pint', 5],
  ['dill_pickle', 650, 'pint', 10],
  ['dill_pickle', 650, 'quart', 15],
  ['tomato_halved', 4300, 'pint', 50],
  ['tomato_halved', 4300, 'quart', 55],
  ['peach', 4300, 'pint', 30],
  ['peach', 4300, 'quart', 35],
  ['green_bean', 4300, 'pint', 20, { dial: 13, weighted: 15 }],
  ['green_bean', 4300, 'quart', 25, { dial: 13, weighted: 15 }],
  ['salsa', 4300, 'pint', 20],
  ['salsa', 4300, 'half-pint', 20],
  ['tomato_halved', 12, 'pint', 40],
  ['tomato_halved', 12, 'quart', 45],
  ['peach', 12, 'pint', 20],
  ['peach', 12, 'quart', 25],
  ['applesauce', 12, 'pint', 15],
  ['applesauce', 12, 'quart', 25],
  ['dill_pickle', 12, 'pint', 10],
  ['dill_pickle', 12, 'quart', 15],
  ['bread_butter', 12, 'pint', 10],
  ['plum_jam', 12, 'half-pint', 5],
  ['plum_jam', 12, 'pint', 5],
  ['green_bean', 12, 'pint', 20, { dial: 11, weighted: 10 }],
  ['green_bean', 12, 'quart', 25, { dial: 11, weighted: 10 }],
  ['corn', 12, 'pint', 55, { dial: 11, weighted: 10 }],
  ['corn', 12, 'quart', 85, { dial: 11, weighted: 10 }],
]

describe('the practice days', () => {
  it.each(PRACTICE)('%s at %d ft in a %s: %d min', (id, feet, jar, minutes, psi) => {
    const process = recipeById(id)?.process
    if (!process) return expect.unreachable()
    const gauges: (Gauge | null)[] = psi ? ['dial', 'weighted'] : [null]
    for (const gauge of gauges) {
      const found = lookUpProcess({ food: process.foodId, pack: process.pack, jar, method: process.method, gauge, elevation: { feet } })
      expect(found).toMatchObject({ ok: true, value: { minutes, psi: gauge && psi ? psi[gauge] : null } })
    }
  })

  it('move the needle of the dial gauge that reads 1 psi high from 13 to 14', () => {
    const gauge = { method: 'pressure', gauge: 'dial', gaugeErrorPsi: 1, gaugeTestedOn: '2027-05-04', askedOn: '2027-09-04' } as const
    const found = lookUpProcess({ food: 'green-beans', pack: 'raw', jar: 'pint', elevation: { feet: 4300 }, ...gauge })
    expect(found).toMatchObject({ ok: true, value: { psi: 13, needlePsi: 14 } })
  })

  it('block the dial gauge whose test is older than a year', () => {
    const gauge = { method: 'pressure', gauge: 'dial', gaugeTestedOn: '2026-03-30', askedOn: '2027-09-11' } as const
    const found = lookUpProcess({ food: 'corn', pack: 'hot', jar: 'pint', elevation: { feet: 12 }, ...gauge })
    expect(found.ok ? 'used' : found.problem.code).toBe('food-ambiguous')
    const corn = lookUpProcess({ food: 'corn-whole-kernel', pack: 'hot', jar: 'pint', elevation: { feet: 12 }, ...gauge })
    expect(corn.ok ? 'used' : corn.problem.code).toBe('gauge-test-expired')
  })

  it('allow quart tomatoes in a steam canner at the sea: 45 minutes, the longest there is', () => {
    const steam = { food: 'tomatoes-whole-water', pack: 'hot', jar: 'quart', method: 'atmospheric-steam', gauge: null } as const
    expect(lookUpProcess({ ...steam, elevation: { feet: 12 } })).toMatchObject({ ok: true, value: { minutes: 45 } })
    expect(lookUpProcess({ ...steam, elevation: { feet: 4300 } }).ok).toBe(false)
  })
})
