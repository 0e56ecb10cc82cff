import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseCanningDay } from '@/shared/forms/canning-day'
import type { CanningDay } from '@/shared/scheduling/day/canning-day'
import { modelOf } from '@/shared/scheduling/day/day-model'
import { finishBound } from '@/shared/scheduling/day/finish-bounds'
import { mayPlanDayOn, planDayOn, startDayPlanner } from '@/shared/scheduling/day/plan-canning-day'
import { impossibleReasons } from '@/shared/scheduling/day/refuse-canning-day'
import { writePlan } from '@/shared/scheduling/day/write-plan'
import { checkCanningPlan } from '@/tests/support/check-canning-plan'
import { someCanningDay } from '@/tests/support/some-canning-day'

/** Plans as the command does, for some rounds, and for more while there is no plan. */
function planned(day: CanningDay) {
  const model = modelOf(day)
  const first = finishBound(model)
  const planner = startDayPlanner(model, first.slot, 1, 'both')
  for (let round = 0; round < (planner.search.best ? 40 : 800) && mayPlanDayOn(planner); round++) planDayOn(planner)
  const { best } = planner.search
  return { bound: planner.bound * day.grid, reasons: impossibleReasons(model, first), plan: best && writePlan(model, best, planner.bound) }
}

describe('a day that is known to have a plan', () => {
  it('is read, is never called impossible, gets a sound plan, and no bound above the known one', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), (seed) => {
        const { day, plan: known } = someCanningDay(seed)
        expect(checkCanningPlan(day, known)).toEqual([])
        expect(parseCanningDay(day).ok).toBe(true)
        const { bound, reasons, plan } = planned(day)
        expect(reasons).toEqual([])
        expect(bound).toBeLessThanOrEqual(known.makespan)
        expect(plan && checkCanningPlan(day, plan)).toEqual([])
      }),
      { numRuns: 80, seed: 11 },
    )
  }, 60_000)
})
