import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { nothingSoFar } from '@/shared/planning/day-so-far'
import { planOnce } from '@/shared/planning/plan-once'
import { replanDay } from '@/shared/planning/replan-day'
import { replayPlan } from '@/shared/planning/replay-plan'
import { washedOffBefore } from '@/shared/planning/table-wash'
import { sayTask } from '@/shared/wording/say-task'
import { dillPickles, plumJam, s1DayProblem } from '@/tests/fixtures/s1-day-problem'
import { checkDayPlan } from '@/tests/support/check-day-plan'

/** Jam and pickles with mustard, in turn at one table. */
const washed: DayProblem = {
  ...s1DayProblem,
  tableWashMinutes: 8,
  preparations: [
    { ...plumJam, jarsWanted: 24 },
    { ...dillPickles, jarsWanted: 16 },
  ],
}
const unwashed: DayProblem = { ...washed, tableWashMinutes: 0 }

const planned = (problem: DayProblem): DayPlan => {
  const answer = planOnce(problem)
  if (!answer.ok) throw new Error(`refused: ${JSON.stringify(answer.problem.limit)}`)
  return answer.value
}
const rulesBroken = (problem: DayProblem, plan: DayPlan) => new Set(checkDayPlan(problem, plan).map(({ rule }) => rule))
const fillings = (plan: DayPlan) => plan.tasks.filter(({ kind }) => kind === 'fill').sort((a, b) => a.start - b.start)

describe('washing a fill table between recipes', () => {
  it('is not asked for by itself, and then changes no plan', () => {
    const { tableWashMinutes: _, ...silent } = unwashed
    expect(planned(silent)).toEqual(planned(unwashed))
    expect(planned({ ...s1DayProblem, tableWashMinutes: 0 })).toEqual(planned(s1DayProblem))
  })

  it('keeps the minutes between mustard and what has none, and the checker sees when they are missing', () => {
    expect(checkDayPlan(washed, planned(washed))).toEqual([])
    expect(rulesBroken({ ...washed, tableWashMinutes: 20 }, planned(washed))).toContain('table-washed')
  })

  it('asks for none from what has no allergen to what has one, and none within one recipe', () => {
    const plan = planned(washed)
    const rows = fillings(plan).map((task) => washedOffBefore(washed, plan, task))
    const before = [undefined, ...fillings(plan)]
    for (const [place, off] of rows.entries()) {
      const isAfterPickles = before[place]?.batchId?.startsWith(dillPickles.id) ?? false
      const isJam = fillings(plan)[place]?.batchId?.startsWith(plumJam.id) ?? false
      expect(off).toEqual(isAfterPickles && isJam ? ['mustard'] : [])
    }
    expect(rows.flat().length).toBeGreaterThan(0)
  })

  it('is said to whoever fills next, in their language', () => {
    const plan = planned(washed)
    const task = fillings(plan).find((each) => washedOffBefore(washed, plan, each).length > 0)
    if (!task) throw new Error('no table is washed')
    expect(sayTask(washed, plan, task)).toMatch(/^Wash the table first: mustard was on it\. Fill /)
    expect(sayTask(washed, plan, task, 'es')).toMatch(/^Primero lavar la mesa \(alérgeno: mustard\)\. Llenar /)
    expect(sayTask(unwashed, plan, task)).toMatch(/^Fill /)
  })

  it('is kept by a plan made anew, by a product for the fridge, and by the replay', () => {
    const plan = planned(washed)
    const again = replanDay(washed, plan, nothingSoFar(washed.window.accessAt))
    expect(again.ok && rulesBroken(washed, again.value.plan)).not.toContain('table-washed')
    const { process: _process, method: _method, cycle: _cycle, pack: _pack, filledToLoadedLimitMinutes: _wait, ...work } = plumJam
    const chilled = { ...washed, chilled: [{ ...work, id: 'fridge-jam', code: 'F', title: 'Fridge jam', jarsWanted: 8 }] }
    expect(rulesBroken(chilled, planned(chilled))).not.toContain('table-washed')
    const usual = replayPlan(unwashed, planned(washed), 1, 100)
    const slow = replayPlan({ ...washed, tableWashMinutes: 45 }, planned(washed), 1, 100)
    expect(slow.finishes.at(-1)).toBeGreaterThan(usual.finishes.at(-1) ?? 0)
  })

  it('breaks no rule, whatever is made on however many tables', () => {
    let plans = 0
    fc.assert(
      fc.property(
        fc.record({ tableWashMinutes: fc.integer({ min: 1, max: 20 }), fillTables: fc.integer({ min: 1, max: 2 }) }),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 1, max: 3 }),
        fc.constantFrom<string[][]>([[], ['mustard']], [['celery'], ['mustard']], [['mustard', 'celery'], ['mustard']]),
        (kitchen, jam, pickles, [inJam = [], inPickles = []]) => {
          const problem: DayProblem = {
            ...washed,
            ...kitchen,
            preparations: [
              { ...plumJam, jarsWanted: 8 * jam, allergens: inJam },
              { ...dillPickles, jarsWanted: 8 * pickles, allergens: inPickles },
            ],
          }
          const answer = planOnce(problem)
          if (!answer.ok) return
          plans++
          expect(checkDayPlan(problem, answer.value)).toEqual([])
        },
      ),
      { numRuns: 12, seed: 20261127 },
    )
    expect(plans).toBeGreaterThan(6)
  })
})
