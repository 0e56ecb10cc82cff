import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { answerFinder } from '@/shared/finder/answer-finder'
import { publishedWays } from '@/shared/finder/published-ways'
import { readFinder } from '@/shared/finder/read-finder'
import { adviceBeside, waysForward } from '@/shared/finder/ways-forward'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { METHODS, PACKS } from '@/shared/kitchen/methods'
import { FOODS } from '@/shared/process/food-names'
import { PUBLISHED_ROWS } from '@/shared/process/published-rows'
import { UNSAFE_METHODS } from '@/shared/process/process-query'
import { UNVERIFIED_ROWS } from '@/shared/process/unverified-rows'
import { sayWhatIsRefused } from '@/shared/wording/say-finder'

const at650 = { elevation: 650, unit: 'ft' } as const

describe('the finder', () => {
  it('gives 10 min for dill pickles in pints at 650 ft', () => {
    // Michigan State University Extension, Preserving Food Safely (1997), Guide 6:20: pints, 0-1,000 ft, 10 min.
    const answer = answerFinder({ food: 'dill pickles', ...at650, jar: 'pint', method: 'boiling-water' })
    expect(answer.kind === 'process' && answer.process.minutes).toBe(10)
  })

  it('reads metres as feet, a part of a foot as the next: 305 m is above 1,000 ft', () => {
    const answer = answerFinder({ food: 'dill pickles', elevation: 305, unit: 'm', jar: 'pint', method: 'boiling-water' })
    expect(answer.kind === 'process' && [answer.process.elevationFeet, answer.process.minutes]).toEqual([1001, 15])
  })

  it('offers the published ways while jar or canner is missing, and never guesses one', () => {
    const answer = answerFinder({ food: 'green beans', ...at650 })
    expect(answer.kind === 'choose' && answer.ways.map(({ method, gauge, pack }) => [method, gauge, pack].join(' '))).toEqual([
      'pressure dial hot',
      'pressure dial raw',
      'pressure weighted hot',
      'pressure weighted raw',
    ])
  })

  it('asks for an elevation that nobody has said', () => {
    const answer = answerFinder({ food: 'dill pickles', jar: 'pint', method: 'boiling-water' })
    expect(answer.kind === 'refused' && answer.refusal.code).toBe('elevation-unknown')
  })

  it('refuses green beans in boiling water and leads to pressure canning', () => {
    const answer = answerFinder({ food: 'green beans', ...at650, jar: 'pint', method: 'boiling-water' })
    if (answer.kind !== 'refused') throw new Error('not refused')
    expect(answer.refusal.code).toBe('low-acid-needs-pressure')
    const [first] = waysForward(answer.refusal, { food: 'green beans', elevation: '650', unit: 'ft', jar: 'pint', method: 'boiling-water' })
    expect(first?.typed).toMatchObject({
      food: 'green beans',
      elevation: '650',
      unit: 'ft',
      method: 'pressure',
      gauge: 'dial',
      jar: 'pint',
    })
  })

  it('refuses a food without any verified row whatever else is said', () => {
    const published = new Set(PUBLISHED_ROWS.map(({ foodId }) => foodId))
    const bare = UNVERIFIED_ROWS.filter(({ foodId }) => !published.has(foodId))
    expect(bare.map(({ foodId }) => foodId).sort()).toEqual(['dilled-beans', 'orange-marmalade', 'sauerkraut'])
    for (const { foodId } of bare) {
      const answer = answerFinder({ food: foodId })
      expect(answer.kind === 'refused' && answer.refusal.code).toBe('no-verified-process')
    }
  })

  it('answers the tomato and tomato-paste salsa from its own row, in half-pints by the rule for smaller jars', () => {
    const typed = { food: 'tomato-paste-salsa', jar: 'half-pint', method: 'boiling-water', elevation: '6001', unit: 'ft' }
    expect(ask(typed)).toMatchObject({
      kind: 'process',
      process: {
        foodId: 'tomato-paste-salsa',
        jarRow: 'pint',
        minutes: 25,
        jarNote: expect.stringMatching(/half-pint goes at the pint time/),
      },
    })
  })

  it('refuses above every table instead of offering a way that ends below', () => {
    const answer = answerFinder({ food: 'green beans', elevation: 29_000, unit: 'ft' })
    expect(answer.kind).toBe('choose') // a weighted gauge is printed above 1,000 ft without an upper end
    const plums = answerFinder({ food: 'plums', elevation: 12_000, unit: 'ft', method: 'pressure', gauge: 'dial', jar: 'pint' })
    expect(plums.kind === 'refused' && plums.refusal.code).toBe('elevation-above-tables')
  })

  it('refuses an unsafe way before it asks for a jar', () => {
    for (const method of UNSAFE_METHODS) {
      const answer = answerFinder({ food: 'figs', ...at650, method })
      expect(answer.kind === 'refused' && answer.refusal.code).toBe('method-never-safe')
    }
  })

  it('passes on how the food is made', () => {
    const soup = { food: 'soups', ...at650, jar: 'pint', method: 'pressure', gauge: 'dial' } as const
    const thickened = answerFinder({ ...soup, thickened: 'yes' })
    expect(thickened.kind === 'refused' && thickened.refusal.code).toBe('thickener-untested')
    const jam = { food: 'jam with pectin', ...at650, jar: 'half-pint', method: 'boiling-water' } as const
    const doubled = answerFinder({ ...jam, doubled: 'yes' })
    expect(doubled.kind === 'refused' && doubled.refusal.code).toBe('batch-multiplied')
    const aluminium = answerFinder({ ...jam, aluminium: 'yes' })
    expect(aluminium.kind === 'refused' && aluminium.refusal.code).toBe('aluminium-with-acid')
  })
})

