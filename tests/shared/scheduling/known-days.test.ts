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
function planned(day: CanningDay, most = 800) {
  const model = modelOf(day)
  const first = finishBound(model)
  const planner = startDayPlanner(model, first.slot, 1, 'both')
  for (let round = 0; round < (planner.search.best ? Math.min(40, most) : most) && mayPlanDayOn(planner); round++) planDayOn(planner)
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
      { numRuns: 50, seed: 11 },
    )
  }, 60_000)

  it('has one too where there is more of everything than anybody counts', () => {
    const most = 99_999
    const { day } = someCanningDay(3)
    const roomy = { ...day, burners: most, stoveWatch: most, prepPlaces: most, fillStations: most, coolingJars: most }
    const { plan } = planned({ ...roomy, operators: day.operators.map((one) => ({ ...one, maxCanners: most })) })
    expect(plan && checkCanningPlan(roomy, plan)).toEqual([])
  })

  it('puts nobody in two places where some work takes no time', () => {
    let plans = 0
    for (let seed = 1; seed <= 25; seed++) {
      const { day } = someCanningDay(seed)
      const quick = {
        ...day,
        close: day.close + 60,
        handling: { ...day.handling, loadMinutes: 0, unloadMinutes: seed % 2 === 0 ? 0 : 5 },
        batches: day.batches.map((batch, index) =>
          index % 2 === 0
            ? { ...batch, prep: { ...batch.prep, work: 0 } }
            : { ...batch, fill: { ...batch.fill, minutes: 0 }, cook: { ...batch.cook, minutes: 0 }, kettleTurn: 0 },
        ),
      }
      const { plan } = planned(quick, 3)
      if (!plan) continue
      plans++
      expect(checkCanningPlan(quick, plan), `day ${seed}`).toEqual([])
    }
    expect(plans).toBeGreaterThan(12)
  })
})
