import { describe, expect, it } from 'vitest'
import { lookUpProcess } from '@/shared/process/look-up-process'
import type { ProcessQuery } from '@/shared/process/process-query'
import type { ScheduledProcess } from '@/shared/process/scheduled-process'
import { aQuery } from '@/tests/support/process-queries'

function found(changes: Partial<ProcessQuery>): ScheduledProcess {
  const answer = lookUpProcess(aQuery(changes))
  if (!answer.ok) throw new Error(`Refused: ${answer.problem.code}`)
  return answer.value
}

function code(changes: Partial<ProcessQuery>): string {
  const answer = lookUpProcess(aQuery(changes))
  return answer.ok ? `${answer.value.minutes} min` : answer.problem.code
}

describe('looking up a process', () => {
  it('gives plum jam in half-pints at 650 ft five minutes in sterile jars, or ten in clean ones', () => {
    expect(found({ food: 'jam-jelly-added-pectin', jar: 'half-pint' })).toMatchObject({
      processId: 'jam-jelly-added-pectin--boiling-water',
      rowKey: 'jam-jelly-added-pectin--boiling-water/boiling-water/hot/half-pint/0-1000-ft',
      minutes: 5,
      psi: null,
      needlePsi: null,
      band: '0-1,000 ft',
      bandMinFeet: 0,
      bandMaxFeet: 1000,
      elevationFeet: 650,
      headspaceInches: 0.25,
      acidification: null,
      sterilise: { required: true, minutes: 10 },
      minutesWithoutSterilising: 10,
      edition: 'So Easy to Preserve, 6th ed.',
      tablesAsOf: '2026-11-25',
    })
  })

  it('gives raw dill pickles in pints ten minutes at 650 ft, with no jar to sterilise', () => {
    expect(found({ food: 'dill-pickles-fresh-pack', pack: 'raw' })).toMatchObject({
      minutes: 10,
      sterilise: { required: false, minutes: null },
      minutesWithoutSterilising: null,
      acidification: { kind: 'in-the-recipe' },
    })
  })

  it('offers no longer boil instead of sterile jars in a steam canner, for which nothing is printed', () => {
    expect(found({ food: 'piccalilli', method: 'atmospheric-steam' })).toMatchObject({
      minutes: 5,
      method: 'atmospheric-steam',
      sterilise: { required: true, minutes: 10 },
      minutesWithoutSterilising: null,
      notes: [expect.stringContaining('steam canner')],
    })
  })

  it('says nothing of the steam rule where a steam row is printed', () => {
    expect(found({ food: 'tomato-ketchup', method: 'atmospheric-steam' })).toMatchObject({
      processId: 'tomato-ketchup--atmospheric-steam',
      minutes: 15,
      notes: [],
    })
  })

  it('takes the acid for the jar: a tablespoon of lemon juice a pint, two a quart, and a pint for a half-pint', () => {
    const acid = (jar: ProcessQuery['jar']) => found({ food: 'tomatoes-whole-water', jar }).acidification
    expect(acid('pint')).toMatchObject({ lemonJuiceTbsp: 1, citricAcidTsp: 0.25, vinegarTbsp: 2 })
    expect(acid('quart')).toMatchObject({ lemonJuiceTbsp: 2, citricAcidTsp: 0.5, vinegarTbsp: 4 })
    expect(acid('half-pint')).toEqual(acid('pint'))
    expect(found({ food: 'figs' }).acidification).toMatchObject({ kind: 'add-to-each-jar', lemonJuiceTbsp: 1, vinegarTbsp: null })
  })

  it('leaves more room in raw quarts of lima beans', () => {
    const room = (pack: 'hot' | 'raw', jar: ProcessQuery['jar']) =>
      found({ food: 'lima-beans', pack, jar, method: 'pressure', gauge: 'dial' })
    expect(room('raw', 'quart')).toMatchObject({ headspaceInches: 1.5, headspaceNote: expect.stringContaining('large beans') })
    expect(room('raw', 'pint-and-half')).toMatchObject({ headspaceInches: 1.5 })
    expect(room('raw', 'pint')).toMatchObject({ headspaceInches: 1, headspaceNote: null })
    expect(room('hot', 'quart')).toMatchObject({ headspaceInches: 1 })
  })

  it('keeps the limits of the pack', () => {
    expect(found({ food: 'pumpkin', method: 'pressure', gauge: 'weighted' }).packLimits).toContain('never mashed')
  })

  it('cautions low-acid food, pressure, jam and tomatoes each in their own words', () => {
    const cautions = (changes: Partial<ProcessQuery>) => found(changes).cautions.join(' ')
    expect(cautions({ food: 'green-beans', method: 'pressure', gauge: 'dial' })).toMatch(/Vent.*tested recipes.*thicken/)
    expect(cautions({ food: 'plums' })).not.toMatch(/Vent|thicken|tested recipes|spatter|lemon juice/)
    expect(cautions({ food: 'plum-preserves' })).toContain('spatter')
    expect(cautions({ food: 'figs' })).toContain('bottled lemon juice')
    expect(cautions({ food: 'plums' })).toMatch(/^Sea-level times .* Open canner lids away .* local codes and licensed practice/)
  })
})

