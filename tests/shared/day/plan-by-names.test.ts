import { describe, expect, it } from 'vitest'
import { planDayByNames, planOnceByNames } from '@/shared/day/plan-by-names'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { s1DayProblem, s1OneCanner } from '../../fixtures/s1-day-problem'

/** The same day with other ids, and its lists in another order. */
function renamed(problem: DayProblem, prefix: string): DayProblem {
  const ids = [
    ...[problem.preparations, problem.kettles, problem.canners, problem.burners, problem.people, problem.households].flatMap((list) =>
      list.map(({ id }) => id),
    ),
  ]
  const text = JSON.stringify(problem, (_, value) => (typeof value === 'string' && ids.includes(value) ? other(prefix, value) : value))
  return JSON.parse(text) as DayProblem
}

/** Ids in the reverse of their old order: whoever goes by id would choose the other way round. */
const other = (prefix: string, id: string) =>
  `${prefix}${[...id].map((letter) => (159 - (letter.codePointAt(0) ?? 0)).toString(36).padStart(2, '0')).join('')}`

/** What a reader sees: names, labels and times. */
function seen(problem: DayProblem, plan: DayPlan) {
  const label = (list: readonly { id: string; label?: string; name?: string }[], id: string) => {
    const found = list.find((one) => one.id === id)
    return found?.label ?? found?.name ?? `unknown ${id}`
  }
  return plan.loads.map((load) => [
    load.code,
    label(problem.canners, load.cannerId),
    label(problem.people, load.operatorId),
    load.loadAt,
    ...load.batchParts.map((part) => plan.batches.find(({ id }) => id === part.batchId)?.code),
  ])
}

describe('planning by names', () => {
  it('gives the same timetable whatever the ids are', () => {
    const plans = [s1DayProblem, renamed(s1DayProblem, 'x'), renamed(s1DayProblem, 'a')].map((problem) => {
      const planned = planOnceByNames(problem)
      if (!planned.ok) throw new Error(JSON.stringify(planned.problem))
      return seen(problem, planned.value)
    })
    expect(plans[1]).toEqual(plans[0])
    expect(plans[2]).toEqual(plans[0])
    expect(JSON.stringify(plans)).not.toContain('unknown')
  })

  it('answers in the day’s own ids, refusals too', () => {
    const refused = planDayByNames(s1OneCanner)
    const drop = refused.ok ? [] : refused.problem.waysOut.map((way) => way.change).filter((change) => change.kind === 'drop-preparation')
    expect(drop.map(({ preparationId }) => preparationId)).toEqual(['plum-jam', 'dill-pickles'])
  })
})
