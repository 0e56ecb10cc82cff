import { describe, expect, it } from 'vitest'
import { planOnceByNames } from '@/shared/day/plan-by-names'
import { alternativesOf, betterOf, chosenAlternatives, figuresOf, jarsLost } from '@/shared/day/what-if'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { s1DayProblem } from '../../fixtures/s1-day-problem'

const all = alternativesOf(s1DayProblem)
const keys = all.map(({ key }) => key)
const [jam = '', pickles = ''] = s1DayProblem.preparations.map(({ id }) => id)

function planned(problem: DayProblem): DayPlan {
  const answer = planOnceByNames(problem)
  if (!answer.ok) throw new Error(JSON.stringify(answer.problem))
  return answer.value
}

describe('other ways to run the evening', () => {
  it('are an earlier start, one more canner, one batch less of what has most, and each recipe left out', () => {
    expect(keys.filter((key) => !key.startsWith('other-jars'))).toEqual([
      'start-earlier:30',
      'one-more-canner:boiling-water',
      `fewer-batches:${jam}`,
      `drop-preparation:${jam}`,
      `drop-preparation:${pickles}`,
    ])
  })

  it('go to the plan by a command where they are a choice of planning, and elsewhere where they are not', () => {
    const byCommand = all.filter(({ planChange }) => planChange !== null).map(({ key }) => key)
    expect(byCommand).toEqual(keys.filter((key) => /^(fewer-batches|drop-preparation)/.test(key)))
  })

  it('are chosen by an address, three at most, each once; from nonsense come the first three', () => {
    const asked = [`drop-preparation:${pickles}`, 'nonsense', `drop-preparation:${pickles}`, 'start-earlier:30']
    expect(chosenAlternatives(all, asked).map(({ key }) => key)).toEqual([`drop-preparation:${pickles}`, 'start-earlier:30'])
    expect(chosenAlternatives(all, ['x', '']).map(({ key }) => key)).toEqual(keys.slice(0, 3))
    expect(chosenAlternatives(all, keys)).toHaveLength(3)
  })

  it('lose the jars that they say: one batch is eight half-pints, a recipe all of its jars, an earlier start none', () => {
    const lost = (key: string) =>
      jarsLost(s1DayProblem, all.find((each) => each.key === key)?.problem ?? s1DayProblem).map(({ jars }) => jars)
    expect(lost(`fewer-batches:${jam}`)).toEqual([8])
    expect(lost(`drop-preparation:${pickles}`)).toEqual([32])
    expect(lost('start-earlier:30')).toEqual([])
  })

  it('are none that lose a recipe on a day with one', () => {
    const one = { ...s1DayProblem, preparations: s1DayProblem.preparations.slice(0, 1) }
    expect(alternativesOf(one).some(({ key }) => key.startsWith('drop-preparation'))).toBe(false)
  })
})

describe('the figures of a plan', () => {
  const plan = planned(s1DayProblem)
  const figures = figuresOf(s1DayProblem, plan)

  it('are its finish, what a better one could gain, and 410 of 430 canner minutes', () => {
    expect(figures).toMatchObject({ finishAt: plan.finishAt, gap: plan.finishAt - plan.lowerBound })
    expect(figures.cannerMinutes).toEqual({ needed: 410, available: 430, slack: 20 })
  })

  it('count each minute of a person once, however many things they mind, and never more than they are there', () => {
    for (const { personId, minutes } of figures.work) {
      const own = plan.tasks.filter(({ peopleIds }) => peopleIds.includes(personId))
      const busy = new Set(own.flatMap(({ start, end }) => Array.from({ length: end - start }, (_, index) => start + index)))
      expect(minutes).toBe(busy.size)
    }
    expect(figures.work.map(({ minutes }) => minutes)).toEqual(figures.work.map(({ minutes }) => minutes).sort((a, b) => b - a))
  })

  it('of a day with more room are never worse than without it; where something is taken away they are its own', () => {
    const at = (finishAt: number): DayPlan => ({ ...plan, finishAt })
    const [earlier, fewer] = [all[0], all.find(({ key }) => key.startsWith('fewer'))]
    if (!earlier || !fewer) throw new Error('an alternative is missing')
    expect(
      [betterOf(earlier, at(10), at(12)), betterOf(earlier, at(10), at(9)), betterOf(earlier, at(10), null)].map((each) => each?.finishAt),
    ).toEqual([10, 9, 10])
    expect([betterOf(fewer, at(10), at(12))?.finishAt, betterOf(fewer, at(10), null)]).toEqual([12, null])
  })

  it('show what an earlier start is worth: the canners are empty 30 min earlier', () => {
    const earlier = all.find(({ key }) => key === 'start-earlier:30')
    expect(figures.finishAt - planned(earlier?.problem ?? s1DayProblem).finishAt).toBe(30)
  })
})
