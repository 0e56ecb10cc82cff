import { describe, expect, it } from 'vitest'
import type { DayPlan, PlannedTask, PlanTaskKind } from '@/shared/planning/day-plan'
import { planOnce } from '@/shared/planning/plan-once'
import { minutesOfEachHour, mostAndLeast, workLoads } from '@/shared/planning/work-load'
import { sayBreaks, sayEvenness, sayOwnLoad } from '@/shared/wording/say-work-load'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'

const answer = planOnce(s1DayProblem)
if (!answer.ok) throw new Error('the evening has no plan')
const evening = answer.value

const [person] = s1DayProblem.people
const task = (kind: PlanTaskKind, start: number, end: number): PlannedTask => ({
  ...{ id: `${kind}/${start}`, kind, start, end, attention: 'hands-on', peopleIds: [person?.id ?? ''] },
  ...{ kettleId: null, burnerId: null, cannerId: null, tableIndex: null, batchId: null, loadId: null },
})
const of = (...tasks: PlannedTask[]) => {
  const plan: DayPlan = { ...evening, tasks }
  const found = workLoads(s1DayProblem, plan).find(({ personId }) => personId === person?.id)
  if (!found) throw new Error('nobody')
  return found
}

describe('what a day asks of a person', () => {
  it('counts two things at once only once, and neither briefing, break nor cleaning up', () => {
    const load = of(
      task('brief', 1035, 1050),
      task('process', 1100, 1130),
      task('cook', 1120, 1140),
      task('break', 1150, 1180),
      task('clean-up', 1285, 1325),
    )
    expect(load).toMatchObject({ workMinutes: 40, heatMinutes: 40, standingMinutes: 40, breaks: [{ start: 1150, end: 1180 }] })
  })

  it('tells seat work from standing, and heat from tables', () => {
    expect(of(task('prep', 1060, 1080), task('fill', 1080, 1095), task('label', 1095, 1100), task('load', 1100, 1105))).toMatchObject({
      ...{ workMinutes: 45, heatMinutes: 5, standingMinutes: 20 },
    })
  })

  it('joins work with less than ten minutes between it, and ends a stretch at ten', () => {
    expect(of(task('prep', 1060, 1080), task('wash', 1089, 1100)).longestStretchMinutes).toBe(40)
    expect(of(task('prep', 1060, 1080), task('wash', 1090, 1100)).longestStretchMinutes).toBe(20)
    expect(of().longestStretchMinutes).toBe(0)
  })

  it('agrees with the evening: nobody works longer than they are there', () => {
    for (const load of workLoads(s1DayProblem, evening)) {
      expect(load.workMinutes).toBeLessThanOrEqual(load.thereMinutes)
      expect(load.heatMinutes).toBeLessThanOrEqual(load.standingMinutes)
      expect(load.standingMinutes).toBeLessThanOrEqual(load.workMinutes)
      expect(load.longestStretchMinutes).toBeGreaterThanOrEqual(load.workMinutes === 0 ? 0 : 1)
    }
  })
})

describe('its words', () => {
  it('name the fullest hours and who has time, with a next step and no blame', () => {
    const loads = workLoads(s1DayProblem, evening)
    const ends = mostAndLeast(loads)
    if (!ends) throw new Error('nobody works')
    expect(minutesOfEachHour(ends.most)).toBeGreaterThan(minutesOfEachHour(ends.least))
    expect(sayEvenness(s1DayProblem, loads)).toMatch(
      /^Of each hour that they are there, people work \d+ to \d+ min\. \S+ has the fullest hours, \S+ has the most time free: /,
    )
    const even = loads.map((load) => ({ ...load, workMinutes: load.thereMinutes / 2 }))
    expect(sayEvenness(s1DayProblem, even)).toBe('Of each hour that they are there, people work 30 min. That is shared evenly.')
    expect(sayEvenness(s1DayProblem, [])).toBe('')
  })

  it('say a person their own', () => {
    expect(sayOwnLoad(of(task('load', 1100, 1105), task('prep', 1110, 1180), task('break', 1185, 1215)))).toBe(
      '1 h 15 min of work, 5 min of it at kettles and canners, 1 h 20 min at most without a pause. Break 19:45 to 20:15.',
    )
    expect(sayOwnLoad(of(task('cook', 1100, 1120)))).toBe(
      '20 min of work, all of it at kettles and canners, 20 min at most without a pause.',
    )
    expect(sayOwnLoad(of(task('clean-up', 1285, 1325)))).toBe('No work is planned but the briefing and cleaning up.')
    expect(sayBreaks([])).toBe('none')
  })
})
