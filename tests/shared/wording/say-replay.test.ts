import { describe, expect, it } from 'vitest'
import { applyPlanChange, planChangeText, readPlanChange } from '@/shared/day/apply-plan-change'
import { isStillTheSame } from '@/shared/day/plan-age'
import { lastStarts } from '@/shared/planning/last-start'
import { planOnce } from '@/shared/planning/plan-once'
import { replayPlan } from '@/shared/planning/replay-plan'
import { CHANCES } from '@/shared/planning/robust-plan'
import { sayBrokenWait, sayEnds, sayInTime, sayKeptLonger, sayLastStarts, sayUsualSpread } from '@/shared/wording/say-replay'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'

const answer = planOnce(s1DayProblem)
if (!answer.ok) throw new Error('the evening was refused')
const plan = answer.value
const replay = {
  ...replayPlan(s1DayProblem, plan, 1, 100),
  finishes: Array.from({ length: 100 }, (_, index) => 1280 + Math.floor(index / 5)),
}

describe('a replay in words', () => {
  it('says when the plan ends, and by when 8 of 10 and 19 of 20 such days end', () => {
    expect(sayEnds(plan, replay)).toBe(
      'Ends 21:25 if everything takes as long as planned. 8 of 10 such days end by 21:35, 19 of 20 by 21:38.',
    )
  })

  it('says how often the canners are empty in time, as a count and never as a share', () => {
    expect(sayInTime(s1DayProblem, replay)).toBe('The canners are to be empty by 21:35: they are in 8 of 10 such days.')
  })

  it('names the batch, the wait and what to do', () => {
    const wait = {
      batchId: plan.batches[0]?.id ?? '',
      kind: 'filled-to-loaded' as const,
      limitMinutes: 15,
      chance: 0.42,
      longestMinutes: 23,
    }
    expect(sayBrokenWait(plan, wait)).toBe(
      `${plan.batches[0]?.code}: in 4 of 10 such days its filled jars would wait longer than 15 min for their canner, up to 23. Fill it only when the canner is nearly free.`,
    )
    for (const kind of ['cooked-to-filling', 'washed-to-filling'] as const) expect(sayBrokenWait(plan, { ...wait, kind })).toMatch(/\.$/)
  })

  it('names who would be kept', () => {
    expect(sayKeptLonger(s1DayProblem, { personId: 'p4', chance: 0.35, longestMinutes: 10 })).toContain(
      'Dov would have to stay up to 10 min longer in 3 of 10',
    )
  })

  it('gives the last kettle of each product', () => {
    expect(sayLastStarts(lastStarts(s1DayProblem, 0.9, 1))).toMatch(/^No new kettle after 20:\d\d \(D\) or 20:\d\d \(J\)\.$/)
    expect(sayLastStarts([])).toBe('')
  })

  it('says what rests on common practice', () => {
    expect(sayUsualSpread(s1DayProblem, { runs: 1000 })).toContain('1,000 times')
    expect(sayUsualSpread(s1DayProblem, { runs: 1000 })).toContain('common practice')
  })
})

describe('planning for slower hands', () => {
  it('is written and read back for each chance, and for no other', () => {
    for (const chance of CHANCES) expect(readPlanChange(planChangeText({ kind: 'surer', chance }))).toEqual({ kind: 'surer', chance })
    expect(readPlanChange('surer:85')).toBeNull()
  })

  it('makes a day that can be planned and is still the same day', () => {
    const changed = applyPlanChange(s1DayProblem, { kind: 'surer', chance: 0.9 })
    if (!changed.ok) throw new Error('not changed')
    expect(planOnce(changed.value).ok).toBe(true)
    expect(isStillTheSame(changed.value, s1DayProblem)).toBe(true)
  })
})
