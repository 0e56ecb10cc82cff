import { describe, expect, it } from 'vitest'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { planDay } from '@/shared/planning/plan-day'
import { findWaysOut } from '@/shared/planning/ways-out'
import { parseClock } from '@/shared/time/kitchen-time'
import { sayCannerMinutes, sayFinish, sayFit, sayNextLimit, sayPlanRefusal, sayWayOut, sayYield } from '@/shared/wording/say-plan'
import { dillPickles, plumJam, s1DayProblem, s1JarsBoiledInCanners, s1OneCanner } from '@/tests/fixtures/s1-day-problem'
import { checkDayPlan } from '@/tests/support/check-day-plan'

const at = (clock: string) => {
  const parsed = parseClock(clock)
  return parsed.ok ? parsed.value : Number.NaN
}

function planned(problem: DayProblem): DayPlan {
  const answer = planDay(problem)
  if (!answer.ok) throw new Error(`refused: ${JSON.stringify(answer.problem.limit)}`)
  return answer.value
}

function refused(problem: DayProblem) {
  const answer = planDay(problem)
  if (answer.ok) throw new Error('was planned')
  return answer.problem
}

describe('the Plum and Pickle Evening', () => {
  const plan = planned(s1DayProblem)

  it('is six batches of jam and four of pickles in ten loads', () => {
    expect(plan.batches.filter((batch) => batch.preparationId === 'plum-jam')).toHaveLength(6)
    expect(plan.batches.filter((batch) => batch.preparationId === 'dill-pickles')).toHaveLength(4)
    expect(plan.loads.map((load) => load.code)).toEqual(['L01', 'L02', 'L03', 'L04', 'L05', 'L06', 'L07', 'L08', 'L09', 'L10'])
    expect(plan.batches.every((batch) => batch.multiple === 1)).toBe(true)
  })

  it('runs 37 minutes a jam load and 47 a pickle load: 410 of 430 canner minutes', () => {
    const lengths = plan.loads.map((load) => [load.preparationId, load.emptyAt - load.loadAt])
    expect(new Set(lengths.map((pair) => pair.join(' ')))).toEqual(new Set(['plum-jam 37', 'dill-pickles 47'])) // 5+12+10+5+5, 5+22+10+5+5
    expect(plan.cannerMinutes).toEqual({ needed: 410, available: 430, slack: 20 }) // 6 × 37 + 4 × 47; 2 × (21:35 − 18:00)
  })

  it('empties the last canner at 21:25, which no plan can beat', () => {
    expect(plan.finishAt).toBe(at('21:25')) // each canner 2 × 47 + 3 × 37 = 205 minutes from 18:00
    expect(plan.lowerBound).toBe(at('21:25'))
    expect(plan.cleanUpEndAt).toBe(at('22:05'))
  })

  it('breaks no rule that the checker knows', () => {
    expect(checkDayPlan(s1DayProblem, plan)).toEqual([])
  })

  it('briefs nobody who is gone before the briefing ends', () => {
    const [ada] = s1DayProblem.people
    if (!ada) throw new Error('somebody comes')
    const passing = { ...ada, id: 'p20', name: 'Passing', from: at('17:15'), until: at('17:20') }
    const problem = { ...s1DayProblem, people: [...s1DayProblem.people, passing, { ...passing, id: 'p21', until: passing.from }] }
    expect(checkDayPlan(problem, planned(problem))).toEqual([])
  })

  it('leaves no work without hands', () => {
    expect(plan.shortages).toEqual([])
  })

  it('names both canners as what fixes the finish, and the chain that leads to it', () => {
    expect(plan.bindingReason).toEqual({
      kind: 'canners',
      method: 'boiling-water',
      cannerIds: ['BW1', 'BW2'],
      from: at('18:00'),
      slackMinutes: 10,
    })
    const chain = plan.loads.filter((load) => plan.criticalLoadIds.includes(load.id))
    expect(chain.reduce((sum, load) => sum + load.emptyAt - load.loadAt, 0)).toBe(205)
  })

  it('names what would bind next, with its slack, when the canners did not', () => {
    // three pot places (R3, R4, E1), 6 × (20 + 8) + 4 × (15 + 9) pot minutes and holding: far from the finish; fillers and cooks are nearer
    expect(plan.nextLimit).toMatchObject({ kind: expect.stringMatching(/burners|kettles|fill-tables|people/) })
    expect(plan.nextLimit?.slackMinutes).toBeGreaterThan(0)
    expect(sayNextLimit(plan)).toMatch(/^Without that limit \S.* would decide next, at most \d+ min sooner\.$/)
    const oneTable = planned({
      ...s1DayProblem,
      preparations: s1DayProblem.preparations.map((entry) => ({ ...entry, fill: { ...entry.fill, workMinutes: 14, peopleMax: 1 } })),
    })
    // ten fillings of 14 min on one table from 17:30, then the shortest load of 37 min: 20:27
    expect(oneTable.nextLimit).toEqual({ kind: 'fill-tables', slackMinutes: oneTable.finishAt - at('20:27') })
  })

  it('puts the soak on the evening before with a household for each tub', () => {
    const tubs = plan.nightBefore.map((step) => [
      step.householdId,
      step.batchIds.length,
      step.startAt,
      step.startBy,
      step.doneBy,
      step.proposed,
    ])
    expect(tubs).toEqual([
      ['alderby', 2, at('20:00') - 1440, at('05:30'), at('17:30'), false],
      ['fennick', 2, at('20:00') - 1440, at('05:30'), at('17:30'), false],
    ])
  })

  it('never gives Esme a pickle station, a child heat or a knife, or Dov a canner', () => {
    const pickles = new Set(plan.batches.filter((batch) => batch.preparationId === 'dill-pickles').map((batch) => batch.id))
    const of = (id: string) => plan.tasks.filter((task) => task.peopleIds.includes(id))
    expect(of('p5').filter((task) => task.batchId && pickles.has(task.batchId) && task.kind !== 'wash' && task.kind !== 'label')).toEqual(
      [],
    )
    expect(new Set([...of('p8'), ...of('p9')].map((task) => task.kind))).toEqual(new Set(['brief', 'wash', 'label']))
    expect(of('p4').filter((task) => task.kind === 'load' || task.kind === 'unload')).toEqual([])
  })

  it('says so in sentences', () => {
    expect(sayFit(plan)).toBe('It fits, with 20 canner minutes to spare.')
    expect(sayFinish(s1DayProblem, plan)).toBe('Finish 21:25 because Canner 1 and Canner 2 are busy from 18:00; 10 min to spare.')
    expect(sayCannerMinutes(plan)).toBe('10 loads need 410 of 430 min.')
    expect(sayYield(s1DayProblem, plan, 'plum-jam')).toBe('42 to 48 half-pints')
    expect(sayYield(s1DayProblem, plan, 'dill-pickles')).toBe('28 to 36 pints')
  })

  it('comes out the same every time', () => {
    expect(planned(structuredClone(s1DayProblem))).toEqual(plan)
  })
})

