import { describe, expect, it } from 'vitest'
import { answerCases, sayCasesProblem } from '@/shared/process/answer-cases'

const aCase = (changes: object = {}) => ({
  id: 'a',
  food: 'plums',
  pack: 'hot',
  jar: 'pint',
  method: 'boiling-water',
  gauge: null,
  elevationFeet: 650,
  ...changes,
})

function problemOf(changes: object): string {
  const answered = answerCases([aCase(), aCase({ id: 'b', ...changes })])
  return answered.ok ? 'answered' : sayCasesProblem(answered.problem)
}

describe('answering cases', () => {
  it('keeps their order and says where each figure is printed', () => {
    const answered = answerCases([aCase(), aCase({ id: 7, method: 'pressure', gauge: 'dial' }), aCase({ id: 'c', jar: 'half-gallon' })])
    expect(answered).toEqual({
      ok: true,
      value: [
        {
          id: 'a',
          ok: true,
          minutes: 20,
          psi: null,
          process: 'plums--boiling-water',
          source: {
            publication: 'USDA Complete Guide to Home Canning, Agriculture Information Bulletin No. 539',
            edition: '1994',
            section: 'Guide 2, Plums, Table 1',
            band: '0-1,000 ft',
            rowKey: 'plums--boiling-water/boiling-water/hot/pint/0-1000-ft',
          },
        },
        expect.objectContaining({ id: 7, ok: true, minutes: 10, psi: 6, process: 'plums--dial' }),
        {
          id: 'c',
          ok: false,
          reason: 'jar-half-gallon-juice-only',
          message: expect.stringMatching(/^No process is published .* half-gallon .*Published instead: hot pack in quarts/),
        },
      ],
    })
  })

  it('answers no cases with no answers', () => {
    expect(answerCases([])).toEqual({ ok: true, value: [] })
  })

  it('takes a pack, a gauge or an elevation that is absent as not said', () => {
    const answered = answerCases([
      aCase({ pack: undefined, gauge: undefined }),
      aCase({ elevationFeet: undefined }),
      aCase({ elevationFeet: null }),
    ])
    expect(answered.ok && answered.value.map((each) => (each.ok ? each.minutes : each.reason))).toEqual([
      20,
      'elevation-unknown',
      'elevation-unknown',
    ])
  })

  it('reads metres, options and the gauge where they are given, and leaves other fields alone', () => {
    const pressure = { food: 'tomatoes-whole-water', method: 'pressure', gauge: 'dial', note: 'asked twice' }
    const answered = answerCases([
      aCase({ elevationFeet: undefined, elevationMetres: 304.9 }),
      aCase({ elevationMetres: 304.9 }),
      aCase({ ...pressure, option: 2 }),
      aCase({ ...pressure, gaugeErrorPsi: 3 }),
      aCase({ ...pressure, gaugeTestedOn: '2026-01-01', askedOn: '2027-08-26' }),
      aCase({ ...pressure, gaugeTestedOn: null }),
      aCase({ ...pressure, option: null, gaugeErrorPsi: null, askedOn: null }),
    ])
    expect(answered.ok && answered.value.map((each) => (each.ok ? `${each.minutes} ${each.psi}` : each.reason))).toEqual([
      '25 null',
      '20 null',
      '10 11',
      'gauge-error-too-large',
      'gauge-test-expired',
      'gauge-untested',
      '20 6',
    ])
  })

  it('answers a method that is none with its hazard rather than with an error', () => {
    const answered = answerCases([aCase({ method: 'oven' })])
    expect(answered.ok && answered.value[0]).toMatchObject({ ok: false, reason: 'method-never-safe' })
  })

  it('names the case and the field that cannot be read', () => {
    expect(problemOf({ food: ' ' })).toBe('case 2 ("b"), field food: expected a process id or a name')
    expect(problemOf({ food: 7 })).toContain('field food')
    expect(problemOf({ pack: 'warm' })).toBe('case 2 ("b"), field pack: expected hot, raw or null')
    expect(problemOf({ jar: 'gallon' })).toBe(
      'case 2 ("b"), field jar: expected one of half-pint, 12-oz, pint, pint-and-half, quart, half-gallon',
    )
    expect(problemOf({ jar: null })).toContain('field jar')
    expect(problemOf({ method: 'sun' })).toContain('field method: expected one of boiling-water, atmospheric-steam, pressure, open-kettle')
    expect(problemOf({ gauge: 'spring' })).toBe('case 2 ("b"), field gauge: expected dial, weighted or null')
    expect(problemOf({ elevationFeet: '650' })).toBe('case 2 ("b"), field elevationFeet: expected a number of feet')
    expect(problemOf({ elevationFeet: Number.POSITIVE_INFINITY })).toContain('field elevationFeet')
    expect(problemOf({ elevationMetres: 'high' })).toBe('case 2 ("b"), field elevationMetres: expected a number of metres')
    expect(problemOf({ option: 1.5 })).toBe('case 2 ("b"), field option: expected a whole number')
    expect(problemOf({ gaugeErrorPsi: 'one' })).toBe('case 2 ("b"), field gaugeErrorPsi: expected a number of psi')
    expect(problemOf({ gaugeTestedOn: 'May' })).toBe(
      'case 2 ("b"), field gaugeTestedOn: expected a date such as 2027-08-26, or null when never tested',
    )
    expect(problemOf({ gaugeTestedOn: 20270826 })).toContain('field gaugeTestedOn')
    expect(problemOf({ askedOn: '2027-8-26' })).toBe('case 2 ("b"), field askedOn: expected a date such as 2027-08-26')
    expect(problemOf({ askedOn: 'on 2027-08-26' })).toContain('field askedOn')
    expect(problemOf({ askedOn: '2027-08-26T10:00' })).toContain('field askedOn')
    expect(problemOf({ id: null })).toBe('case 2, field id: expected a text or a number')
  })

  it('wants a list of objects', () => {
    const said = (input: unknown) => {
      const answered = answerCases(input)
      return answered.ok ? 'answered' : sayCasesProblem(answered.problem)
    }
    expect(said({ cases: [] })).toBe('the file, itself: expected an array of cases')
    expect(said([3])).toBe('case 1, itself: expected an object')
    expect(said([null])).toBe('case 1, itself: expected an object')
    expect(said([[]])).toBe('case 1, itself: expected an object')
  })
})