describe('every published way', () => {
  it('leads to a printed time at its elevation', () => {
    for (const { name, id } of FOODS.values()) {
      for (const feet of [0, 1000, 1001, 6000, 8001]) {
        for (const { method, gauge, pack, jars } of publishedWays(id, feet)) {
          for (const jar of jars) {
            const answer = answerFinder({ food: name, elevation: feet, unit: 'ft', method, gauge: gauge ?? undefined, pack, jar })
            expect(answer.kind, `${name} ${method} ${gauge} ${pack} ${jar} ${feet}`).toBe('process')
          }
        }
      }
    }
  })
})

describe('every refusal', () => {
  it('has three parts, and each way forward is a question that gets further', () => {
    const food = fc.constantFrom(...[...FOODS.values()].map(({ name }) => name), 'beans', 'butter', 'chickpeas', 'jam', 'pumpkin butter')
    const typed = fc.record({
      food,
      jar: fc.constantFrom(...JAR_SIZES),
      method: fc.constantFrom(...METHODS, ...UNSAFE_METHODS),
      gauge: fc.constantFrom('', 'dial', 'weighted'),
      pack: fc.constantFrom('', ...PACKS),
      elevation: fc.constantFrom('', '0', '650', '3000', '7000', '9000'),
      unit: fc.constant('ft'),
      option: fc.constantFrom('', '1', '7'),
    })
    fc.assert(
      fc.property(typed, (fields) => {
        const answer = ask(fields)
        if (answer.kind !== 'refused') return
        const { refusal } = answer
        const ways = waysForward(refusal, fields)
        expect(sayWhatIsRefused(refusal)).not.toBe('')
        expect(ways.length > 0 || adviceBeside(refusal) !== '').toBe(true)
        for (const way of ways) {
          const next = ask(way.typed)
          expect(next.kind === 'refused' ? next.refusal.code : 'answered').not.toBe(refusal.code)
        }
      }),
      { numRuns: 400 },
    )
  })
})

function ask(fields: Record<string, string | undefined>) {
  const read = readFinder(fields)
  if (!read.ok || !read.value.asked) throw new Error(`not read: ${JSON.stringify(read)}`)
  return answerFinder(read.value.asked)
}
