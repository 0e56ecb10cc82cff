import { describe, expect, it } from 'vitest'
import { plannedDay, plannedOnce, plannedSlips } from '@/lib/services/day/remembered-plans'
import { planOnceByNames } from '@/shared/day/plan-by-names'
import { s1DayProblem, s1OneCanner } from '../../../fixtures/s1-day-problem'

describe('a plan that was made before', () => {
  it('is given again for the same day, whoever asks and however it was read', () => {
    const first = plannedOnce(s1DayProblem)
    expect(plannedOnce(JSON.parse(JSON.stringify(s1DayProblem)))).toBe(first)
    expect(plannedDay(s1DayProblem)).toBe(first)
    expect(first).toEqual(planOnceByNames(s1DayProblem))
  })

  it('is made anew when anything differs, and after many others', () => {
    const first = plannedOnce(s1DayProblem)
    const later = { ...s1DayProblem, window: { ...s1DayProblem.window, cannersEmptyBy: s1DayProblem.window.cannersEmptyBy + 1 } }
    expect(plannedOnce(later)).not.toBe(first)
    for (let limit = 0; limit < 70; limit += 1) plannedOnce({ ...s1OneCanner, rackJars: limit })
    const again = plannedOnce(s1DayProblem)
    expect(again).not.toBe(first)
    expect(again).toEqual(first)
  })

  it('keeps ways out and slips apart from the plan', () => {
    const refused = plannedDay(s1OneCanner)
    expect(refused.ok ? 0 : refused.problem.waysOut.length).toBeGreaterThan(0)
    const planned = plannedOnce(s1DayProblem)
    if (!planned.ok) throw new Error('the evening has a plan')
    expect(plannedSlips(s1DayProblem, planned.value)).toBe(plannedSlips(s1DayProblem, planned.value))
  })
})
