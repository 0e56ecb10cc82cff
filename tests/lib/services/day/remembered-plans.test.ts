import { describe, expect, it } from 'vitest'
import { isAsked } from '@/lib/planner/ask-planner'
import { plannedDay, plannedOnce, plannedSlips } from '@/lib/services/day/remembered-plans'
import { planOnceByNames } from '@/shared/day/plan-by-names'
import { s1DayProblem, s1OneCanner } from '../../../fixtures/s1-day-problem'

describe('a plan that was made before', () => {
  it('is given again for the same day, whoever asks and however it was read', async () => {
    const first = await plannedOnce(s1DayProblem)
    expect(await plannedOnce(JSON.parse(JSON.stringify(s1DayProblem)))).toBe(first)
    expect(await plannedDay(s1DayProblem)).toBe(first)
    expect(first).toEqual(planOnceByNames(s1DayProblem))
  })

  it('is planned once for all who ask at the same time', async () => {
    const problem = { ...s1DayProblem, rackJars: 5_000 }
    const [first, ...others] = await Promise.all([1, 2, 3, 4].map(() => plannedOnce(structuredClone(problem))))
    for (const other of others) expect(other).toBe(first)
  })

  it('is made anew when anything differs, and after many others', async () => {
    const first = await plannedOnce(s1DayProblem)
    const later = { ...s1DayProblem, window: { ...s1DayProblem.window, cannersEmptyBy: s1DayProblem.window.cannersEmptyBy + 1 } }
    expect(await plannedOnce(later)).not.toBe(first)
    for (let limit = 0; limit < 70; limit += 1) await plannedOnce({ ...s1OneCanner, rackJars: limit })
    expect(isAsked('once', s1DayProblem)).toBe(false)
    const again = await plannedOnce(s1DayProblem)
    expect(again).not.toBe(first)
    expect(again).toEqual(first)
  })

  it('keeps ways out and slips apart from the plan', async () => {
    const refused = await plannedDay(s1OneCanner)
    expect(refused.ok ? 0 : refused.problem.waysOut.length).toBeGreaterThan(0)
    const planned = await plannedOnce(s1DayProblem)
    if (!planned.ok) throw new Error('the evening has a plan')
    expect(await plannedSlips(s1DayProblem, planned.value)).toBe(await plannedSlips(structuredClone(s1DayProblem), planned.value))
  })
})
