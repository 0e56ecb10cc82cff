import { describe, expect, it } from 'vitest'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPerson } from '@/shared/planning/day-problem'
import type { DaySoFar } from '@/shared/planning/day-so-far'
import { planOnce } from '@/shared/planning/plan-once'
import { type Replan, replanDay } from '@/shared/planning/replan-day'
import { waitedTooLong } from '@/shared/planning/waited-too-long'
import { saySetback } from '@/shared/wording/say-replan'
import { s2DayProblem } from '../fixtures/s2-day-problem'
import { checkReplan } from '../support/check-replan'
import { asPlannedUntil, withLoad } from '../support/day-so-far'

/** What happens on the second practice day, and what the trade expects of whoever plans it anew. */

const at = (clock: string) => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))

const hands = ['prep', 'jam', 'brine', 'fill', 'wash', 'labels', 'station-lead']
const person = (id: string, more: Partial<PlanPerson> = {}): PlanPerson => ({
  ...{ id, name: id, householdId: 'alderby', skills: hands, ageClass: 'adult', limits: [], allergies: [], languages: ['en'] },
  ...{ from: at('08:00'), until: at('18:30'), ...more },
})

/** Three batches of tomatoes, two of salsa and two of beans, with fourteen adults and two teens: the day's shape at a quarter of its size. */
const day: DayProblem = {
  ...s2DayProblem,
  fillTables: 3,
  rackJars: null,
  burners: Array.from({ length: 12 }, (_, index) => ({
    ...{ id: `G${index + 1}`, label: `G${index + 1}`, kind: 'gas' as const, btuPerHour: 12_000 - index * 100, watts: null, circuit: null },
  })),
  circuits: [],
  kettles: ['K1', 'K2', 'K3', 'K4', 'K5', 'K6'].map((id) => ({
    ...{ id, label: id, litres: 12, material: null, use: 'any' as const, washMinutes: 4 },
  })),
  people: [
    person('q1', { skills: ['pressure-operator', 'boiling-water-operator'] }),
    person('q2', { skills: ['pressure-operator'], until: at('17:30') }),
    person('q3', { skills: ['boiling-water-operator'] }),
    person('q4', { skills: ['boiling-water-operator'] }),
    ...['q5', 'q6', 'q7', 'q8', 'q9', 'q10', 'q11', 'q12', 'q22', 'q23'].map((id) => person(id)),
    person('q30', { ageClass: 'teen', skills: ['wash', 'labels'] }),
    person('q31', { ageClass: 'teen', skills: ['wash', 'labels'] }),
  ],
  minding: [
    { method: 'boiling-water', skill: 'boiling-water-operator', cannersAtOnce: 2, alongside: 'kettles' },
    { method: 'pressure', skill: 'pressure-operator', cannersAtOnce: 1, alongside: 'nothing' },
  ],
  preparations: s2DayProblem.preparations
    .filter(({ id }) => id !== 'peaches')
    .map((each) => ({ ...each, jarsWanted: { tomatoes: 21, salsa: 16, beans: 18 }[each.id] ?? 0 })),
}

const before: DayPlan = (() => {
  const plan = planOnce(day)
  if (!plan.ok) throw new Error(JSON.stringify(plan.problem))
  return plan.value
})()

function again(soFar: DaySoFar): Replan {
  const answer = replanDay(day, before, soFar)
  if (!answer.ok) throw new Error(JSON.stringify(answer.problem))
  expect(checkReplan(day, before, soFar, answer.value)).toEqual([])
  return answer.value
}

const inCanner = (now: number, cannerId: string) =>
  before.loads.find((load) => load.cannerId === cannerId && load.boilAt < now && load.processEndAt > now)

