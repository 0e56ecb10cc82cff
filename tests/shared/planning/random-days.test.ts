import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { COMMON_BREAKS } from '@/shared/planning/breaks'
import type { DayProblem, PlanPerson, PlanPreparation } from '@/shared/planning/day-problem'
import { planOnce } from '@/shared/planning/plan-once'
import { jarsToPlan, splitDemand } from '@/shared/planning/split-demand'
import { replayPlan } from '@/shared/planning/replay-plan'
import { staffingGaps } from '@/shared/planning/staffing-gaps'
import { sayPlanRefusal } from '@/shared/wording/say-plan'
import { dillPickles, plumJam, s1DayProblem } from '@/tests/fixtures/s1-day-problem'
import { checkDayPlan } from '@/tests/support/check-day-plan'

const somePerson = (index: number): fc.Arbitrary<PlanPerson> =>
  fc.record({
    id: fc.constant(`p${index}`),
    name: fc.constant(`Person ${index}`),
    householdId: fc.constant('alderby'),
    skills: fc.subarray(['prep', 'jam', 'brine', 'fill', 'labels', 'wash', 'boiling-water-operator', 'pressure-operator'], {
      minLength: 1,
    }),
    ageClass: fc.constantFrom('adult', 'adult', 'adult', 'adult', 'teen', 'child'),
    limits: fc.subarray(['no-lifting', 'seated', 'large-print'] as const, { maxLength: 1 }),
    allergies: fc.constantFrom([], [], [], ['mustard']),
    languages: fc.constantFrom(['en'], ['en'], ['es'], ['en', 'es'], ['vi']),
    from: fc.integer({ min: 1020, max: 1110 }),
    until: fc.integer({ min: 1200, max: 1335 }),
  })

const allRounder: PlanPerson = {
  id: 'p12',
  name: 'Person 12',
  householdId: 'elmsway',
  ageClass: 'adult',
  limits: [],
  allergies: [],
  languages: ['en'],
  from: 1020,
  until: 1335,
  skills: ['prep', 'jam', 'brine', 'fill', 'wash', 'labels', 'boiling-water-operator', 'pressure-operator'],
}

/** Beans under pressure, with figures of their own so that the test does not depend on a recipe. */
const beans: PlanPreparation = {
  ...plumJam,
  id: 'beans',
  code: 'B',
  title: 'Beans',
  method: 'pressure',
  jarSize: 'pint',
  scaling: 'to-kettle-volume',
  batchLitres: 2.5,
  kettleUse: 'cook',
  batchYield: { low: 4, typical: 5, high: 6 },
  process: { ...plumJam.process, minutes: 20, publishedMinutes: 20, psi: 11, chosenBecause: null },
  cycle: { loadMinutes: 5, comeUpMinutes: 12, ventMinutes: 10, pressuriseMinutes: 4, restMinutes: 30, waitMinutes: 10, unloadMinutes: 5 },
  cook: { workMinutes: 10, skills: ['jam', 'prep'], peopleMin: 1, peopleMax: 1, attention: 'watch' },
  kettleMinutes: 10,
}

