import { describe, expect, it } from 'vitest'
import { applyPlanChange, planChangeText, readPlanChange } from '@/shared/day/apply-plan-change'
import { planSlips } from '@/shared/day/slips'
import { SavedDayPlan, SavedDayProblem } from '@/shared/forms/saved-plan'
import { planOnce } from '@/shared/planning/plan-once'
import { formatClock } from '@/shared/time/kitchen-time'
import { saySlip, saySlipCost } from '@/shared/wording/say-slip'
import { s1DayProblem } from '../../fixtures/s1-day-problem'

const planned = planOnce(s1DayProblem)
if (!planned.ok) throw new Error('the evening has a plan')
const plan = planned.value

describe('what may slip on the evening', () => {
  const slips = planSlips(s1DayProblem, plan)
  const told = slips.map((slip) => [
    saySlip(slip),
    slip.cannerMinutes.needed,
    slip.finishAt === null ? 'no' : formatClock(slip.finishAt),
    saySlipCost(slip),
  ])

  it('is told with canner minutes, finish and cost, each planned again', () => {
    expect(told).toEqual([
      ['Plum jam at 10 min, jars washed hot', 410, '21:25', 'Nothing. This is the plan.'],
      ['One jam batch fewer', 373, '21:08', '8 half-pints, shared out as a shortage'],
      ['Plum jam at 5 min, all jars boiled in canners', 480, 'no', 'At least 1 load would not be done'],
      ['Canner 2 breaks', 410, 'no', '5 loads at most: choose which'],
    ])
  })

  it('leaves 215 canner minutes when one of two canners breaks', () => {
    expect(slips.at(-1)?.cannerMinutes).toMatchObject({ needed: 410, available: 215 })
  })
})

describe('a change to plan with', () => {
  it.each(['fewer-batches:plum-jam:2', 'drop-preparation:dill-pickles', 'without-canner:BW2', 'boiled-in-canners'])(
    '%s is read as it is written',
    (text) => {
      const change = readPlanChange(text)
      expect(change && planChangeText(change)).toBe(text)
    },
  )

  it.each([
    '',
    'fewer-batches',
    'fewer-batches:plum-jam',
    'fewer-batches:plum-jam:0',
    'without-canner:a:b',
    'shorter-process:plum-jam:5',
    'without-canner:',
  ])('%j is none', (text) => expect(readPlanChange(text)).toBeNull())

  it('of something that the day does not have is refused', () => {
    expect(applyPlanChange(s1DayProblem, { kind: 'without-canner', cannerId: 'PC9' }).ok).toBe(false)
    expect(applyPlanChange(s1DayProblem, { kind: 'drop-preparation', preparationId: 'salsa' }).ok).toBe(false)
  })

  it('never makes a process shorter than published', () => {
    const changed = applyPlanChange(s1DayProblem, { kind: 'boiled-in-canners' })
    const minutes = changed.ok
      ? changed.value.preparations.map(({ process }) => [process.minutes, process.publishedMinutes, process.sterilise])
      : []
    expect(minutes).toEqual([
      [5, 5, true],
      [10, 10, false],
    ])
  })
})

describe('a saved plan', () => {
  it('reads back as it was, and anything else is said to be no plan', () => {
    expect(SavedDayPlan.parse(JSON.parse(JSON.stringify(plan)))).toEqual(plan)
    expect(SavedDayProblem.parse(JSON.parse(JSON.stringify(s1DayProblem)))).toEqual(s1DayProblem)
    expect(SavedDayPlan.safeParse({ ...plan, loads: [{ code: 'L01' }] }).success).toBe(false)
  })
})
