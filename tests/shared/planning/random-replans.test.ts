import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { planOnce } from '@/shared/planning/plan-once'
import { replanDay } from '@/shared/planning/replan-day'
import { s1DayProblem, s1JarsBoiledInCanners } from '@/tests/fixtures/s1-day-problem'
import { checkReplan } from '@/tests/support/check-replan'
import { someDaySoFar } from '@/tests/support/some-day-so-far'

function planned(problem: DayProblem): DayPlan {
  const plan = planOnce(problem)
  if (!plan.ok) throw new Error(JSON.stringify(plan.problem))
  return plan.value
}

const fewer = (problem: DayProblem, share: number): DayProblem => ({
  ...problem,
  preparations: problem.preparations.map((each) => ({ ...each, jarsWanted: Math.round(each.jarsWanted * share) })),
})

const DAYS: readonly (readonly [name: string, problem: DayProblem])[] = [
  ['the evening', s1DayProblem],
  ['half of it with jars boiled in the canners', fewer(s1JarsBoiledInCanners, 0.5)],
]

describe.each(DAYS)('any hour of %s', (_, problem) => {
  const before = planned(problem)

  it('is planned anew without moving what has begun, losing a jar or stretching a wait', () => {
    const seen = { moved: 0, dropped: 0, broken: 0, handed: 0 }
    fc.assert(
      fc.property(someDaySoFar(problem, before), (soFar) => {
        const answer = replanDay(problem, before, soFar)
        if (!answer.ok) throw new Error('nothing is locked')
        expect(checkReplan(problem, before, soFar, answer.value)).toEqual([])
        if (answer.value.changes.places.length > 0) seen.moved++
        if (answer.value.dropped.length > 0) seen.dropped++
        if (answer.value.brokenWaits.length > 0) seen.broken++
        if (answer.value.handOvers.length > 0) seen.handed++
      }),
      { numRuns: 80, seed: 20270826 },
    )
    // every kind of answer is really given
    expect(Math.min(seen.moved, seen.dropped, seen.broken, seen.handed)).toBeGreaterThan(0)
  }, 120_000)
})