const someDay = (): fc.Arbitrary<DayProblem> =>
  fc
    .record({
      people: fc
        .tuple(fc.subarray([...s1DayProblem.people], { minLength: 6 }), somePerson(10), somePerson(11), fc.boolean())
        .map(([known, first, second, rounder]) => [...known, first, ...(rounder ? [second, allRounder] : [allRounder])]),
      jam: fc.integer({ min: 0, max: 30 }),
      pickles: fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 20 })),
      beans: fc.oneof(fc.constant(0), fc.constant(0), fc.integer({ min: 0, max: 12 })),
      spare: fc.constantFrom({ kind: 'jars' as const, jars: 2 }, { kind: 'share' as const, share: 0.1 }),
      treatment: fc.constantFrom('washed-hot' as const, 'boiled-in-pot' as const, 'boiled-in-canner' as const),
      canners: fc.constantFrom(0, 1, 1, 2, 2),
      burners: fc.subarray([...s1DayProblem.burners], { minLength: 3 }),
      fillTables: fc.integer({ min: 1, max: 2 }),
      wait: fc.integer({ min: 3, max: 20 }),
      rackJars: fc.constantFrom(null, null, null, 40, 200),
      shared: fc.boolean(),
      breaks: fc.constantFrom(COMMON_BREAKS, null, { longerThanMinutes: 200, minutes: 15, longestStretchMinutes: 150 }),
      jamBy: fc.constantFrom(Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 1200),
    })
    .map(
      ({ people, jam, pickles, beans: pints, spare, treatment, canners, burners, fillTables, wait, rackJars, shared, breaks, jamBy }) => ({
        ...s1DayProblem,
        people,
        burners,
        fillTables,
        rackJars,
        breaks,
        circuits: shared ? [{ id: 'E1', watts: 1500 }] : s1DayProblem.circuits,
        kettles: [
          ...s1DayProblem.kettles,
          { id: 'K5', label: 'Kettle 5', litres: 10, material: null, use: 'any' as const, washMinutes: 4 },
        ],
        canners: [
          ...s1DayProblem.canners.slice(0, canners),
          {
            ...s1DayProblem.canners[0],
            id: 'PC1',
            label: 'Pressure 1',
            method: 'pressure' as const,
            gauge: 'dial' as const,
            capacity: { pint: 9, quart: 7 },
            usable: true,
            whyNot: null,
            preheatMinutes: 20,
          },
        ],
        minding: [
          ...s1DayProblem.minding,
          { method: 'pressure' as const, skill: 'pressure-operator', cannersAtOnce: 1, alongside: 'nothing' as const },
        ],
        preparations: [
          { ...plumJam, jarsWanted: jam, spare, jarTreatment: treatment, filledToLoadedLimitMinutes: wait, loadBy: jamBy },
          { ...dillPickles, jarsWanted: pickles, filledToLoadedLimitMinutes: wait },
          { ...beans, jarsWanted: pints },
        ],
      }),
    )

/** Every stage takes exactly as long as it was planned. */
const certain = (problem: DayProblem): DayProblem => ({
  ...problem,
  preparations: problem.preparations.map((entry) => ({
    ...entry,
    ranges: { prep: exactly(entry.prep.workMinutes), kettle: exactly(entry.kettleMinutes), comeUp: exactly(entry.cycle.comeUpMinutes) },
  })),
})
const exactly = (minutes: number) => ({ low: minutes, typical: minutes, high: minutes, basis: 'published' as const })

describe('any small day', () => {
  it('gets a plan without a violation, or a limit with a reason and a next step', () => {
    const seen = { planned: 0, refused: 0 }
    fc.assert(
      fc.property(someDay(), (problem) => {
        const answer = planOnce(problem)
        if (answer.ok) {
          seen.planned++
          expect(checkDayPlan(problem, answer.value)).toEqual([])
          expect(staffingGaps(problem, answer.value).gaps.filter((gap) => gap.taskId !== null && gap.kind !== 'clean-up')).toEqual([])
          const sure = replayPlan(certain(problem), answer.value, 1, 1)
          expect(sure.brokenWaits.concat(), 'a replay of what was planned breaks no wait').toEqual([])
          expect(sure.finishes[0]).toBeLessThanOrEqual(answer.value.finishAt)
        } else {
          seen.refused++
          const said = sayPlanRefusal(problem, { ...answer.problem, waysOut: [] })
          expect(said.why).toMatch(/\S.*\.$/)
          expect(said.instead).toMatch(/\S.*\.$/)
        }
      }),
      { numRuns: 150, seed: 20270826 },
    )
    expect(Math.min(seen.planned, seen.refused)).toBeGreaterThan(15) // both answers are really tried
  }, 120_000)

  it('is split without making or losing a jar', () => {
    fc.assert(
      fc.property(someDay(), (problem) => {
        const split = splitDemand(problem)
        if (!split.ok) return
        for (const preparation of problem.preparations) {
          const jobs = split.value.jobs.filter((job) => job.preparationId === preparation.id)
          const filled = jobs.flatMap((job) => job.batches).reduce((sum, batch) => sum + batch.jars.typical, 0)
          const loaded = jobs
            .flatMap((job) => job.loads)
            .flatMap((load) => load.parts)
            .reduce((sum, part) => sum + part.jars.typical, 0)
          expect(loaded).toBe(filled)
          expect(filled).toBeGreaterThanOrEqual(jarsToPlan(preparation))
          expect(filled - jarsToPlan(preparation)).toBeLessThan(preparation.batchYield.typical)
          if (preparation.scaling === 'whole-batches-only')
            expect(jobs.flatMap((job) => job.batches).every((batch) => batch.multiple === 1)).toBe(true)
        }
      }),
      { numRuns: 200, seed: 7 },
    )
  })
})
