import { describe, expect, it } from 'vitest'
import { METHODS, type Method } from '@/shared/kitchen/methods'
import { spareByCanner } from '@/shared/planning/canner-spare'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import type { DaySoFar } from '@/shared/planning/day-so-far'
import { cannerMinutesOfMethod } from '@/shared/planning/finish-bound'
import { movedToPressure } from '@/shared/planning/other-ways-out'
import { cycleMinutes } from '@/shared/planning/place-job'
import { planOnce } from '@/shared/planning/plan-once'
import { refusalBeforePlanning } from '@/shared/planning/refuse-day'
import { type Replan, replanDay } from '@/shared/planning/replan-day'
import { withShorterShifts } from '@/shared/planning/shorter-shifts'
import { splitDemand } from '@/shared/planning/split-demand'
import { findWaysOut } from '@/shared/planning/ways-out'
import { parseClock } from '@/shared/time/kitchen-time'
import { sayPlanRefusal, sayWayOut, sayWhyNot } from '@/shared/wording/say-plan'
import { s2DayProblem, s2FifthCanner, s2NineOClock, s2ShiftsCapped, s2TenTomatoLoads } from '@/tests/fixtures/s2-day-problem'
import { s3Days } from '@/tests/fixtures/s3-day-problems'
import { checkDayPlan } from '@/tests/support/check-day-plan'
import { checkReplan } from '@/tests/support/check-replan'
import { asPlannedUntil } from '@/tests/support/day-so-far'

/** A little searching is enough for these days; more is for benches. */
const FILLINGS = 50

const at = (clock: string) => {
  const parsed = parseClock(clock)
  return parsed.ok ? parsed.value : Number.NaN
}
const jobsOf = (problem: DayProblem) => {
  const split = splitDemand(problem)
  if (!split.ok) throw new Error(JSON.stringify(split.problem))
  return split.value.jobs
}
const counted = (problem: DayProblem, ...methods: readonly Method[]) => {
  const all = methods.map((method) => cannerMinutesOfMethod(problem, jobsOf(problem), method))
  const sum = (pick: 'needed' | 'available') => all.reduce((total, entry) => total + entry[pick], 0)
  return [sum('needed'), sum('available')]
}
const limitOf = (problem: DayProblem) => refusalBeforePlanning(problem)