describe('a day that does not fit', () => {
  it('names the one canner: 410 minutes needed, 215 available', () => {
    const refusal = refused(s1OneCanner)
    expect(refusal.limit).toEqual({ kind: 'canner-minutes', method: 'boiling-water', canners: 1 })
    expect([refusal.needed, refusal.available]).toEqual([410, 215])
    expect(refusal.waysOut[0]).toMatchObject({ change: { kind: 'one-more-canner' }, fits: true, finishAt: at('21:25') })
  })

  it('names the canner minutes when jars are boiled in the canners: 480 of 430', () => {
    const refusal = refused(s1JarsBoiledInCanners)
    expect(refusal.limit.kind).toBe('canner-minutes')
    expect([refusal.needed, refusal.available]).toEqual([480, 430]) // 6 × 32 + 4 × 47 + 10 × 10
    const said = sayPlanRefusal(s1JarsBoiledInCanners, refusal)
    expect(said.why).toBe('10 loads need 480 min in a canner; 2 boiling-water canners have 430 min.')
    expect(said.instead).toBe('Run 10 min where it is less, and wash the jars hot: 410 of 430 canner min, finish 21:25.')
  })

  it('offers ways out that were each planned again, those that fit first', () => {
    const { waysOut } = refused(s1JarsBoiledInCanners)
    const fits = waysOut.map((way) => way.fits)
    expect(fits).toEqual([...fits].sort((a, b) => Number(b) - Number(a)))
    const washed = waysOut.find((way) => way.change.kind === 'jars-washed-hot')
    expect(washed).toMatchObject({ fits: true, finishAt: at('21:25'), cannerMinutes: { needed: 410, available: 430, slack: 20 } })
    const inPot = waysOut.find((way) => way.change.kind === 'jars-boiled-in-pot')
    expect(inPot).toMatchObject({ fits: true, cannerMinutes: { needed: 380 } })
    for (const way of waysOut)
      expect(sayWayOut(s1JarsBoiledInCanners, way)).toMatch(way.fits ? /, finish \d\d:\d\d$/ : /, still (does not fit|\d+ .* min short)$/)
  })

  it('shows one jam batch fewer as 373 minutes', () => {
    const fewer = findWaysOut(s1DayProblem).find((way) => way.change.kind === 'fewer-batches' && way.change.preparationId === 'plum-jam')
    expect(fewer).toMatchObject({ change: { batches: 1, jars: 8 }, fits: true, cannerMinutes: { needed: 373 } }) // 410 − 37
  })

  it('refuses a short process with jars that were only washed', () => {
    const short = { ...plumJam, process: { ...plumJam.process, minutes: 5, sterilise: true, chosenBecause: null } }
    expect(refused({ ...s1DayProblem, preparations: [short, dillPickles] }).limit).toEqual({
      kind: 'jars-need-boiling',
      preparationId: 'plum-jam',
    })
  })

  const people = (keep: (skills: readonly string[]) => boolean) => ({
    ...s1DayProblem,
    people: s1DayProblem.people.filter((person) => keep(person.skills)),
  })
  const cases: readonly (readonly [string, DayProblem, string])[] = [
    [
      'no canner of the method',
      { ...s1DayProblem, canners: s1DayProblem.canners.map((canner) => ({ ...canner, usable: false, whyNot: 'rim dented' })) },
      'no-canner-for-method',
    ],
    [
      'a canner that no jar fits',
      { ...s1DayProblem, canners: s1DayProblem.canners.map((canner) => ({ ...canner, capacity: { quart: 7 } })) },
      'canner-too-small',
    ],
    [
      'a kettle under one tested batch',
      { ...s1DayProblem, kettles: s1DayProblem.kettles.map((kettle) => ({ ...kettle, litres: 3 })) },
      'kettle-too-small',
    ],
    ['too few burners', { ...s1DayProblem, burners: s1DayProblem.burners.slice(0, 1) }, 'burners'],
    ['nobody who cooks jam', people((skills) => !skills.includes('jam')), 'people-with-skill'],
    ['nobody trained for the canners', people((skills) => !skills.includes('boiling-water-operator')), 'people-with-skill'],
    ['too many people in the room', { ...s1DayProblem, window: { ...s1DayProblem.window, headcountLimit: 8 } }, 'headcount'],
    ['too little room to cool', { ...s1DayProblem, rackJars: 60 }, 'rack'],
    [
      'a soak that no household can take',
      { ...s1DayProblem, households: [{ id: 'dunmarrow', name: 'Dunmarrow', allergies: ['mustard'] }] },
      'lead-step',
    ],
    ['a day whose hours run backwards', { ...s1DayProblem, window: { ...s1DayProblem.window, cannersEmptyBy: at('17:00') } }, 'bad-number'],
    ['a figure that is no number', { ...s1DayProblem, preparations: [{ ...plumJam, jarsWanted: Number.NaN }] }, 'bad-number'],
    [
      'one jar under one per cent of slack',
      { ...s1DayProblem, window: { ...s1DayProblem.window, cannersEmptyBy: at('21:26') } },
      'canner-minutes',
    ],
  ]
  it.each(cases)('names %s', (_, problem, kind) => {
    const refusal = refused(problem)
    expect(refusal.limit.kind).toBe(kind)
    const said = sayPlanRefusal(problem, refusal)
    expect(said.why).toMatch(/\.$/)
    expect(said.instead).toMatch(/\.$/)
  })
})