describe('the elevation', () => {
  it('counts a part of a foot as the next foot', () => {
    expect(found({ elevation: { feet: 1000 } })).toMatchObject({ minutes: 20, elevationFeet: 1000 })
    expect(found({ elevation: { feet: 1000.1 } })).toMatchObject({ minutes: 25, elevationFeet: 1001 })
  })

  it('may be given in metres: 304.8 m is 1,000 ft, and a centimetre more is not', () => {
    expect(found({ elevation: { metres: 304.8 } })).toMatchObject({ minutes: 20, elevationFeet: 1000 })
    expect(found({ elevation: { metres: 304.81 } })).toMatchObject({ minutes: 25, elevationFeet: 1001 })
  })

  it('is asked for and never assumed', () => {
    expect(code({ elevation: null })).toBe('elevation-unknown')
    expect(code({ elevation: { feet: Number.NaN } })).toBe('elevation-unknown')
  })

  it('is refused below the sea, even by less than a foot', () => {
    expect(code({ elevation: { feet: 0 } })).toBe('20 min')
    expect(code({ elevation: { feet: -0.2 } })).toBe('elevation-below-tables')
    expect(lookUpProcess(aQuery({ elevation: { feet: -0.2 } }))).toMatchObject({ problem: { feet: -1 } })
  })

  it('takes the longer printed time above 8,000 ft, and none above 10,000', () => {
    expect(found({ elevation: { feet: 8000 } })).toMatchObject({ minutes: 35, band: 'Above 6,000 ft', bandMaxFeet: 8000 })
    expect(found({ elevation: { feet: 8001 } })).toMatchObject({
      minutes: 40,
      band: '8,001-10,000 ft',
      bandMinFeet: 8001,
      rowKey: 'plums--boiling-water/boiling-water/hot/pint/8001-10000-ft',
      edition: '2010',
      source: { publication: expect.stringContaining('Utah') },
    })
    expect(lookUpProcess(aQuery({ elevation: { feet: 10_001 } }))).toMatchObject({
      problem: { code: 'elevation-above-tables', highestFeet: 10_000, because: null },
    })
  })

  it('says why a fruit without that longer time ends at 8,000 ft', () => {
    expect(lookUpProcess(aQuery({ food: 'figs', elevation: { feet: 8001 } }))).toMatchObject({
      problem: { code: 'elevation-above-tables', highestFeet: 8000, because: expect.stringContaining('Utah') },
    })
    expect(found({ food: 'figs', elevation: { feet: 8000 } }).disagreements).toHaveLength(1)
  })

  it('keeps an open band that nobody contradicts, and says so', () => {
    expect(found({ food: 'piccalilli', elevation: { feet: 9000 } })).toMatchObject({
      minutes: 15,
      bandMaxFeet: null,
      rowKey: 'piccalilli--boiling-water/boiling-water/hot/pint/6001-up-ft',
      notes: [expect.stringContaining('no upper end')],
    })
    expect(found({ food: 'plums', method: 'pressure', gauge: 'weighted', elevation: { feet: 9000 } }).notes).toEqual([])
    expect(found({ food: 'piccalilli', elevation: { feet: 6000 } }).notes).toEqual([])
    expect(found({ food: 'pickled-beets', elevation: { feet: 500 } })).toMatchObject({
      notes: [],
      disagreements: [expect.stringContaining('45 min')],
    })
    expect(found({ food: 'piccalilli' }).disagreements).toEqual([])
  })
})

