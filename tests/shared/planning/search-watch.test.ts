import { describe, expect, it } from 'vitest'
import { planOnceByNames, searchByNames } from '@/shared/day/plan-by-names'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { s1DayProblem } from '../../fixtures/s1-day-problem'
import { checkDayPlan } from '../../support/check-day-plan'

/** The evening with hours to spare and two pairs of hands fewer: the bound cannot be met, so there is something to search for. */
const slow: DayProblem = {
  ...s1DayProblem,
  window: { ...s1DayProblem.window, cannersEmptyBy: s1DayProblem.window.cannersEmptyBy + 180, hardEnd: s1DayProblem.window.hardEnd + 180 },
  people: s1DayProblem.people.filter(({ name }) => !/Dov|Esme/.test(name)).map((person) => ({ ...person, until: person.until + 240 })),
}

const FILLINGS = 20_000

/** Searches for so many steps, and tells what it was told. */
function followed(problem: DayProblem, steps: number, seed = 0) {
  const better: DayPlan[] = []
  let [taken, bound] = [0, Number.NaN]
  const answer = searchByNames(problem, FILLINGS, {
    seed,
    begun: (earliest) => {
      bound = earliest
    },
    better: (plan) => better.push(plan),
    goOn: () => taken++ < steps,
  })
  return { answer, better, bound, taken }
}

describe('a search with a watch', () => {
  it('tells of each better plan as it comes, every one of them whole, in the day’s own ids and earlier than the last', () => {
    const { answer, better, bound } = followed(slow, 400)
    expect(answer.ok).toBe(true)
    expect(better.length).toBeGreaterThan(2)
    for (const plan of better) expect(checkDayPlan(slow, plan)).toEqual([])
    const finishes = better.map(({ finishAt }) => finishAt)
    expect(finishes).toEqual([...new Set(finishes)].sort((a, b) => b - a))
    expect(answer.ok && answer.value.finishAt).toBe(finishes.at(-1))
    expect(bound).toBeLessThan(finishes.at(-1) ?? 0)
    expect(better[0]?.lowerBound).toBe(bound)
  })

  it('ends when it is told to, with the best so far', () => {
    const first = followed(slow, 3)
    expect(first.taken).toBeLessThan(60)
    expect(first.answer.ok && first.answer.value.finishAt).toBe(first.better.at(-1)?.finishAt)
  })

  it('takes the same way from the same seed, and stops by itself where no exchange helps', () => {
    const [one, two] = [followed(slow, 5_000, 3), followed(slow, 5_000, 3)]
    expect(one.better).toEqual(two.better)
    expect(one.taken).toBe(two.taken)
    expect(one.taken).toBeLessThan(5_000)
  })

  it('finds at least what is found without one', () => {
    const [once, long] = [planOnceByNames(slow), followed(slow, 5_000).answer]
    expect(once.ok && long.ok && once.value.finishAt >= long.value.finishAt).toBe(true)
  })
})
