import { describe, expect, it } from 'vitest'
import { planDay } from '@/shared/planning/plan-day'
import { staffingGaps } from '@/shared/planning/staffing-gaps'
import { sayAsk, sayCell, sayGap, sayWhyGap } from '@/shared/wording/say-staffing'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'

const answer = planDay(s1DayProblem)
if (!answer.ok) throw new Error('the evening was refused')
const plan = answer.value

describe('work that lacks somebody', () => {
  it('is named with its time, its skill, who is lost and who could do it', () => {
    const load = plan.loads[0]
    const leaver = s1DayProblem.people.find(({ id }) => id === load?.operatorId)
    if (!leaver) return expect.unreachable()
    const without = { ...s1DayProblem, people: s1DayProblem.people.filter(({ id }) => id !== leaver.id) }
    const { gaps } = staffingGaps(without, plan)
    expect(gaps.length).toBeGreaterThan(0)
    for (const gap of gaps) {
      expect(sayGap(without, plan, gap)).toMatch(/^\d\d:\d\d to \d\d:\d\d, [A-Z].+: .+\.$/)
      expect(sayWhyGap(without, gap)).toMatch(/wanted\.$/)
      for (const ask of gap.ask) expect(sayAsk(without, plan, ask)).toMatch(/^[A-Z].+\.$/)
    }
    expect(gaps.map((gap) => sayWhyGap(without, gap)).join()).toContain('Somebody who left was to do it')
  })

  it('says a half hour by counts, and nothing where nobody is wanted', () => {
    expect(sayCell({ wanted: 3, present: 2 })).toBe('2 of 3')
    expect(sayCell({ wanted: 0, present: 4 })).toBe('')
  })
})