describe('the second practice day', () => {
  it('08:10, two signed-up adults do not come and one comes at ten: others do their work, and no minor goes to a burner', () => {
    const soFar = asPlannedUntil(before, at('08:10'), {
      setbacks: [
        { kind: 'person-away', personId: 'q8', from: at('08:00') },
        { kind: 'person-away', personId: 'q22', from: at('08:00') },
        { kind: 'person-late', personId: 'q12', at: at('10:00') },
      ],
    })
    const { plan, dropped } = again(soFar)
    expect(dropped).toEqual([])
    const minors = plan.tasks.filter(({ peopleIds }) => peopleIds.includes('q30') || peopleIds.includes('q31'))
    expect(minors.filter(({ kind }) => !['brief', 'wash', 'label', 'clean-up', 'break'].includes(kind))).toEqual([])
  })

  it('tomatoes weigh less than promised: fewer batches, and the shortage is known before jars are set out', () => {
    const soFar = asPlannedUntil(before, at('08:20'), { setbacks: [{ kind: 'produce-short', preparationId: 'tomatoes', batches: 2 }] })
    const { plan, problem, dropped } = again(soFar)
    expect(plan.batches.filter(({ preparationId }) => preparationId === 'tomatoes')).toHaveLength(2)
    expect(dropped.filter(({ why }) => why === 'no-produce').map(({ of, jars }) => [of, jars])).toEqual([
      ['batch', 7],
      ['load', 7],
    ])
    expect(plan.shortages).toContainEqual(
      expect.objectContaining({ kind: 'jars', preparationId: 'tomatoes', wanted: 21, planned: { low: 14, typical: 14, high: 14 } }),
    )
    expect(soFar.setbacks.map((each) => saySetback(problem, each))).toEqual([
      expect.stringMatching(/^Produce for Tomatoes.* is enough for 2 batches$/),
    ])
    expect(plan.finishAt).toBeLessThanOrEqual(before.finishAt)
  })

  it('the weight stops rocking at minute 14 of 20: the full 20 minutes again from when the pressure is back, and what follows moves', () => {
    const load = before.loads.find(({ cannerId }) => cannerId === 'PC-B') ?? before.loads.find(({ method }) => method === 'pressure')
    if (!load) throw new Error('beans go under pressure')
    const now = load.boilAt + 16
    const { plan, changes } = again(withLoad(asPlannedUntil(before, now), load.id, { boilAt: now, lostAt: load.boilAt + 14 }))
    const same = plan.loads.find(({ id }) => id === load.id)
    expect(same).toMatchObject({ boilAt: now, processEndAt: now + 20 })
    expect(changes.places.some(({ id }) => id === load.id)).toBe(true)
    const behind = plan.loads.filter(({ cannerId, loadAt }) => cannerId === load.cannerId && loadAt > load.loadAt)
    for (const next of behind) expect(next.loadAt).toBeGreaterThanOrEqual(same?.emptyAt ?? Number.NaN)
  })

  it('a pressure operator leaves with a load at minute 9: it is handed over by name before that, or said to be nobody’s', () => {
    const load = before.loads.find(({ method }) => method === 'pressure')
    if (!load) throw new Error('beans go under pressure')
    const now = load.boilAt + 9
    const leaves = (personId: string) => ({ kind: 'person-away' as const, personId, from: now + 5 })
    const others = ['q1', 'q2'].filter((id) => id !== load.operatorId)
    const { handOvers, plan } = again(asPlannedUntil(before, now, { setbacks: [leaves(load.operatorId)] }))
    const busy = before.loads.some(
      (each) => each !== load && others.includes(each.operatorId) && each.loadAt < load.emptyAt && each.emptyAt > now,
    )
    expect(handOvers).toContainEqual(
      expect.objectContaining({ loadId: load.id, from: load.operatorId, to: busy ? null : others[0], at: now + 5 }),
    )
    if (!busy)
      expect(
        plan.tasks.some(({ loadId, start, peopleIds }) => loadId === load.id && start === now + 5 && peopleIds.includes(others[0] ?? '')),
      ).toBe(true)
    const alone = again(asPlannedUntil(before, now, { setbacks: ['q1', 'q2'].map(leaves) }))
    expect(alone.handOvers).toContainEqual(expect.objectContaining({ loadId: load.id, to: null }))
  })

  it('salsa is ready and no canner is free in time: it stays hot in the pot, no jar is filled, and what may be done is said with its source', () => {
    const salsa = before.batches.filter(({ preparationId }) => preparationId === 'salsa').at(-1)
    if (!salsa) throw new Error('salsa is planned')
    const now = salsa.cookEnd
    const outages = ['BW1', 'BW2', 'BW3', 'BW4'].map((cannerId) => ({ kind: 'canner-out' as const, cannerId, from: now, until: now + 38 }))
    const { plan, brokenWaits, dropped } = again(asPlannedUntil(before, now, { setbacks: outages }))
    const wait = brokenWaits.find(({ batchId }) => batchId === salsa.id)
    expect(wait).toMatchObject({ stage: 'cooking', code: salsa.code })
    expect(plan.tasks.some(({ kind, batchId, start }) => kind === 'fill' && batchId === salsa.id && start >= now)).toBe(false)
    expect(dropped).toContainEqual(expect.objectContaining({ id: salsa.id, why: 'cannot-wait' }))
    const [first, ...rest] = waitedTooLong('cooking', 'hot')
    expect(first).toMatchObject({ words: expect.stringContaining('keep the rest in the pot'), source: expect.stringContaining('USDA') })
    expect(rest.every(({ source }) => source.length > 20)).toBe(true)
  })

  it('has pressure loads under way at the hours of its events', () => {
    expect(before.loads.some(({ method }) => method === 'pressure')).toBe(true)
    expect(inCanner((before.loads[0]?.boilAt ?? 0) + 1, before.loads[0]?.cannerId ?? '')).toBeDefined()
  })
})
