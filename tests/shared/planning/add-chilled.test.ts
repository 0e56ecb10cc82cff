import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { SavedDayPlan, SavedDayProblem } from '@/shared/forms/saved-plan'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem, KettleWork } from '@/shared/planning/day-problem'
import type { DaySoFar } from '@/shared/planning/day-so-far'
import { planOnce } from '@/shared/planning/plan-once'
import { replanDay } from '@/shared/planning/replan-day'
import { replayPlan } from '@/shared/planning/replay-plan'
import { wallChart } from '@/shared/planning/wall-chart'
import { rowChart } from '@/shared/day/chart-rows'
import { planDayByNames } from '@/shared/day/plan-by-names'
import { sayTask } from '@/shared/wording/say-task'
import { plumJam, s1DayProblem } from '@/tests/fixtures/s1-day-problem'
import { checkDayPlan } from '@/tests/support/check-day-plan'
import { asPlannedUntil } from '@/tests/support/day-so-far'

const { method: _, pack: __, process: ___, cycle: ____, filledToLoadedLimitMinutes: _____, ...work } = plumJam

/** A sauce for the fridge or freezer: cooked in the jam kettles, four jars wanted. */
const sauce = (changes: Partial<KettleWork> = {}): KettleWork => ({
  ...work,
  ...{ id: 'sauce', code: 'S', title: 'Damson sauce of the lane', recipeId: 'own-sauce', jarSize: 'pint', jarsWanted: 4 },
  ...{ spare: { kind: 'jars', jars: 0 }, batchYield: { low: 3, typical: 4, high: 5 }, allergens: [], ...changes },
})

const withSauce = (changes: Partial<KettleWork> = {}): DayProblem => ({ ...s1DayProblem, chilled: [sauce(changes)] })

function planned(problem: DayProblem): DayPlan {
  const answer = planOnce(problem)
  if (!answer.ok) throw new Error(`refused: ${JSON.stringify(answer.problem)}`)
  return answer.value
}

/** The rules apart from those of canners: the checker sees a chilled product as one with a process, and no load of it is missed. */
function broken(problem: DayProblem, plan: DayPlan) {
  const chilled = problem.chilled ?? []
  const asCanned = chilled.map((each) => ({ ...plumJam, ...each, process: { ...plumJam.process, minutes: 10 } }))
  return checkDayPlan({ ...problem, preparations: [...problem.preparations, ...asCanned] }, plan).filter(
    ({ rule, detail }) => rule !== 'finish' && !(rule === 'jars-conserved' && chilled.some(({ id }) => detail.startsWith(`${id}/`))),
  )
}

describe('a product without a process', () => {
  const plan = planned(withSauce())
  const own = plan.tasks.filter(({ batchId }) => batchId === 'sauce/1')

  it('is prepared, cooked and filled, and goes into no canner', () => {
    expect(plan.batches.find(({ preparationId }) => preparationId === 'sauce')).toMatchObject({ code: 'S1', jars: { typical: 4 } })
    expect(new Set(own.map(({ kind }) => kind))).toEqual(new Set(['prep', 'wash', 'cook', 'fill', 'label']))
    expect(own.every(({ cannerId, loadId }) => cannerId === null && loadId === null)).toBe(true)
    expect(plan.loads.some(({ batchParts }) => batchParts.some(({ batchId }) => batchId === 'sauce/1'))).toBe(false)
  })

  it('moves no load and breaks no rule that the checker knows', () => {
    const without = planned(s1DayProblem)
    expect(plan.loads).toEqual(without.loads)
    expect(plan.cannerMinutes).toEqual(without.cannerMinutes)
    expect(broken(withSauce(), plan)).toEqual([])
  })

  it('says on the list that its jars go to the fridge or freezer', () => {
    const fill = own.find(({ kind }) => kind === 'fill')
    expect(fill && sayTask(withSauce(), plan, fill)).toContain('then into the fridge or freezer: no canner.')
  })

  it('is read back as it was saved', () => {
    const json = (value: unknown) => JSON.parse(JSON.stringify(value))
    expect(SavedDayProblem.parse(json(withSauce()))).toEqual(json(withSauce()))
    expect(SavedDayPlan.parse(json(plan))).toEqual(json(plan))
  })

  it('is drawn at its kettle and its table, and falls to no canner', () => {
    const chart = wallChart(withSauce(), plan)
    expect(chart.bars.filter(({ batchId }) => batchId === 'sauce/1').length).toBeGreaterThanOrEqual(2)
    expect(chart.profiles.length).toBe(plan.loads.length)
    const row = rowChart(withSauce(), plan, 'product').rows.find(({ id }) => id === 'sauce/1')
    expect(row).toBeDefined()
  })

  it('is played through with the rest of the day', () => {
    const { finishes } = replayPlan(withSauce(), plan, 7, 20)
    expect(finishes.every((finish) => Number.isFinite(finish) && finish >= plan.loads.length)).toBe(true)
  })

  it('alone makes a day without a canner', () => {
    const problem = { ...s1DayProblem, preparations: [], chilled: [sauce({ jarsWanted: 8 })] }
    const alone = planned(problem)
    expect([alone.loads, alone.batches.map(({ code }) => code)]).toEqual([[], ['S1', 'S2']])
    expect(alone.tasks.some(({ cannerId }) => cannerId !== null)).toBe(false)
    expect(broken(problem, alone)).toEqual([])
  })

  it('is planned under its own id when ties go by names', () => {
    const answer = planDayByNames(withSauce())
    expect(answer.ok && answer.value.batches.filter(({ preparationId }) => preparationId === 'sauce').map(({ id }) => id)).toEqual([
      'sauce/1',
    ])
  })

  it('does not fit where no kettle holds a batch, and says so', () => {
    expect(planOnce(withSauce({ batchLitres: 40 }))).toMatchObject({
      ok: false,
      problem: { limit: { kind: 'kettle-too-small', preparationId: 'sauce' } },
    })
  })

  it('does not fit where the kettles are all needed, and names the limit', () => {
    const answer = planOnce(withSauce({ jarsWanted: 400 }))
    expect(answer).toMatchObject({ ok: false, problem: { kind: 'does-not-fit' } })
  })

  it('breaks no rule whatever it asks for', () => {
    const asked = fc.record({
      jarsWanted: fc.integer({ min: 1, max: 12 }),
      kettleMinutes: fc.integer({ min: 5, max: 60 }),
      kettleUse: fc.constantFrom('jam' as const, 'brine' as const),
      prepBefore: fc.constantFrom('cook' as const, 'fill' as const),
      cannedToo: fc.boolean(),
    })
    fc.assert(
      fc.property(asked, ({ cannedToo, ...changes }) => {
        const problem = { ...withSauce(changes), ...(cannedToo ? {} : { preparations: [] }) }
        const answer = planOnce(problem)
        // Who helps whom with languages has its own tests, over every day.
        if (answer.ok) expect(broken(problem, answer.value).filter(({ rule }) => rule !== 'language')).toEqual([])
      }),
      { numRuns: 12 },
    )
  })
})