describe('the jar', () => {
  it('smaller than listed goes at the next listed size, and the answer says so', () => {
    expect(found({ jar: '12-oz' })).toMatchObject({
      minutes: 20,
      jar: '12-oz',
      jarRow: 'pint',
      jarNote: expect.stringContaining('12 oz jar goes at the pint time'),
    })
    expect(found({ jar: 'half-pint' })).toMatchObject({ minutes: 20, jarRow: 'pint' })
    expect(found({ jar: 'pint-and-half' })).toMatchObject({ minutes: 25, jarRow: 'quart' })
    expect(found({ jar: 'pint' }).jarNote).toBeNull()
  })

  it('larger than listed is refused with the largest', () => {
    expect(lookUpProcess(aQuery({ food: 'corn-cream-style', jar: 'quart', method: 'pressure', gauge: 'dial' }))).toMatchObject({
      problem: { code: 'jar-larger-than-published', jar: 'quart', largest: 'pint' },
    })
    expect(lookUpProcess(aQuery({ food: 'cranberry-orange-chutney', jar: '12-oz' }))).toMatchObject({
      problem: { code: 'jar-larger-than-published', largest: 'half-pint' },
    })
    expect(code({ food: 'cranberry-orange-chutney', jar: '12-oz', pack: null })).toBe('jar-larger-than-published')
    expect(code({ food: 'chile-salsa', jar: 'pint-and-half' })).toBe('jar-larger-than-published')
  })

  it('of half a gallon is for apple and grape juice only', () => {
    expect(code({ food: 'apple-juice', jar: 'half-gallon' })).toBe('10 min')
    expect(code({ food: 'grape-juice', jar: 'half-gallon' })).toBe('10 min')
    expect(lookUpProcess(aQuery({ jar: 'half-gallon' }))).toMatchObject({
      problem: { code: 'jar-half-gallon-juice-only', hazards: ['half-gallon-jar'] },
    })
  })
})

describe('the pack', () => {
  it('need not be said where the food has one, or where both print the same', () => {
    expect(code({ food: 'applesauce', pack: null })).toBe('15 min')
    expect(code({ food: 'plums', pack: null })).toBe('20 min')
  })

  it('must be said where the printed figures differ', () => {
    expect(lookUpProcess(aQuery({ food: 'peaches', pack: null }))).toMatchObject({
      problem: { code: 'pack-needed', packs: ['hot', 'raw'] },
    })
    // same minutes, but raw quarts of lima beans need more headspace
    expect(code({ food: 'lima-beans', pack: null, jar: 'quart', method: 'pressure', gauge: 'dial' })).toBe('pack-needed')
    expect(code({ food: 'lima-beans', pack: null, jar: 'pint', method: 'pressure', gauge: 'dial' })).toBe('40 min')
  })

  it('that is not printed is refused', () => {
    expect(lookUpProcess(aQuery({ food: 'pears', pack: 'raw' }))).toMatchObject({ problem: { code: 'pack-not-published', pack: 'raw' } })
  })
})

describe('the canner', () => {
  it('of low-acid food is a pressure canner', () => {
    const beans = { food: 'green-beans' }
    expect(lookUpProcess(aQuery({ ...beans }))).toMatchObject({
      problem: { code: 'low-acid-needs-pressure', hazards: ['low-acid-in-boiling-water'] },
    })
    expect(code({ ...beans, method: 'atmospheric-steam' })).toBe('steam-acid-only')
    expect(code({ ...beans, method: 'pressure' })).toBe('gauge-needed')
    expect(code({ ...beans, method: 'pressure', gauge: 'weighted' })).toBe('20 min')
  })

  it('for steam holds 45 minutes at most, with elevation', () => {
    const steam = (feet: number) => code({ food: 'tomatoes-whole-water', jar: 'quart', method: 'atmospheric-steam', elevation: { feet } })
    expect(steam(1000)).toBe('45 min')
    expect(steam(1001)).toBe('steam-over-45-minutes')
    expect(
      lookUpProcess(aQuery({ food: 'tomatoes-whole-water', jar: 'quart', method: 'atmospheric-steam', elevation: { feet: 1001 } })),
    ).toMatchObject({
      problem: { minutes: 50 },
    })
  })

  it('without a printed process is refused; without a verified one, the place to look is named', () => {
    expect(lookUpProcess(aQuery({ food: 'apple-butter', method: 'pressure', gauge: 'dial' }))).toMatchObject({
      problem: { code: 'method-not-published', method: 'pressure', gauge: 'dial' },
    })
    expect(code({ food: 'rhubarb' })).toBe('method-not-published')
    expect(code({ food: 'tomatoes-crushed', method: 'pressure', gauge: 'weighted' })).toBe('no-verified-process')
    expect(code({ food: 'tomatoes-crushed', method: 'pressure', gauge: 'dial' })).toBe('20 min')
    expect(code({ food: 'sauerkraut', method: 'atmospheric-steam' })).toBe('no-verified-process')
    expect(code({ food: 'sauerkraut', method: 'pressure', gauge: 'dial' })).toBe('method-not-published')
  })

  it('that is none is answered with its hazard', () => {
    const hazards = (method: ProcessQuery['method'], elevation: ProcessQuery['elevation'] = { feet: 0 }) => {
      const answer = lookUpProcess(aQuery({ method, elevation }))
      return answer.ok ? [] : [answer.problem.code, ...answer.problem.hazards, answer.problem.alternatives.length > 0]
    }
    expect(hazards('open-kettle')).toEqual(['method-never-safe', 'open-kettle', true])
    expect(hazards('oven')).toEqual(['method-never-safe', 'oven', true])
    expect(hazards('microwave')).toEqual(['method-never-safe', 'oven', true])
    expect(hazards('dishwasher')).toEqual(['method-never-safe', 'oven', true])
    expect(hazards('multi-cooker')).toEqual(['method-never-safe', 'multi-cooker', true])
    expect(hazards('canning-powder')).toEqual(['method-never-safe', 'canning-powder', true])
    expect(hazards('jar-inversion', null)).toEqual(['method-never-safe', 'jar-inversion', false])
  })
})

