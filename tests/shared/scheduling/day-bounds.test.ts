import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { CanningDay, DayBatch } from '@/shared/scheduling/day/canning-day'
import { modelOf } from '@/shared/scheduling/day/day-model'
import { finishBound } from '@/shared/scheduling/day/finish-bounds'
import { improve, startSearch } from '@/shared/scheduling/day/improve-day'
import { impossibleReasons } from '@/shared/scheduling/day/refuse-canning-day'
import { writePlan } from '@/shared/scheduling/day/write-plan'
import { mayProveMoreOfDay, proveDayOn, startDayProof } from '@/shared/scheduling/proof/prove-day'
import { checkCanningPlan } from '@/tests/support/check-canning-plan'

const minutes = (least: number, most: number) => fc.integer({ min: least / 5, max: most / 5 }).map((slots) => slots * 5)

const seldom = <Value>(value: Value, usual: fc.Arbitrary<Value>) =>
  fc.oneof({ weight: 1, arbitrary: fc.constant(value) }, { weight: 5, arbitrary: usual })

const aBatch = fc.record({
  recipe: fc.constantFrom('R1', 'R2', 'R3'),
  trays: fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 1, maxLength: 3 }),
  readyAt: fc.constantFrom(0, 0, 0, 30),
  prep: fc.record({
    // what takes no time is used by nobody, and still comes before what follows
    work: seldom(0, fc.integer({ min: 5, max: 70 })),
    skill: fc.constantFrom('prep' as const, 'knife' as const),
    peopleMin: fc.constant(1),
    peopleMax: fc.integer({ min: 1, max: 3 }),
  }),
  maxWaitPrepCook: fc.constantFrom(0, 20, 60, null),
  cookMinutes: minutes(10, 35),
  maxWaitCookFill: fc.constantFrom(0, 5, 10),
  fillMinutes: seldom(0, minutes(5, 15)),
  fillPeople: fc.integer({ min: 1, max: 2 }),
  kettleTurn: fc.constantFrom(0, 5),
  // up to longer than a load: one canner may then take two loads of a batch
  maxWaitFillProcess: fc.constantFrom(0, 5, 10, 15, 20, 60, 120),
  times: fc.integer({ min: 1, max: 3 }),
})

/** Holds of half-pints and pints: whole canners, halves, and sizes that are neither. */
const aCanner = fc.constantFrom([24, 18], [24, 18], [12, 9], [12, 9], [17, 11]).map(([half = 0, pint = 0]) => ({ 'half-pint': half, pint }))

const aDay = fc
  .record({
    made: fc.array(aBatch, { minLength: 1, maxLength: 3 }),
    canners: fc.array(aCanner, { minLength: 1, maxLength: 3 }),
    pressure: fc.array(aCanner, { minLength: 1, maxLength: 2 }),
    kettles: fc.array(fc.constantFrom(4_000, 9_000), { minLength: 1, maxLength: 3 }),
    burners: fc.integer({ min: 3, max: 6 }),
    stoveWatch: fc.integer({ min: 1, max: 3 }),
    prepPlaces: fc.integer({ min: 1, max: 4 }),
    fillStations: fc.integer({ min: 1, max: 2 }),
    crewBreak: fc.constantFrom(null, { minutes: 20, startMin: 60, startMax: 120 }),
  })
  .map(({ made, canners, pressure, kettles, crewBreak, ...limits }): CanningDay => {
    // several batches alike, which proofs put in order, and one alike but for its preparation, which they must not
    const batches = made
      .flatMap(({ times, cookMinutes, fillMinutes, fillPeople, ...batch }, at) =>
        Array.from({ length: times }, (_, copy): DayBatch => {
          const jars = batch.trays.reduce((sum, tray) => sum + tray, 0)
          return {
            ...{ ...batch, id: `B${at}-${copy}`, jars, ml: 473 * Math.min(8, jars) },
            prep: { ...batch.prep, work: batch.prep.work + (copy === 2 ? 20 : 0) },
            cook: { low: cookMinutes, minutes: cookMinutes, high: cookMinutes },
            fill: { minutes: fillMinutes, people: fillPeople, skill: 'hot' },
          }
        }),
      )
      .slice(0, 5)
    const families = [
      ['F1', 'boiling-water', 'half-pint', 20],
      ['F2', 'boiling-water', 'pint', 35],
      ['F3', 'pressure', 'pint', 50],
    ] as const
    return {
      ...{ ...limits, format: 'canning-day/1', id: 'some-day', grid: 5, close: 900, coolingJars: 500, batches },
      jarSizes: [
        { id: 'half-pint', ml: 237 },
        { id: 'pint', ml: 473 },
      ],
      kettles: [9_000, ...kettles].map((ml, at) => ({ id: `K${at}`, ml })),
      canners: [
        ...canners.map((jars, at) => ({ id: `C${at}`, method: 'boiling-water' as const, jars })),
        ...pressure.map((jars, at) => ({ id: `D${at}`, method: 'pressure' as const, jars })),
      ],
      operators: [{ id: 'O1', from: 0, to: 900, maxCanners: 1 }],
      crews: [
        { id: 'G1', people: ['P1', 'P2'], from: 0, to: 900, skills: ['prep'], break: null },
        { id: 'G2', people: ['P3', 'P4'], from: 0, to: 900, skills: ['knife', 'hot'], break: crewBreak },
        { id: 'G3', people: ['P5', 'P6'], from: 0, to: 900, skills: ['prep', 'hot'], break: null },
      ],
      handling: { loadMinutes: 5, unloadMinutes: 5, people: 1, skill: 'hot' },
      families: families.map(([id, method, jarSize, processMinutes]) => ({
        ...{ id, method, jarSize, processMinutes, heatMinutes: 10, restMinutes: 5 },
      })),
      recipes: families.map(([family], at) => ({ id: `R${at + 1}`, name: family, family, maxBatchMl: null, demandJars: 1 })),
    }
  })

describe('bounds of any small day', () => {
  it('are never later than a plan that was checked, by counting or by proof, and often meet it', () => {
    let [plans, met, proved] = [0, 0, 0]
    fc.assert(
      fc.property(aDay, (day) => {
        const model = modelOf(day)
        const bound = finishBound(model)
        if (impossibleReasons(model, bound).length > 0) return
        // no bound ends this search, so that it may show one to be wrong
        const search = startSearch(model, 0, 1)
        improve(search, 120)
        if (!search.best) return
        plans++
        expect(checkCanningPlan(day, writePlan(model, search.best, bound.slot))).toEqual([])
        expect([bound.slot, bound.because, bound.slot <= search.best.finish]).toEqual([bound.slot, bound.because, true])
        if (bound.slot === search.best.finish) met++
        const proof = startDayProof(model, bound.slot, search.best.finish + 1)
        while (mayProveMoreOfDay(proof) && proof.solver.conflicts < 200) proveDayOn(proof, 50)
        expect(proof.bound).toBeLessThanOrEqual(search.best.finish)
        if (proof.bound === search.best.finish) proved++
      }),
      { numRuns: 120, seed: 15 },
    )
    expect(plans).toBeGreaterThan(70)
    expect(met).toBeGreaterThan(25)
    expect(proved).toBeGreaterThan(50)
  }, 300_000)
})
