import { describe, expect, it } from 'vitest'
import { wholeFeet } from '@/shared/process/elevation'
import { needleOffset } from '@/shared/process/gauge-rule'
import { lookUpProcess } from '@/shared/process/look-up-process'
import { largestJarFor, packsFor } from '@/shared/process/process-index'
import type { ProcessQuery } from '@/shared/process/process-query'
import type { ProcessRefusal } from '@/shared/process/process-refusal'
import { dialBands, endingAt8000, fourBands, threeBands, weightedBands } from '@/shared/process/published-row'
import { steriliseMinutes } from '@/shared/process/sterilising'
import { aQuery } from '@/tests/support/process-queries'

function refusal(changes: Partial<ProcessQuery>): ProcessRefusal {
  const answer = lookUpProcess(aQuery(changes))
  if (answer.ok) throw new Error(`Answered: ${answer.value.minutes} min`)
  return answer.problem
}

describe('sterilising jars', () => {
  // Michigan State University Extension, Preserving Food Safely (1997), item 01600946: 10 min, plus 1 for each additional 1,000 ft
  it.each([
    [0, 10],
    [650, 10],
    [1000, 10],
    [1001, 11],
    [2000, 11],
    [2001, 12],
    [6000, 15],
    [7500, 17],
  ])('takes at %d ft %d minutes', (feet, minutes) => {
    expect(steriliseMinutes(feet)).toBe(minutes)
  })
})

describe('sterile jars', () => {
  const required = (changes: Partial<ProcessQuery>) => {
    const answer = lookUpProcess(aQuery(changes))
    return answer.ok && answer.value.sterilise.required
  }

  it('are required for jam where the band is under ten minutes, and only there', () => {
    expect(required({ food: 'plum-preserves', elevation: { feet: 1000 } })).toBe(true)
    expect(required({ food: 'plum-preserves', elevation: { feet: 1001 } })).toBe(false)
    expect(required({ food: 'apple-butter', jar: 'quart' })).toBe(false)
  })

  it('are not required under pressure, however short', () => {
    expect(required({ food: 'rhubarb', method: 'pressure', gauge: 'dial' })).toBe(false)
    expect(required({ food: 'tomatoes-whole-water', method: 'pressure', gauge: 'weighted', option: 3 })).toBe(false)
  })
})

describe('whole feet', () => {
  it.each([
    [{ feet: 0 }, 0],
    [{ feet: 1000 }, 1000],
    [{ feet: 1000.0001 }, 1001],
    [{ feet: -0.5 }, -1],
    [{ metres: 304.8 }, 1000],
    [{ metres: 914.4 }, 3000],
    [{ metres: 1828.8 }, 6000],
    [{ metres: 1828.801 }, 6001],
    [{ metres: -1 }, -4],
    [{ metres: Number.POSITIVE_INFINITY }, null],
    [null, null],
  ])('of %j are %s', (elevation, feet) => {
    expect(wholeFeet(elevation)).toBe(feet)
  })
})

describe('the needle of a dial gauge', () => {
  it('stands off by the error of the gauge', () => {
    expect(needleOffset({})).toEqual({ ok: true, value: 0 })
    expect(needleOffset({ gaugeErrorPsi: -1.5 })).toEqual({ ok: true, value: -1.5 })
  })

  it('is not trusted, with the reason', () => {
    expect(needleOffset({ gaugeErrorPsi: 2.01 })).toEqual({ ok: false, problem: { kind: 'error-too-large', errorPsi: 2.01 } })
    expect(needleOffset({ gaugeTestedOn: null })).toEqual({ ok: false, problem: { kind: 'untested' } })
    expect(needleOffset({ gaugeTestedOn: '2026-08-25', askedOn: '2027-08-26' })).toEqual({
      ok: false,
      problem: { kind: 'expired', testedOn: '2026-08-25' },
    })
  })

  it('counts a test of 29 February for a year', () => {
    const on = (askedOn: string) => needleOffset({ gaugeTestedOn: '2028-02-29', askedOn }).ok
    expect([on('2029-02-28'), on('2029-03-01'), on('2028-02-28'), on('2028-02-29')]).toEqual([true, false, false, true])
  })
})