describe('the pressure', () => {
  const tomatoes = { food: 'tomatoes-whole-water', jar: 'quart', method: 'pressure', gauge: 'weighted' } as const

  it('is the first the table prints, with the others beside it', () => {
    expect(found({ ...tomatoes })).toMatchObject({
      option: 1,
      minutes: 15,
      psi: 5,
      needlePsi: null,
      otherOptions: [
        { option: 2, minutes: 10, psi: 10 },
        { option: 3, minutes: 1, psi: 15 },
      ],
    })
    expect(found({ ...tomatoes, elevation: { feet: 1001 } })).toMatchObject({
      psi: 10,
      otherOptions: [{ option: 2, minutes: 10, psi: 15 }],
    })
    expect(found({ food: 'green-beans', method: 'pressure', gauge: 'dial' })).toMatchObject({ option: null, otherOptions: [] })
  })

  it('may be chosen among those printed', () => {
    expect(found({ ...tomatoes, option: 2 })).toMatchObject({
      minutes: 10,
      psi: 10,
      rowKey: 'tomatoes-whole-water--weighted/pressure/hot/quart/option-2/0-1000-ft',
    })
    expect(code({ ...tomatoes, option: 3, elevation: { feet: 1001 } })).toBe('not-recommended-here')
    expect(lookUpProcess(aQuery({ ...tomatoes, option: 4 }))).toMatchObject({
      problem: { code: 'option-not-published', option: 4, options: [1, 2, 3] },
    })
    expect(lookUpProcess(aQuery({ option: 1 }))).toMatchObject({ problem: { code: 'option-not-published', options: [] } })
  })
})

