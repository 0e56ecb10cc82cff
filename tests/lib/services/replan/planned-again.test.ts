import { describe, expect, it } from 'vitest'
import { PlanningBrokeOff } from '@/lib/planner/planning-broke-off'
import { plannedAgain, plannedAgainLocked } from '@/lib/services/replan/planned-again'
import { plannedWithLocks } from '@/lib/services/replan/planned-with-locks'
import { MOST_JOBS_AGAIN } from '@/shared/day/day-size'
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

/** The plan with its ten loads and batches so many times, as a larger day has them. */
const times = (count: number): DayPlan => {
  const copies = Array.from({ length: count }, (_, copy) => '0'.repeat(copy))
  return {
    ...plan,
    batches: copies.flatMap((mark) => plan.batches.map((batch) => ({ ...batch, id: `${batch.id}${mark}`, code: `${batch.code}${mark}` }))),
    loads: copies.flatMap((mark) =>
      plan.loads.map((load) => ({
        ...{ ...load, id: `${load.id}${mark}`, code: `${load.code}${mark}` },
        batchParts: load.batchParts.map((part) => ({ ...part, batchId: `${part.batchId}${mark}` })),
      })),
    ),
  }
}

describe('the rest of a running day', () => {
  it('is planned once for what was asked: the preview that is used is not planned again', async () => {
    const first = await plannedAgain(input)
    const second = await plannedAgain(structuredClone(input))
    expect(first.ok && second.ok && second.value === first.value).toBe(true)
  })

  it('is not planned where more is left than any kitchen has, and that is said', async () => {
    const most = { ...input, plan: times(1 + MOST_JOBS_AGAIN / 10) }
    expect(await plannedAgain(most, () => Promise.reject(new Error('was asked')))).toMatchObject({
      ok: false,
      problem: { code: 'too-much-left', what: expect.stringContaining(`${MOST_JOBS_AGAIN + 10} loads`) },
    })
  })

  it('is refused in words where the planner broke off, and planned when it is asked once more', async () => {
    const brokeOff = () => Promise.reject(new PlanningBrokeOff('It took longer than 60 s and was ended.'))
    expect(await plannedAgain({ ...input, soFar: { ...soFar, now: soFar.now + 1 } }, brokeOff)).toMatchObject({
      ok: false,
      problem: { code: 'planning-broke-off', why: 'It took longer than 60 s and was ended.' },
    })
    expect(await plannedAgain({ ...input, soFar: { ...soFar, now: soFar.now + 1 } })).toMatchObject({ ok: true })
  })

  it('is not begun under the lock: only what was planned before is found there', async () => {
    const later = { ...input, soFar: { ...soFar, now: soFar.now + 2 } }
    expect(await plannedAgainLocked(later)).toMatchObject({ ok: false, problem: { code: 'entered-meanwhile' } })
    const ahead = await plannedAgain(later)
    expect(await plannedAgainLocked(structuredClone(later))).toEqual(ahead)
    expect(ahead.ok).toBe(true)
  })
})

describe('a day with fixed tasks', () => {
  it('is planned once for what was asked', async () => {
    const problem = {
      ...s1DayProblem,
      locks: [{ preparationId: 'plum-jam', batch: 6, task: 'load' as const, at: 20 * 60 + 15, equipmentId: null, personId: null }],
    }
    const stored = { number: 1, problem: s1DayProblem, plan, madeAt: null, createdAt: new Date('2027-08-26T12:00:00Z') }
    const first = await plannedWithLocks(problem, stored)
    const second = await plannedWithLocks(structuredClone(problem), structuredClone(stored))
    expect(first.ok && second.ok && second.value === first.value).toBe(true)
  })
})