describe('bands', () => {
  it('are those of the guide', () => {
    const edges = (bands: { minFeet: number; maxFeet: number | null; printed: string }[]) =>
      bands.map(({ minFeet, maxFeet, printed }) => `${minFeet} ${maxFeet} ${printed}`)
    expect(edges(threeBands(5, 10, 15))).toEqual(['0 1000 0-1,000 ft', '1001 6000 1,001-6,000 ft', '6001 null Above 6,000 ft'])
    expect(edges(fourBands(20, 25, 30, 35))).toEqual([
      '0 1000 0-1,000 ft',
      '1001 3000 1,001-3,000 ft',
      '3001 6000 3,001-6,000 ft',
      '6001 null Above 6,000 ft',
    ])
    expect(edges(endingAt8000(threeBands(5, 10, 15))).at(-1)).toBe('6001 8000 6,001-8,000 ft')
    expect(dialBands(20, 11).map(({ psi }) => psi)).toEqual([11, 12, 13, 14])
    expect(edges(dialBands(20, 11)).at(-1)).toBe('6001 8000 6,001-8,000 ft')
    expect(weightedBands(10, 15, null)).toMatchObject([
      { minutes: 10, psi: 15 },
      { minutes: null, psi: null, printed: 'Above 1,000 ft' },
    ])
  })
})

describe('the packs and jars of a food', () => {
  it('are those printed', () => {
    expect(packsFor('peaches', 'boiling-water')).toEqual(['hot', 'raw'])
    expect(packsFor('peaches', 'boiling-water', 'half-gallon')).toEqual([])
    expect(packsFor('pears', 'boiling-water', 'quart')).toEqual(['hot'])
    expect(packsFor('green-beans', 'boiling-water')).toEqual([])
    expect(largestJarFor('apple-juice', 'boiling-water')).toBe('half-gallon')
    expect(largestJarFor('chile-salsa', 'boiling-water')).toBe('pint')
  })
})

describe('the hazards of a refusal', () => {
  it.each<[Partial<ProcessQuery>, string[]]>([
    [{ food: 'granite' }, ['tested-recipe-only']],
    [{ food: 'tomatoes' }, ['tested-recipe-only']],
    [{ food: 'pumpkin butter' }, ['pureed-squash']],
    [{ food: 'milk' }, ['dairy']],
    [{ elevation: null }, ['local-elevation']],
    [{ elevation: { feet: -1 } }, []],
    [{ elevation: { feet: 12_000 } }, ['local-elevation']],
    [{ option: 7 }, []],
    [{ food: 'sauerkraut' }, []],
    [{ food: 'rhubarb' }, []],
    [{ food: 'peaches', pack: null }, []],
    [{ food: 'green-beans', method: 'pressure' }, []],
    [{ food: 'green-beans', method: 'pressure', gauge: 'dial', gaugeTestedOn: null }, []],
    [{ food: 'green-beans', method: 'atmospheric-steam' }, ['low-acid-in-boiling-water']],
  ])('of %o are %j', (changes, hazards) => {
    expect(refusal(changes).hazards).toEqual(hazards)
  })
})

describe('alternatives', () => {
  const said = (changes: Partial<ProcessQuery>) =>
    refusal(changes).alternatives.map(({ method, gauge, pack, jar }) => `${gauge ?? method} ${pack} ${jar}`)

  it('are six at most', () => {
    expect(said({ food: 'tomatoes-whole-water', jar: 'half-gallon' })).toHaveLength(6)
  })

  it('never name the very thing that was refused', () => {
    const asked = {
      food: 'tomatoes-whole-water',
      method: 'pressure',
      gauge: 'weighted',
      jar: 'quart',
      option: 3,
      elevation: { feet: 2000 },
    } as const
    expect(said(asked)).not.toContain('weighted hot quart')
    expect(said(asked)).toContain('weighted hot pint')
  })

  it('count a table of which one pressure may still be used', () => {
    const asked = {
      food: 'tomatoes-whole-water',
      method: 'pressure',
      gauge: 'weighted',
      jar: 'half-gallon',
      elevation: { feet: 2000 },
    } as const
    expect(said(asked).slice(0, 2)).toEqual(['weighted hot quart', 'weighted hot pint'])
  })

  it('reach to the last foot of a closed band, and not beyond', () => {
    const beans = { food: 'green-beans', pack: 'hot', method: 'pressure', gauge: 'weighted', jar: 'half-gallon' } as const
    expect(said({ ...beans, elevation: { feet: 8000 } })).toContain('dial hot quart')
    expect(said({ ...beans, elevation: { feet: 8001 } })).not.toContain('dial hot quart')
  })
})
