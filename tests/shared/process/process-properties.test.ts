import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { JAR_SIZES } from '@/shared/kitchen/jar-sizes'
import { GAUGES, PACKS } from '@/shared/kitchen/methods'
import { FOODS } from '@/shared/process/food-names'
import { HAZARDS } from '@/shared/process/hazards'
import { lookUpProcess } from '@/shared/process/look-up-process'
import type { ProcessQuery } from '@/shared/process/process-query'
import { REFUSAL_CODES } from '@/shared/process/process-refusal'
import { PUBLISHED_ROWS } from '@/shared/process/published-rows'
import { sayHazards, sayProcessNextStep, sayProcessRefusal } from '@/shared/wording/say-process-refusal'
import { aQuery, someQuery } from '@/tests/support/process-queries'

const RUNS = { numRuns: 5000 }

/** Every figure that a row prints, or another publication prints longer for it, by row: minutes and psi. */
const PRINTED = new Map(
  PUBLISHED_ROWS.map((row) => [
    row.id,
    new Set(
      row.schedules.flatMap(({ bands, longerPrint, utahMinutesAbove8000 }) => [
        ...bands.map(({ minFeet, psi }) => `${longerPrint?.minutesFrom[minFeet]} ${psi}`),
        ...bands.filter(({ minutes }) => minutes !== null).map(({ minutes, psi }) => `${minutes} ${psi}`),
        ...(utahMinutesAbove8000 === undefined ? [] : [`${utahMinutesAbove8000} null`]),
      ]),
    ),
  ]),
)

describe('a look-up, whatever is asked', { timeout: 60_000 }, () => {
  it('returns no time that is in no row', () => {
    fc.assert(
      fc.property(someQuery(), (query) => {
        const found = lookUpProcess(query)
        if (!found.ok) return
        const { processId, minutes, psi } = found.value
        expect(PRINTED.get(processId)).toContain(`${minutes} ${psi}`)
      }),
      RUNS,
    )
  })

  it('gives every refusal a reason, a next step and known hazards, and offers only what it would itself allow', () => {
    fc.assert(
      fc.property(someQuery(), (query) => {
        const found = lookUpProcess(query)
        if (found.ok) return
        const { problem } = found
        expect(REFUSAL_CODES).toContain(problem.code)
        expect(sayProcessRefusal(problem).length).toBeGreaterThan(20)
        expect(sayProcessNextStep(problem).length).toBeGreaterThan(10)
        expect(sayHazards(problem)).toEqual(problem.hazards.map((id) => HAZARDS[id].caution))
        for (const { foodId, method, gauge, pack, jar } of problem.alternatives) {
          expect(lookUpProcess({ food: foodId, method, gauge, pack, jar, elevation: query.elevation }).ok).toBe(true)
        }
      }),
      { numRuns: 2000 },
    )
  })

  it('never lowers time or pressure as the kitchen goes up, within a table', () => {
    const someLine = fc.record({
      food: fc.constantFrom(...FOODS.keys()),
      pack: fc.constantFrom(...PACKS),
      jar: fc.constantFrom(...JAR_SIZES),
      gauge: fc.constantFrom(...GAUGES, null),
      steam: fc.boolean(),
      option: fc.constantFrom(undefined, 1, 2, 3),
    })
    const heights = fc.tuple(fc.integer({ min: 0, max: 12_000 }), fc.integer({ min: 0, max: 12_000 }))
    fc.assert(
      fc.property(someLine, heights, ({ steam, ...line }, [a, b]) => {
        const method = line.gauge !== null ? 'pressure' : steam ? 'atmospheric-steam' : 'boiling-water'
        const at = (feet: number) => lookUpProcess({ ...line, method, elevation: { feet } })
        const [low, high] = [at(Math.min(a, b)), at(Math.max(a, b))]
        if (!low.ok || !high.ok) return
        expect(high.value.minutes).toBeGreaterThanOrEqual(low.value.minutes)
        expect(Number(high.value.psi)).toBeGreaterThanOrEqual(Number(low.value.psi))
      }),
      RUNS,
    )
  })

  it('names the same figure by the same key, and another figure by another', () => {
    const figures = new Map<string, string>()
    fc.assert(
      fc.property(someQuery(), (query) => {
        const found = lookUpProcess(query)
        if (!found.ok) return
        const { rowKey, minutes, psi, band, headspaceInches } = found.value
        const figure = JSON.stringify([minutes, psi, band, headspaceInches])
        expect(figures.get(rowKey) ?? figure).toBe(figure)
        figures.set(rowKey, figure)
      }),
      RUNS,
    )
    expect(figures.size).toBeGreaterThan(150)
  })

  it('can give every reason of the closed list', () => {
    const dial = { food: 'green-beans', method: 'pressure', gauge: 'dial', askedOn: '2027-08-26' } as const
    const weighted = { food: 'tomato-sauce', method: 'pressure', gauge: 'weighted', elevation: { feet: 2000 } } as const
    const steam = { method: 'atmospheric-steam', jar: 'quart', elevation: { feet: 4300 } } as const
    const asked: Partial<ProcessQuery>[] = [
      { food: 'granite' },
      { food: 'tomatoes' },
      { food: 'milk' },
      { method: 'oven' },
      { food: 'sauerkraut' },
      { food: 'green-beans' },
      { ...steam, food: 'green-beans' },
      { ...steam, food: 'tomatoes-whole-water' },
      { food: 'rhubarb' },
      { ...dial, gauge: null },
      { ...dial, gaugeTestedOn: null },
      { ...dial, gaugeTestedOn: '2025-08-26' },
      { ...dial, gaugeErrorPsi: 3 },
      { food: 'peaches', pack: null },
      { food: 'pears', pack: 'raw' },
      { jar: 'half-gallon' },
      { food: 'piccalilli', jar: 'quart' },
      { option: 2 },
      { ...weighted, option: 3 },
      { elevation: null },
      { elevation: { feet: -1 } },
      { elevation: { feet: 10_001 } },
      { preparation: { untestedThickener: true } },
      { food: 'piccalilli', preparation: { kettleMetal: 'aluminium' } },
      { food: 'plum-preserves', preparation: { batchesInOneKettle: 2 } },
    ]
    const reasons = asked.map((changes) => lookUpProcess(aQuery(changes))).map((answer) => (answer.ok ? 'answered' : answer.problem.code))
    expect(reasons.toSorted()).toEqual([...REFUSAL_CODES].toSorted())
  })
})