describe('the dial gauge', () => {
  const dial = {
    food: 'green-beans',
    pack: 'raw',
    method: 'pressure',
    gauge: 'dial',
    elevation: { feet: 4300 },
    askedOn: '2027-08-26',
  } as const

  it('moves the needle by its known error', () => {
    expect(found({ ...dial })).toMatchObject({ psi: 13, needlePsi: 13 })
    expect(found({ ...dial, gaugeErrorPsi: 1 })).toMatchObject({ psi: 13, needlePsi: 14 })
    expect(found({ ...dial, gaugeErrorPsi: -2 })).toMatchObject({ psi: 13, needlePsi: 11 })
    expect(found({ ...dial, gaugeErrorPsi: 2, gaugeTestedOn: '2027-05-04' })).toMatchObject({ needlePsi: 15 })
  })

  it('off by more than 2 psi, never tested or tested over a year ago blocks its canner', () => {
    expect(lookUpProcess(aQuery({ ...dial, gaugeErrorPsi: 2.1 }))).toMatchObject({
      problem: { code: 'gauge-error-too-large', errorPsi: 2.1 },
    })
    expect(code({ ...dial, gaugeErrorPsi: -2.1 })).toBe('gauge-error-too-large')
    expect(code({ ...dial, gaugeErrorPsi: Number.NaN })).toBe('gauge-error-too-large')
    expect(code({ ...dial, gaugeTestedOn: null })).toBe('gauge-untested')
    expect(code({ ...dial, gaugeTestedOn: '2026-08-26' })).toBe('20 min')
    expect(lookUpProcess(aQuery({ ...dial, gaugeTestedOn: '2026-08-25' }))).toMatchObject({
      problem: { code: 'gauge-test-expired', testedOn: '2026-08-25' },
    })
    expect(code({ ...dial, gaugeTestedOn: '2027-08-26' })).toBe('20 min')
    expect(code({ ...dial, gaugeTestedOn: '2027-08-27' })).toBe('gauge-test-expired')
    expect(code({ ...dial, gaugeTestedOn: '2020-01-01', askedOn: undefined })).toBe('20 min')
  })

  it('refused, offers no other jar with the same gauge', () => {
    const answer = lookUpProcess(aQuery({ ...dial, gaugeTestedOn: null }))
    const gauges = answer.ok ? [] : answer.problem.alternatives.map(({ gauge }) => gauge)
    expect(new Set(gauges)).toEqual(new Set(['weighted']))
  })

  it('is of no account for a weighted gauge or boiling water', () => {
    expect(code({ ...dial, gauge: 'weighted', gaugeTestedOn: null, gaugeErrorPsi: 9 })).toBe('20 min')
    expect(code({ gauge: 'dial', gaugeTestedOn: null })).toBe('20 min')
  })
})

describe('what was done to the food', () => {
  it('makes a process unusable when a thickener was added', () => {
    expect(lookUpProcess(aQuery({ preparation: { untestedThickener: true } }))).toMatchObject({
      problem: { code: 'thickener-untested', hazards: ['untested-thickener'] },
    })
    expect(code({ preparation: { untestedThickener: false } })).toBe('20 min')
  })

  it('makes it unusable when jam was cooked in more than one batch at once', () => {
    const doubled = { preparation: { batchesInOneKettle: 2 } }
    expect(lookUpProcess(aQuery({ food: 'jam-no-added-pectin', ...doubled }))).toMatchObject({
      problem: { code: 'batch-multiplied', batches: 2, hazards: ['doubled-jelly-batch'] },
    })
    expect(code({ food: 'jam-no-added-pectin', preparation: { batchesInOneKettle: 1 } })).toBe('5 min')
    expect(code({ food: 'plums', ...doubled })).toBe('20 min')
  })

  it('makes it unusable when acid food stood in bare aluminium', () => {
    const bare = { preparation: { kettleMetal: 'aluminium' as const } }
    expect(lookUpProcess(aQuery({ ...bare }))).toMatchObject({ problem: { code: 'aluminium-with-acid', hazards: ['aluminium-with-acid'] } })
    expect(code({ preparation: { kettleMetal: 'enamel' } })).toBe('20 min')
    expect(code({ food: 'green-beans', method: 'pressure', gauge: 'dial', ...bare })).toBe('20 min')
  })
})

describe('the alternatives', () => {
  it('come nearest first: another jar, another pack, another canner; the very thing asked for is none', () => {
    const answer = lookUpProcess(aQuery({ food: 'peaches', jar: 'half-gallon', elevation: { feet: 500 } }))
    const said = answer.ok ? [] : answer.problem.alternatives.map(({ method, pack, jar }) => `${method} ${pack} ${jar}`)
    expect(said).toEqual([
      'boiling-water hot quart',
      'boiling-water hot pint',
      'boiling-water raw quart',
      'boiling-water raw pint',
      'atmospheric-steam hot quart',
      'pressure hot quart',
    ])
  })

  it('are only such as hold at this elevation', () => {
    const answer = lookUpProcess(aQuery({ food: 'asparagus', method: 'pressure', gauge: 'dial', elevation: { feet: 8001 } }))
    expect(answer.ok ? [] : new Set(answer.problem.alternatives.map(({ gauge }) => gauge))).toEqual(new Set(['weighted']))
  })

  it('of an unnamed pack are both packs', () => {
    const answer = lookUpProcess(aQuery({ food: 'peaches', pack: null }))
    expect(answer.ok ? [] : answer.problem.alternatives.slice(0, 2)).toMatchObject([
      { pack: 'hot', jar: 'pint' },
      { pack: 'raw', jar: 'pint' },
    ])
  })
})