describe('on a running day', () => {
  const half = s1DayProblem.preparations.map((each) => ({ ...each, jarsWanted: each.jarsWanted / 2 }))
  const problem = { ...withSauce({ jarsWanted: 8 }), preparations: half }
  const before = planned(problem)
  const sauceBatches = (plan: DayPlan) => plan.batches.filter(({ preparationId }) => preparationId === 'sauce')
  const again = (soFar: DaySoFar) => {
    const answer = replanDay(problem, before, soFar)
    if (!answer.ok) throw new Error(JSON.stringify(answer.problem))
    return answer.value
  }
  /** Jars without a process wait for no canner. */
  const until = (now: number): DaySoFar => {
    const soFar = asPlannedUntil(before, now)
    return { ...soFar, batches: soFar.batches.map((batch) => (batch.batchId.startsWith('sauce/') ? { ...batch, waiting: null } : batch)) }
  }

  it.each([17 * 60 + 40, 18 * 60 + 20, 19 * 60 + 14, 20 * 60])(
    'stays where it is when the evening goes as planned, at minute %i',
    (now) => {
      const { plan, dropped } = again(until(now))
      expect(sauceBatches(plan)).toEqual(sauceBatches(before))
      expect(plan.tasks.filter(({ batchId }) => batchId?.startsWith('sauce/'))).toEqual(
        before.tasks.filter(({ batchId }) => batchId?.startsWith('sauce/')),
      )
      expect(dropped).toEqual([])
    },
  )

  it('is booked anew when it was missed, in the same number of jars and never in the past', () => {
    const now = Math.max(...sauceBatches(before).map(({ cookStart }) => cookStart)) + 5
    const missed = until(now)
    const soFar = { ...missed, batches: missed.batches.filter(({ batchId }) => !batchId.startsWith('sauce/')) }
    const { plan, dropped } = again(soFar)
    const moved = sauceBatches(plan)
    expect(moved.length + dropped.filter(({ id }) => id.startsWith('sauce/')).length).toBe(2)
    expect(moved.every(({ cookStart }) => cookStart >= now)).toBe(true)
    for (const { id, kettleId, cookStart, fillEnd } of moved)
      expect(
        plan.batches.filter(
          (other) => other.id !== id && other.kettleId === kettleId && other.cookStart < fillEnd && cookStart < other.fillEnd,
        ),
      ).toEqual([])
  })

  it('goes when it is given up', () => {
    const now = 18 * 60 + 20
    const given = { batchId: 'sauce/2', state: 'abandoned', kettleId: null, startedAt: null, fillStartedAt: null } as const
    const soFar = until(now)
    const others = soFar.batches.filter(({ batchId }) => batchId !== 'sauce/2')
    const { plan, dropped } = again({ ...soFar, batches: [...others, { ...given, filledAt: null, jarsFilled: null, waiting: null }] })
    expect(sauceBatches(plan).map(({ id }) => id)).toEqual(['sauce/1'])
    expect(dropped).toMatchObject([{ id: 'sauce/2', why: 'abandoned' }])
  })
})
