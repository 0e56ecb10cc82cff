import { describe, expect, it } from 'vitest'
import { planOnce } from '@/shared/planning/plan-once'
import { sayTask, taskStation } from '@/shared/wording/say-task'
import { s1DayProblem } from '../../fixtures/s1-day-problem'

const planned = planOnce(s1DayProblem)
if (!planned.ok) throw new Error('the evening has a plan')
const plan = planned.value
const [never] = plan.tasks as [(typeof plan.tasks)[number]]

describe('a task in words', () => {
  it('is one whole sentence in both languages, for every task of the evening', () => {
    for (const task of plan.tasks) {
      for (const language of ['en', 'es'] as const) expect(sayTask(s1DayProblem, plan, task, language)).toMatch(/^[^ ].*[a-z0-9)ó]\.$/i)
      expect(taskStation(s1DayProblem, task)).not.toBe('')
    }
  })

  it('never starts the clock before the boil, and never goes on after a boil lost', () => {
    const said = (kind: string) => sayTask(s1DayProblem, plan, plan.tasks.find((task) => task.kind === kind) ?? never)
    expect(said('come-up')).toBe('Start the clock only at a full boil.')
    expect(said('process')).toBe('10 min at a full boil. Boil lost: the full time again.')
  })

  it('leaves the published headspace, and that of the recipe where no table holds one', () => {
    const fill = plan.tasks.find((task) => task.kind === 'fill' && task.batchId?.startsWith('plum-jam')) ?? never
    const inLibrary = {
      ...s1DayProblem,
      preparations: s1DayProblem.preparations.map((each) => (each.id === 'plum-jam' ? { ...each, recipeId: 'plum-jam' } : each)),
    }
    expect(sayTask(inLibrary, plan, fill)).toMatch(/^Fill 8 half-pints of J\d\. Leave ¼ in \(6 mm\)\.$/)
    expect(sayTask(s1DayProblem, plan, fill)).toContain('Leave the headspace of the recipe.')
  })
})
