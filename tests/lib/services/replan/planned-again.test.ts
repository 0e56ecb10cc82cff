import { describe, expect, it } from 'vitest'
import { plannedAgain } from '@/lib/services/replan/planned-again'
import { plannedWithLocks } from '@/lib/services/replan/planned-with-locks'
import { MOST_JOBS_AT_ONCE } from '@/shared/day/day-size'
import type { DayPlan } from '@/shared/planning/day-plan'
import { nothingSoFar } from '@/shared/planning/day-so-far'
import { planOnce } from '@/shared/planning/plan-once'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'

const plan: DayPlan = (() => {
  const planned = planOnce(s1DayProblem)
  if (!planned.ok) throw new Error(JSON.stringify(planned.problem))
  return planned.value
})()

const soFar = nothingSoFar(s1DayProblem.window.accessAt)
const input = { number: 1, madeAt: null, createdAt: new Date('2027-08-26T12:00:00Z'), problem: s1DayProblem, plan, soFar }

/** The plan with its ten loads and batches once more, as a larger day has them. */
const twice: DayPlan = {
  ...plan,
  batches: [...plan.batches, ...plan.batches.map((batch) => ({ ...batch, id: `${batch.id}0`, code: `${batch.code}0` }))],
  loads: [
    ...plan.loads,
    ...plan.loads.map((load) => ({
      ...{ ...load, id: `${load.id}0`, code: `${load.code}0` },
      batchParts: load.batchParts.map((part) => ({ ...part, batchId: `${part.batchId}0` })),
    })),
  ],
}

describe('the rest of a running day', () => {
  it('is planned once for what was asked: the preview that is used is not planned again', () => {
    const first = plannedAgain(input)
    const second = plannedAgain(structuredClone(input))
    expect(first.ok && second.ok && second.value === first.value).toBe(true)
  })

  it('is not planned while somebody waits where too much is left, and that is said', () => {
    const startedAt = process.cpuUsage()
    expect(plannedAgain({ ...input, plan: twice })).toMatchObject({
      ok: false,
      problem: { code: 'too-much-left', what: expect.stringContaining('20 loads') },
    })
    expect(process.cpuUsage(startedAt).user).toBeLessThan(100_000) // counted, not planned: microseconds
  })

  it('is planned as soon as few enough are left', () => {
    const loads = twice.loads.filter(({ id }) => !id.endsWith('0') || id === 'L10' || id === 'L010')
    expect(loads.length).toBeLessThanOrEqual(MOST_JOBS_AT_ONCE)
    const answer = plannedAgain({ ...input, plan: { ...twice, loads } })
    expect(answer.ok || answer.problem.code !== 'too-much-left').toBe(true)
  })
})

describe('a day with fixed tasks', () => {
  it('is planned once for what was asked', () => {
    const problem = {
      ...s1DayProblem,
      locks: [{ preparationId: 'plum-jam', batch: 6, task: 'load' as const, at: 20 * 60 + 15, equipmentId: null, personId: null }],
    }
    const stored = { number: 1, problem: s1DayProblem, plan, madeAt: null, createdAt: new Date('2027-08-26T12:00:00Z') }
    const first = plannedWithLocks(problem, stored)
    const second = plannedWithLocks(structuredClone(problem), structuredClone(stored))
    expect(first.ok && second.ok && second.value === first.value).toBe(true)
  })
})
