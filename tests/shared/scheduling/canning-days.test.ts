import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseCanningDay } from '@/shared/forms/canning-day'
import type { CanningDay, CanningPlan } from '@/shared/scheduling/day/canning-day'
import { modelOf } from '@/shared/scheduling/day/day-model'
import { finishBound } from '@/shared/scheduling/day/finish-bounds'
import { improve, startSearch } from '@/shared/scheduling/day/improve-day'
import { impossibleReasons } from '@/shared/scheduling/day/refuse-canning-day'
import { writePlan } from '@/shared/scheduling/day/write-plan'
import { checkCanningPlan } from '@/tests/support/check-canning-plan'

function readDay(name: string): CanningDay {
  const parsed = parseCanningDay(JSON.parse(readFileSync(new URL(`../../fixtures/canning-days/${name}.json`, import.meta.url), 'utf8')))
  if (!parsed.ok) throw new Error(`${name}: ${parsed.problem.field} ${parsed.problem.message}`)
  return parsed.value
}

function planned(day: CanningDay, steps: number, seed = 1): CanningPlan | null {
  const model = modelOf(day)
  const bound = finishBound(model)
  const search = startSearch(model, bound.slot, seed)
  improve(search, steps)
  return search.best && writePlan(model, search.best, bound.slot)
}

describe('a planned canning day', () => {
  // optimum where it was proved, else the best value known when the instance was published
  const days = [
    ['cd-s01', 220, 200],
    ['cd-s03', 330, 200],
    ['cd-s05', 350, 4_000],
    ['cd-s08', 370, 6_000],
    ['cd-m01', 600, 1_500],
  ] as const

  it.each(days)('%s breaks no rule and ends by minute %i', (name, finish, steps) => {
    const day = readDay(name)
    const plan = planned(day, steps)
    expect(plan && checkCanningPlan(day, plan)).toEqual([])
    expect(plan?.makespan).toBeLessThanOrEqual(finish)
  })

  it.each([
    ['cd-s01', 220],
    ['cd-s03', 330],
    ['cd-s05', 350],
  ] as const)('%s is never bounded above its proved optimum %i, nor ends before it', (name, optimum) => {
    const model = modelOf(readDay(name))
    expect(finishBound(model).slot * 5).toBeLessThanOrEqual(optimum)
    expect(planned(readDay(name), 3_000)?.makespan).toBeGreaterThanOrEqual(optimum)
  })

  it('is bounded by large canners alone where no batch can go whole into the small one, unless it may wait for a second load', () => {
    const day = readDay('cd-s05')
    expect(finishBound(modelOf(day)).slot * 5).toBeGreaterThanOrEqual(335)
    const [both, one] = [day.batches[3], day.batches[5]]
    if (!both || !one) throw new Error('cd-s05 has seven batches')
    const waiting = (maxWaitFillProcess: number): CanningDay => ({
      ...day,
      batches: [
        { ...both, id: 'B1', trays: [9, 9], maxWaitFillProcess },
        ...['B2', 'B3', 'B4'].map((id) => ({ ...one, id, trays: [14], maxWaitFillProcess })),
      ],
    })
    // three loads of 70 minutes in the large canner, and one of 50 beside them only where the small one cannot take both halves in turn
    const [short, long] = [finishBound(modelOf(waiting(10))).slot * 5, finishBound(modelOf(waiting(60))).slot * 5]
    expect(short).toBeGreaterThanOrEqual(long + 40)
    const plan = planned(waiting(60), 400)
    expect(plan && checkCanningPlan(waiting(60), plan)).toEqual([])
    expect(plan?.makespan).toBeGreaterThanOrEqual(long)
    expect(plan?.makespan).toBeLessThan(short)
  })

  it('is not bounded later than it ends where preparing takes no time', () => {
    const day = readDay('cd-s01')
    const batches = day.batches.slice(0, 1).map((batch) => ({ ...batch, prep: { ...batch.prep, work: 0 } }))
    const alone = { ...day, batches, canners: day.canners.slice(0, 1) }
    expect(planned(alone, 50)?.makespan).toBe(finishBound(modelOf(alone)).slot * 5)
  })

  it('comes out the same for the same seed and steps', () => {
    expect(planned(readDay('cd-s08'), 500, 7)).toEqual(planned(readDay('cd-s08'), 500, 7))
  })

  it('never ends later when the search goes on', () => {
    const model = modelOf(readDay('cd-m01'))
    const search = startSearch(model, finishBound(model).slot, 3)
    let before = Number.POSITIVE_INFINITY
    for (let round = 0; round < 12; round++) {
      improve(search, 40)
      const now = search.best?.finish ?? Number.POSITIVE_INFINITY
      expect(now).toBeLessThanOrEqual(before)
      before = now
    }
  })

  it('never takes more of anything than there is', () => {
    const day = readDay('cd-s05')
    const fresh = startSearch(modelOf(day), 0, 1)
    improve(fresh, 50)
    for (const at of fresh.state.free) expect(at).toBeGreaterThanOrEqual(0)
  })
})

