import { describe, expect, it } from 'vitest'
import type { DayProblem } from '@/shared/planning/day-problem'
import { cannerMinutesOfMethod } from '@/shared/planning/finish-bound'
import { planOnce } from '@/shared/planning/plan-once'
import { splitDemand } from '@/shared/planning/split-demand'
import { s2DayProblem } from '@/tests/fixtures/s2-day-problem'

const counted = (problem: DayProblem, method: 'boiling-water' | 'pressure') => {
  const split = splitDemand(problem)
  if (!split.ok) throw new Error('the day was not split')
  return cannerMinutesOfMethod(problem, split.value.jobs, method)
}
const limitOf = (problem: DayProblem) => {
  const answer = planOnce(problem)
  return answer.ok ? null : answer.problem
}

describe('the Bench Harvest day', () => {
  it('needs 1,965 boiling-water canner minutes and has 1,860', () => {
    // 12 × 82 + 9 × 47 + 9 × 62 = 1,965; 4 × (17:15 − 09:30) = 1,860
    expect(counted(s2DayProblem, 'boiling-water')).toMatchObject({ needed: 1965, available: 1860, slack: -105 })
    expect(limitOf(s2DayProblem)).toMatchObject({
      limit: { kind: 'canner-minutes', method: 'boiling-water', canners: 4 },
      needed: 1965,
      available: 1860,
    })
  })

  it('gives the large pressure canner three loads of 18 and the small one four of 9', () => {
    const split = splitDemand(s2DayProblem)
    const beans = split.ok ? split.value.jobs.filter((job) => job.preparationId === 'beans') : []
    const jars = beans.map((job) => job.loads[0]?.parts.reduce((sum, part) => sum + part.jars.high, 0) ?? 0)
    expect(jars.sort((a, b) => b - a)).toEqual([18, 18, 18, 9, 9, 9, 9])
    expect(counted(s2DayProblem, 'pressure')).toMatchObject({ needed: 672, available: 930 }) // 7 × 96; 2 × 465
  })

  it('has 2,325 minutes with a fifth canner', () => {
    const [first] = s2DayProblem.canners
    const fifth = { ...s2DayProblem, canners: first ? [...s2DayProblem.canners, { ...first, id: 'BW5' }] : [] }
    expect(counted(fifth, 'boiling-water')).toMatchObject({ needed: 1965, available: 2325 })
    expect(limitOf(fifth)?.limit.kind).not.toBe('canner-minutes')
  })

  it('is still called not fitting when a start at 09:00 leaves under 1 % to spare', () => {
    const early = { ...s2DayProblem, window: { ...s2DayProblem.window, firstLoadAt: 540 } }
    expect(counted(early, 'boiling-water')).toMatchObject({ needed: 1965, available: 1980, slack: 15 })
    expect(limitOf(early)?.limit.kind).toBe('canner-minutes')
  })

  it('needs 1,801 minutes with ten tomato loads instead of twelve', () => {
    const fewer = {
      ...s2DayProblem,
      preparations: s2DayProblem.preparations.map((entry) => (entry.id === 'tomatoes' ? { ...entry, jarsWanted: 70 } : entry)),
    }
    expect(counted(fewer, 'boiling-water')).toMatchObject({ needed: 1801, available: 1860 })
  })
})
