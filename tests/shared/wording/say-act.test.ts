import { describe, expect, it } from 'vitest'
import { planOnce } from '@/shared/planning/plan-once'
import { sayAct, sayCalled } from '@/shared/wording/say-act'
import { s1DayProblem } from '../../fixtures/s1-day-problem'

const planned = planOnce(s1DayProblem)
if (!planned.ok) throw new Error('the evening has a plan')
const plan = planned.value
const taskOf = (kind: string) => {
  const task = plan.tasks.find((one) => one.kind === kind)
  if (!task) throw new Error(`no ${kind}`)
  return task
}
const named = (id: string) => s1DayProblem.people.find((person) => person.id === id)?.name

describe('who is called out on the wall', () => {
  it('keeps a kettle and a canner as they are labelled', () => {
    const cook = taskOf('cook')
    const labelled = { ...s1DayProblem, kettles: s1DayProblem.kettles.map((kettle) => ({ ...kettle, label: kettle.id })) }
    expect(sayCalled(labelled, cook)).toBe(`${cook.peopleIds.map(named).join(', ')}, ${cook.kettleId}`)
    expect(sayCalled(s1DayProblem, taskOf('load'))).toMatch(/, Canner \d$/)
  })

  it('names the fill table in passing, and no station where there is none', () => {
    expect(sayCalled(s1DayProblem, taskOf('fill'))).toMatch(/, fill table$/)
    expect(sayCalled(s1DayProblem, taskOf('brief'))).toBe('Everybody')
  })
})

describe('an act on the wall', () => {
  const CALLED_OUT = ['brief', 'cook', 'fill', 'load', 'come-up', 'rest', 'unload', 'clean-up']

  it('is short enough for two or three lines in each language, for all that is called out', () => {
    for (const task of plan.tasks.filter(({ kind }) => CALLED_OUT.includes(kind))) {
      for (const language of ['en', 'es'] as const) expect(sayAct(s1DayProblem, plan, task, language).length).toBeLessThanOrEqual(50)
    }
  })

  it('goes on after the name in English and says the same jars in Spanish', () => {
    expect(sayAct(s1DayProblem, plan, taskOf('come-up'))).toBe('start the clock only at a full boil.')
    expect(sayAct(s1DayProblem, plan, taskOf('load'))).toMatch(/^load 8 jars of [DJ]\d\.$/)
    expect(sayAct(s1DayProblem, plan, taskOf('load'), 'es')).toMatch(/^Cargar 8 frascos de [DJ]\d\.$/)
  })

  it('leaves the published headspace, and that of the recipe where no table holds one', () => {
    const fill = plan.tasks.find((task) => task.kind === 'fill' && task.batchId?.startsWith('plum-jam')) ?? taskOf('fill')
    const preparations = s1DayProblem.preparations.map((each) => (each.id === 'plum-jam' ? { ...each, recipeId: 'plum-jam' } : each))
    expect(sayAct({ ...s1DayProblem, preparations }, plan, fill)).toMatch(/^8 jars of J\d\. Leave ¼ in \(6 mm\)\.$/)
    expect(sayAct(s1DayProblem, plan, fill)).toContain('Leave the recipe’s headspace.')
  })
})