describe('the Bench Harvest day at 4,300 ft', () => {
  it('runs 82, 47 and 62 min a load in boiling water, 96 under pressure, and a tomato load would be 101', () => {
    expect(s2DayProblem.preparations.map((entry) => [entry.code, cycleMinutes(entry)])).toEqual([
      ['T', 82],
      ['S', 47],
      ['P', 62],
      ['B', 96],
    ])
    expect(cycleMinutes(s2DayProblem.preparations[0]?.alternatives?.[0] ?? s2DayProblem.preparations[0] ?? (undefined as never))).toBe(101)
  })

  it('needs 1,965 of 1,860 canner minutes: 105 short, and says so in plain words with ways out that were each planned', () => {
    expect(counted(s2DayProblem, 'boiling-water')).toEqual([1965, 1860])
    expect(limitOf(s2DayProblem)).toMatchObject({
      limit: { kind: 'canner-minutes', method: 'boiling-water', canners: 4 },
      needed: 1965,
      available: 1860,
    })
    const waysOut = findWaysOut(s2ShiftsCapped)
    const refusal = limitOf(s2ShiftsCapped)
    if (!refusal) throw new Error('was not refused')
    expect(sayPlanRefusal(s2ShiftsCapped, { ...refusal, waysOut }).why).toBe(
      '30 loads need 1965 min in a canner; 4 boiling-water canners have 1860 min.',
    )
    const fitting = waysOut.filter((way) => way.fits)
    expect(new Set(fitting.map((way) => way.change.kind)).size).toBeGreaterThanOrEqual(3)
    expect(fitting.map((way) => way.change)).toContainEqual({ kind: 'one-more-canner', method: 'boiling-water', withBurner: true })
    expect(fitting.map((way) => way.change)).toContainEqual({ kind: 'fewer-batches', preparationId: 'tomatoes', batches: 2, jars: 14 })
    const moved = waysOut.find((way) => way.change.kind === 'move-to-pressure')
    expect(moved?.change).toEqual({ kind: 'move-to-pressure', preparationId: 'tomatoes', loads: 1, jars: 7, cannerIds: ['PC-A'] })
    expect(moved?.cannerMinutesByMethod.find(({ method }) => method === 'boiling-water')).toMatchObject({
      needed: 1883,
      available: 1860,
      slack: -23,
    })
    expect(moved && sayWayOut(s2ShiftsCapped, moved)).toContain('still 23 boiling-water canner min short')
    for (const kind of ['one-more-operator', 'one-more-person'] as const)
      expect(waysOut.find((way) => way.change.kind === kind)?.fits).toBe(false) // hands are plentiful
  }, 240_000)

  it('fits with a fifth canner on a burner of its own: 1,965 of 2,325, 0.85 of the minutes', () => {
    expect(counted(s2FifthCanner(true), 'boiling-water')).toEqual([1965, 2325])
    expect(Math.round((1965 / 2325) * 100)).toBe(85)
    const planned = planOnce(s2FifthCanner(true), FILLINGS)
    if (!planned.ok) throw new Error(JSON.stringify(planned.problem))
    expect(planned.value.finishAt).toBeLessThanOrEqual(at('17:15'))
    expect(checkDayPlan(s2FifthCanner(true), planned.value)).toEqual([])
  }, 120_000)

  it('does not fit with a start at 09:00: 15 of 1,980 min to spare is under 1 %', () => {
    expect(counted(s2NineOClock, 'boiling-water')).toEqual([1965, 1980])
    expect(limitOf(s2NineOClock)?.limit.kind).toBe('canner-minutes')
  })

  it('as its people offered their hours, fits with a change and shorter shifts together, where neither is enough alone', () => {
    const waysOut = findWaysOut(s2DayProblem)
    expect(waysOut.filter(({ fits, besides }) => fits && !besides)).toEqual([])
    const alone = waysOut.find(({ change, fits }) => !fits && change.kind === 'one-more-canner')
    expect(alone && sayWhyNot(s2DayProblem, alone)).toBe('No. 35 people would be in the room at once; 32 may be.')
    const moved = waysOut.find(({ change, fits }) => !fits && change.kind === 'move-to-pressure')
    expect(moved && sayWhyNot(s2DayProblem, moved)).toBe('No, still 23 boiling-water canner min short')
    const canner = waysOut.find(({ change, fits }) => fits && change.kind === 'one-more-canner')
    expect(canner && sayWayOut(s2DayProblem, canner)).toBe(
      'One more boiling-water canner with a burner of its own, and Elio, Freya and Gus go at 12:00: 2637 of 3255 canner min, finish 17:08',
    )
  })

  it('tells no way out that helps nothing where no kettle is entered at all', () => {
    expect(findWaysOut({ ...s2ShiftsCapped, kettles: [] }).filter(({ fits }) => !fits)).toEqual([])
  })

  it('fits with ten tomato loads: 1,801 of 1,860', () => {
    expect(counted(s2TenTomatoLoads, 'boiling-water')).toEqual([1801, 1860])
    const planned = planOnce(s2TenTomatoLoads, FILLINGS)
    if (!planned.ok) throw new Error(JSON.stringify(planned.problem))
    expect(checkDayPlan(s2TenTomatoLoads, planned.value)).toEqual([])
    const salsa = planned.value.batches.filter((batch) => batch.preparationId === 'salsa')
    expect(salsa.every((batch) => batch.multiple === 1)).toBe(true) // no pot holds two batches
    for (const load of planned.value.loads.filter((entry) => entry.method === 'pressure')) {
      const operator = s2TenTomatoLoads.people.find((person) => person.id === load.operatorId)
      expect(operator?.until).toBeGreaterThanOrEqual(load.emptyAt) // nobody leaves a pressure canner at 15:00
    }
  }, 120_000)

  it('has 177 and 81 idle pressure minutes: room for one tomato load, and one moved load leaves 1,883', () => {
    expect(counted(s2DayProblem, 'pressure')).toEqual([672, 930]) // 3 × 96 in PC-A, 4 × 96 in PC-B
    expect([...spareByCanner(s2DayProblem, 'pressure')]).toEqual([
      ['PC-A', 177],
      ['PC-B', 81],
    ])
    const [moves] = movedToPressure(s2DayProblem)
    expect(moves).toHaveLength(1)
    expect(counted(moves?.[0]?.problem ?? s2DayProblem, 'boiling-water')).toEqual([1883, 1860])
  })

  it('wants 35 people in the room between 12:00 and 13:00, three more than may be', () => {
    const ten = { ...s2DayProblem, preparations: s2TenTomatoLoads.preparations }
    expect(limitOf(ten)).toMatchObject({ limit: { kind: 'headcount' }, needed: 35, available: 32 })
    expect(limitOf(s2TenTomatoLoads)).toBeNull()
    const [best, ...others] = findWaysOut(ten)
    expect(best && sayWayOut(ten, best)).toBe('Elio, Freya and Gus go at 12:00: 2473 of 2790 canner min, finish 17:14')
    expect(others.some(({ fits }) => fits)).toBe(false)
  })
})