describe('the checker of canning plans', () => {
  const day = readDay('cd-s03')
  const plan = planned(day, 100)
  if (!plan) throw new Error('cd-s03 has a plan')
  const withBatch = (change: (batch: CanningPlan['batches'][number]) => object): CanningPlan => ({
    ...plan,
    batches: plan.batches.map((batch, index) => (index === 0 ? { ...batch, ...change(batch) } : batch)),
  })
  const withLoad = (change: (load: CanningPlan['loads'][number]) => object, at = 0): CanningPlan => ({
    ...plan,
    loads: plan.loads.map((load, index) => (index === at ? { ...load, ...change(load) } : load)),
  })
  const pressure = plan.loads.findIndex((load) => load.operator)
  const damages: readonly (readonly [rule: string, damaged: CanningPlan])[] = [
    ['batch', { ...plan, batches: plan.batches.slice(1) }],
    ['grid', withBatch((batch) => ({ prep: { ...batch.prep, start: batch.prep.start + 2 } }))],
    ['team', withBatch((batch) => ({ fill: { ...batch.fill, people: [] } }))],
    ['order', withBatch((batch) => ({ cook: { ...batch.cook, start: 0 } }))],
    ['order', withLoad(() => ({ start: 0 }))],
    ['wait', withLoad((load) => ({ start: load.start + 100 }))],
    ['kettle', withBatch((batch) => ({ cook: { ...batch.cook, kettle: 'none' } }))],
    ['person', withBatch((batch) => ({ prep: { ...batch.prep, people: batch.prep.people.map(() => 'nobody') } }))],
    [
      'skill',
      withBatch((batch) => ({
        fill: { ...batch.fill, people: day.crews.find((crew) => !crew.skills.includes('hot'))?.people.slice(0, 2) ?? [] },
      })),
    ],
    ['limit', withBatch((batch) => ({ prep: plan.batches[1]?.prep ?? batch.prep }))],
    ['method', withLoad(() => ({ canner: day.canners.find((canner) => canner.method === 'boiling-water')?.id ?? '' }), pressure)],
    ['operator', withLoad(() => ({ operator: 'nobody' }), pressure)],
    ['tray', { ...plan, loads: plan.loads.slice(1) }],
    ['tray', { ...plan, loads: [...plan.loads, ...plan.loads.slice(0, 1)] }],
    ['break', { ...plan, breaks: [] }],
    ['makespan', { ...plan, makespan: plan.makespan - 5 }],
    ['bound', { ...plan, lowerBound: plan.makespan + 5 }],
  ]
  it.each(damages)('objects with %s', (rule, damaged) => {
    expect(checkCanningPlan(day, damaged).map((fault) => fault.rule)).toContain(rule)
  })

  it('objects when the day is stricter than the plan knew', () => {
    expect(checkCanningPlan({ ...day, coolingJars: 3 }, plan).map((fault) => fault.rule)).toContain('cooling')
    expect(checkCanningPlan({ ...day, close: 200 }, plan).map((fault) => fault.rule)).toContain('closing')
    expect(checkCanningPlan({ ...day, burners: 1 }, plan).map((fault) => fault.rule)).toContain('limit')
    expect(
      checkCanningPlan({ ...day, canners: day.canners.map((canner) => ({ ...canner, jars: {} })) }, plan).map((fault) => fault.rule),
    ).toContain('canner')
    expect(
      checkCanningPlan({ ...day, crews: day.crews.map((crew) => ({ ...crew, from: 300 })) }, plan).map((fault) => fault.rule),
    ).toContain('hours')
    expect(
      checkCanningPlan({ ...day, batches: day.batches.map((batch) => ({ ...batch, readyAt: 300 })) }, plan).map((fault) => fault.rule),
    ).toContain('ready')
  })
})

