import { describe, expect, it } from 'vitest'
import { daySize, isSearchedApart, MOST_BATCHES } from '@/shared/day/day-size'
import type { DayProblem } from '@/shared/planning/day-problem'
import { s1DayProblem } from '../../fixtures/s1-day-problem'

const times = (factor: number): DayProblem => ({
  ...s1DayProblem,
  preparations: s1DayProblem.preparations.map((each) => ({ ...each, jarsWanted: each.jarsWanted * factor })),
})

describe('the size of a day', () => {
  it('counts batches, loads and what is placed at once: the evening has ten of each', () => {
    expect(daySize(s1DayProblem)).toEqual({ batches: 10, loads: 10, jobs: 10 })
    expect(daySize(times(2))).toEqual({ batches: 20, loads: 20, jobs: 20 })
  })

  it('decides whether somebody may wait for its plan', () => {
    expect([isSearchedApart(s1DayProblem), isSearchedApart(times(2))]).toEqual([false, true])
  })

  it('is known at once for a day of 10,000 batches, which is not divided', () => {
    expect(daySize(times(1_000))).toEqual({ batches: 10_000, loads: 0, jobs: 0 })
    expect(isSearchedApart(times(1_000))).toBe(true)
    expect(MOST_BATCHES).toBeLessThan(10_000)
  })

  it('of a day nobody asked anything of is nothing', () => {
    expect(daySize(times(0))).toEqual({ batches: 0, loads: 0, jobs: 0 })
  })
})