describe('the Tideline Harvest Weekend at sea level', () => {
  const asSignedUp = s3Days({ isSecondDialTested: true, areMoreTaught: false })
  const untested = s3Days({ isSecondDialTested: false, areMoreTaught: false })
  const both = (days: readonly DayProblem[], ...methods: readonly Method[]) =>
    days
      .map((day) => counted(day, ...methods))
      .reduce(([needed = 0, available = 0], [more = 0, open = 0]) => [needed + more, available + open], [0, 0])
  const loadsOf = (days: readonly DayProblem[], id: string) =>
    days
      .flatMap(jobsOf)
      .filter((job) => job.preparationId.startsWith(id))
      .reduce((sum, job) => sum + job.loads.length, 0)

  it('is 40, 23, 30, 18, 18, 15, 20, 20 and 6 loads', () => {
    const ids = ['tomatoes', 'salsa', 'peaches', 'applesauce', 'dill-pickles', 'bread-and-butter', 'plum-jam', 'beans', 'corn']
    expect(ids.map((id) => loadsOf(asSignedUp, id))).toEqual([40, 23, 30, 18, 18, 15, 20, 20, 6])
  })

  it('needs 8,393 of 9,450 water and steam minutes, under nine tenths on either day', () => {
    expect(both(asSignedUp, 'boiling-water', 'atmospheric-steam')).toEqual([8393, 9450])
    for (const day of asSignedUp) {
      const [needed = 0, available = 1] = counted(day, 'boiling-water', 'atmospheric-steam')
      expect(needed / available).toBeLessThan(0.9)
    }
  })

  it('needs 3,106 pressure minutes: of 3,780 with the second dial canner tested, of 2,835 without, so only then it fits', () => {
    expect(both(asSignedUp, 'pressure')).toEqual([3106, 3780])
    expect(both(untested, 'pressure')).toEqual([3106, 2835])
    expect(untested.map((day) => limitOf(day)?.limit)).toEqual([
      { kind: 'canner-minutes', method: 'pressure', canners: 3 },
      { kind: 'canner-minutes', method: 'pressure', canners: 3 },
    ])
    const [saturday, sunday] = untested
    expect(
      findWaysOut(saturday).find((way) => way.change.kind === 'one-more-canner' && way.change.method === 'pressure')?.cannerMinutesByMethod,
    ).toContainEqual(expect.objectContaining({ method: 'pressure', needed: 1624, available: 1980 }))
    const [tested, ...others] = findWaysOut(sunday).filter(({ fits }) => fits)
    expect(tested).toMatchObject({ change: { kind: 'one-more-canner', method: 'pressure' }, finishAt: at('16:27') })
    expect(others.map(({ change }) => change)).toContainEqual({ kind: 'fewer-batches', preparationId: 'corn', batches: 6, jars: 54 })
  }, 240_000)

  it('never gives a steam canner low-acid food or more than 45 min', () => {
    for (const day of asSignedUp)
      for (const entry of day.preparations.filter(({ method }) => method === 'atmospheric-steam'))
        expect(entry.process.minutes).toBeLessThanOrEqual(45)
  })

  it('finds that nobody who minds water canners is there on Saturday after 13:00; three more are enough, two are not', () => {
    const [saturday, sunday] = asSignedUp
    const refusal = limitOf(saturday)
    expect(refusal).toMatchObject({
      limit: { kind: 'people-with-skill', skills: ['boiling-water-operator'], stage: 'process' },
      needed: 2,
      available: 0,
      at: at('13:00'),
    })
    expect(limitOf(sunday)).toBeNull()
    expect(METHODS.length).toBe(3)
    const [best, ...others] = findWaysOut(saturday)
    expect(best).toMatchObject({ change: { kind: 'one-more-operator', method: 'boiling-water', people: 3 }, fits: true })
    expect(best?.finishAt).toBeLessThanOrEqual(at('17:30'))
    expect(best && sayWayOut(saturday, best)).toContain('3 more people who mind the boiling-water canners')
    expect(others.some(({ fits }) => fits)).toBe(false)
  }, 120_000)

  const held = (day: DayProblem): DayProblem => ({ ...day, window: { ...day.window, headcountLimit: 55 } })

  it('wants 60 and 62 people in a hall that holds 55 where the shifts overlap', () => {
    const [saturday, sunday] = s3Days({ isSecondDialTested: true, areMoreTaught: true })
    expect(limitOf(held(saturday))).toMatchObject({ limit: { kind: 'headcount' }, needed: 60, available: 55 })
    expect(limitOf(held(sunday))).toMatchObject({ limit: { kind: 'headcount' }, needed: 62, available: 55 })
  })

  describe('with helpers who mind water canners, the second dial tested, and 55 in the hall', () => {
    const [saturday, sunday] = s3Days({ isSecondDialTested: true, areMoreTaught: true })

    it.each([
      { name: 'Saturday', asked: saturday, latest: '17:30', shorter: 5, corn: 0, soaks: 10 },
      { name: 'Sunday', asked: sunday, latest: '16:27', shorter: 7, corn: 6, soaks: 8 }, // no timetable can end earlier on Sunday
    ])(
      '$name is planned whole once $shorter people cut half an hour, and is planned again while it runs',
      (expected) => {
        const cut = withShorterShifts(held(expected.asked))
        if (!cut) throw new Error('the shifts overlap')
        const { problem: day, shifts } = cut
        expect(shifts).toHaveLength(expected.shorter)
        const planned = planOnce(day)
        if (!planned.ok) throw new Error(JSON.stringify(planned.problem))
        expect(checkDayPlan(day, planned.value)).toEqual([])
        expect(planned.value.finishAt).toBeLessThanOrEqual(at(expected.latest))
        const corn = planned.value.loads.filter((load) => load.preparationId === 'corn')
        expect(corn).toHaveLength(expected.corn)
        for (const load of corn) expect(load.loadAt).toBeLessThanOrEqual(at('14:00'))
        const soaks = planned.value.nightBefore.filter((step) => step.preparationId === 'dill-pickles')
        expect(soaks.flatMap((step) => step.batchIds)).toHaveLength(expected.soaks)
        const morning = asPlannedUntil(planned.value, at('10:00'))
        const again = keepsRunning(day, planned.value, morning)
        expect([again.plan.finishAt, again.dropped]).toEqual([planned.value.finishAt, []])
        const afternoon = asPlannedUntil(planned.value, at('14:00'))
        const cannerId = day.canners.find(({ usable }) => usable)?.id ?? ''
        const setbacks = [{ kind: 'canner-out' as const, cannerId, from: at('14:20'), until: at('15:20') }]
        const without = keepsRunning(day, planned.value, { ...afternoon, setbacks })
        expect(without.plan.finishAt).toBeLessThanOrEqual(planned.value.finishAt + 5)
        expect(without.dropped.length).toBeLessThanOrEqual(2) // one batch with its load
      },
      600_000, // half a minute of a core that is free
    )
  })

  /** The rest of a running day, as sound as any plan. */
  function keepsRunning(day: DayProblem, plan: DayPlan, soFar: DaySoFar): Replan {
    const again = replanDay(day, plan, soFar)
    if (!again.ok) throw new Error(JSON.stringify(again.problem))
    expect(checkReplan(day, plan, soFar, again.value)).toEqual([])
    return again.value
  }
})