describe('a day file', () => {
  const good = JSON.parse(readFileSync(new URL('../../fixtures/canning-days/cd-s03.json', import.meta.url), 'utf8'))
  const faults: readonly (readonly [field: string, change: (day: typeof good) => object])[] = [
    ['format', (day) => ({ ...day, format: 'canning-day/2' })],
    ['close', (day) => ({ ...day, close: -5 })],
    ['close', (day) => ({ ...day, close: 90_000 })],
    [
      'crews[1].break.startMax',
      (day) => ({
        ...day,
        crews: day.crews.map((crew: { break: object | null }) =>
          crew.break ? { ...crew, break: { minutes: 30, startMin: 121, startMax: 124 } } : crew,
        ),
      }),
    ],
    ['grid', (day) => ({ ...day, grid: 0 })],
    ['batches', (day) => ({ ...day, batches: [] })],
    ['batches', (day) => ({ ...day, batches: Array.from({ length: 10_000 }, (_, index) => ({ ...day.batches[0], id: `B${index}` })) })],
    ['batches[0].prep.skill', (day) => ({ ...day, batches: [{ ...day.batches[0], prep: { ...day.batches[0].prep, skill: 'juggling' } }] })],
    ['batches[0].readyAt', (day) => ({ ...day, batches: [{ ...day.batches[0], readyAt: -1 }] })],
    ['batches[0].cook.minutes', (day) => ({ ...day, batches: [{ ...day.batches[0], cook: { low: 1, minutes: 7, high: 9 } }] })],
    ['batches[0].recipe', (day) => ({ ...day, batches: [{ ...day.batches[0], recipe: 'R99' }] })],
    ['batches[1].id', (day) => ({ ...day, batches: [day.batches[0], day.batches[0]] })],
    ['crews[0].to', (day) => ({ ...day, crews: [{ ...day.crews[0], from: 300, to: 200 }] })],
    ['recipes[0].family', (day) => ({ ...day, recipes: day.recipes.map((recipe: object) => ({ ...recipe, family: 'F99' })) })],
    ['the file', () => [1, 2, 3]],
    ['canners[0].jars', (day) => ({ ...day, canners: [{ ...day.canners[0], jars: {} }, ...day.canners.slice(1)] })],
    ['crews[0].to', (day) => ({ ...day, crews: [{ ...day.crews[0], from: 60, to: 60 }, ...day.crews.slice(1)] })],
    ['operators[0].to', (day) => ({ ...day, operators: [{ ...day.operators[0], from: 60, to: 60 }] })],
    ['recipes[0].demandJars', (day) => ({ ...day, batches: day.batches.filter((batch: { recipe: string }) => batch.recipe !== 'R1') })],
  ]
  it.each(faults)('is refused with the field %s', (field, change) => {
    const parsed = parseCanningDay(change(structuredClone(good)))
    expect(parsed.ok ? 'was read' : parsed.problem.field).toBe(field)
  })

  const hopeless: readonly (readonly [reason: RegExp, change: (day: CanningDay) => CanningDay])[] = [
    [/canner/, (day) => ({ ...day, canners: [] })],
    [/no .* canner holds/, (day) => ({ ...day, canners: day.canners.map((canner) => ({ ...canner, jars: {} })) })],
    [/batches\[0\]\.ml: .* largest kettle/, (day) => ({ ...day, kettles: [{ id: 'K1', ml: 10 }] })],
    [/batches\[0\]\.prep\.peopleMin: .* people with/, (day) => ({ ...day, crews: [] })],
    [/pressure operator/, (day) => ({ ...day, operators: [] })],
    [/coolingJars/, (day) => ({ ...day, coolingJars: 0 })],
    [/closing is at/, (day) => ({ ...day, close: 210 })],
    [/tested maximum/, (day) => ({ ...day, recipes: day.recipes.map((recipe) => ({ ...recipe, maxBatchMl: 1 })) })],
    [
      /^operators: a load of B3 takes \d+ min, and no operator is on duty so long/,
      (day) => ({
        ...day,
        operators: [0, 1, 2, 3, 4, 5].map((one) => ({ id: `O${one}`, from: 100 * one, to: 100 * one + 100, maxCanners: 9 })),
      }),
    ],
    [
      /^crews: the people that B1 needs are not all there/,
      (day) => {
        const alone = { skills: ['prep', 'knife', 'hot'] as const, break: { minutes: 5, startMin: 0, startMax: 500 } }
        const crews = [0, 1].map((one) => ({ ...alone, id: `G${one}`, people: [`P${one}`], from: 300 * one, to: 300 * one + 300 }))
        return { ...day, crews, batches: day.batches.slice(0, 1).map((batch) => ({ ...batch, fill: { ...batch.fill, people: 2 } })) }
      },
    ],
  ]
  it.each(hopeless)('that nobody can run says why: %s', (reason, change) => {
    const reasons = impossibleReasons(modelOf(change(readDay('cd-s03'))))
    expect(reasons.map((one) => one.reason).join('\n')).toMatch(reason)
  })

  it('that can be run has no such reason', () => {
    for (const name of ['cd-s01', 'cd-s03', 'cd-s05', 'cd-s08', 'cd-m01']) expect(impossibleReasons(modelOf(readDay(name)))).toEqual([])
  })
})

describe('any day cut out of a known one', () => {
  it('gets a plan that breaks no rule, or none', () => {
    const whole = readDay('cd-m01')
    let plans = 0
    const cut = fc.record({
      batches: fc.subarray([...whole.batches], { minLength: 1, maxLength: 9 }),
      canners: fc.subarray([...whole.canners], { minLength: 4 }),
      crews: fc.subarray([...whole.crews], { minLength: 3 }),
      burners: fc.integer({ min: 3, max: 12 }),
      stoveWatch: fc.integer({ min: 1, max: 8 }),
      fillStations: fc.integer({ min: 1, max: 3 }),
      close: fc.integer({ min: 70, max: 168 }).map((slots) => slots * 5),
    })
    fc.assert(
      fc.property(cut, (parts) => {
        const crews = parts.crews.map((crew) => ({ ...crew, to: Math.min(crew.to, parts.close) }))
        const day: CanningDay = { ...whole, ...parts, crews }
        const plan = impossibleReasons(modelOf(day)).length === 0 ? planned(day, 60) : null
        if (!plan) return
        plans++
        expect(checkCanningPlan(day, plan)).toEqual([])
      }),
      { numRuns: 60, seed: 4 },
    )
    expect(plans).toBeGreaterThan(20)
  }, 60_000)
})
