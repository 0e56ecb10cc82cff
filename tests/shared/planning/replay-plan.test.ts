import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lastStarts } from '@/shared/planning/last-start'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem, MinuteRange } from '@/shared/planning/day-problem'
import { planOnce } from '@/shared/planning/plan-once'
import { chanceEndedBy, finishAtChance, replayPlan } from '@/shared/planning/replay-plan'
import { robustPlan } from '@/shared/planning/robust-plan'
import { atShare } from '@/shared/planning/stage-ranges'
import { parseClock } from '@/shared/time/kitchen-time'
import { plumJam, s1DayProblem, s1JarsBoiledInCanners } from '@/tests/fixtures/s1-day-problem'
import { checkDayPlan } from '@/tests/support/check-day-plan'

const at = (clock: string) => {
  const parsed = parseClock(clock)
  return parsed.ok ? parsed.value : Number.NaN
}
const planned = (problem: DayProblem): DayPlan => {
  const answer = planOnce(problem)
  if (!answer.ok) throw new Error(`refused: ${JSON.stringify(answer.problem.limit)}`)
  return answer.value
}
const exactly = (minutes: number): MinuteRange => ({ low: minutes, typical: minutes, high: minutes, basis: 'published' })
const spread = (low: number, typical: number, high: number): MinuteRange => ({ low, typical, high, basis: 'common practice' })

/** The same day with nothing left to chance but what is given. */
const certain = (problem: DayProblem, comeUp?: MinuteRange): DayProblem => ({
  ...problem,
  preparations: problem.preparations.map((entry) => ({
    ...entry,
    ranges: {
      prep: exactly(entry.prep.workMinutes),
      kettle: exactly(entry.kettleMinutes),
      comeUp: comeUp ?? exactly(entry.cycle.comeUpMinutes),
    },
  })),
})

const oneLoad = certain({ ...s1DayProblem, preparations: [{ ...plumJam, jarsWanted: 8 }] }, spread(10, 12, 16))

describe('a plan played many times', () => {
  const plan = planned(s1DayProblem)
  const replay = replayPlan(s1DayProblem, plan, 7)

  it('ends 1,000 times, in order, the same for the same seed and otherwise for another', () => {
    expect(replay.finishes).toHaveLength(1000)
    expect(replay.finishes).toEqual([...replay.finishes].sort((a, b) => a - b))
    expect(replayPlan(s1DayProblem, plan, 7)).toEqual(replay)
    expect(replayPlan(s1DayProblem, plan, 8).finishes).not.toEqual(replay.finishes)
  })

  it('ends as planned when every stage takes as long as planned, and breaks no wait', () => {
    const few = {
      ...s1JarsBoiledInCanners,
      preparations: s1JarsBoiledInCanners.preparations.map((entry) => ({ ...entry, jarsWanted: 16 })),
    }
    for (const problem of [s1DayProblem, few]) {
      const day = certain({
        ...problem,
        people: problem.people.map((person) => ({ ...person, until: Math.max(person.until, at('23:00')) })),
      })
      const sure = replayPlan(day, planned(day), 1, 20)
      expect(new Set(sure.finishes)).toEqual(new Set([planned(day).finishAt]))
      expect([sure.brokenWaits, sure.keptLonger, sure.chanceInTime]).toEqual([[], [], 1])
    }
  })

  it('spreads one load as its come-up is spread', () => {
    const one = planned(oneLoad)
    const [load] = one.loads
    const ends = replayPlan(oneLoad, one, 3, 4000)
    const rest = one.finishAt - (load?.boilAt ?? 0)
    for (const share of [0.1, 0.5, 0.8, 0.95])
      expect(Math.abs(finishAtChance(ends, share) - ((load?.heatAt ?? 0) + atShare(spread(10, 12, 16), share) + rest))).toBeLessThan(1.2)
  })

  it('says which waits get too long, likeliest first, and how long they got', () => {
    expect(replay.brokenWaits.length).toBeGreaterThan(0)
    for (const wait of replay.brokenWaits) {
      expect(wait.chance).toBeGreaterThan(0)
      expect(wait.longestMinutes).toBeGreaterThan(wait.limitMinutes)
    }
    const chances = replay.brokenWaits.map((wait) => wait.chance)
    expect(chances).toEqual([...chances].sort((a, b) => b - a))
  })

  it('finds a broken wait as soon as a canner is certain to be late', () => {
    const late = certain(s1DayProblem)
    const slowCanner = {
      ...late,
      preparations: late.preparations.map((entry) => ({
        ...entry,
        ranges: { ...entry.ranges, comeUp: exactly(entry.cycle.comeUpMinutes + 40) },
      })),
    }
    const stuck = replayPlan(slowCanner, planned(late), 1, 10)
    expect(stuck.brokenWaits.some((wait) => wait.kind === 'filled-to-loaded' && wait.chance === 1)).toBe(true)
    expect(stuck.chanceInTime).toBe(0)
  })

  it('says whom it keeps past their hours', () => {
    const lastTask = plan.tasks.filter((task) => task.kind === 'unload').at(-1)
    const [who] = lastTask?.peopleIds ?? []
    const leaving = {
      ...s1DayProblem,
      people: s1DayProblem.people.map((person) => (person.id === who ? { ...person, until: plan.finishAt } : person)),
    }
    const kept = replayPlan(leaving, plan, 7).keptLonger.find((entry) => entry.personId === who)
    expect(kept?.chance).toBeGreaterThan(0.5)
  })

  it('gives the 80th of 100 finishes for 0.8', () => {
    const finishes = Array.from({ length: 100 }, (_, index) => index + 1)
    expect([0.5, 0.8, 0.95, 1].map((chance) => finishAtChance({ finishes }, chance))).toEqual([50, 80, 95, 100])
    expect(chanceEndedBy({ finishes }, 40)).toBe(0.4)
  })

  it('never ends sooner when every stage is slower', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1000 }), fc.integer({ min: 0, max: 20 }), (seed, more) => {
        const slower = {
          ...s1DayProblem,
          preparations: s1DayProblem.preparations.map((entry) => {
            const { comeUpMinutes } = entry.cycle
            return { ...entry, ranges: { comeUp: spread(comeUpMinutes - 1 + more, comeUpMinutes + more, comeUpMinutes + 5 + more) } }
          }),
        }
        const base = {
          ...slower,
          preparations: slower.preparations.map((entry) => ({
            ...entry,
            ranges: { comeUp: spread(entry.cycle.comeUpMinutes - 1, entry.cycle.comeUpMinutes, entry.cycle.comeUpMinutes + 5) },
          })),
        }
        const [a, b] = [replayPlan(base, plan, seed, 30), replayPlan(slower, plan, seed, 30)]
        for (const [index, finish] of a.finishes.entries()) expect(b.finishes[index]).toBeGreaterThanOrEqual(finish)
      }),
      { numRuns: 30 },
    )
  })
})

describe('the surer plan', () => {
  it('ends no later than the plain plan at the chance that was asked for, and breaks no rule', () => {
    const plain = replayPlan(s1DayProblem, planned(s1DayProblem), 7)
    for (const chance of [0.8, 0.9, 0.95]) {
      const surer = robustPlan(s1DayProblem, chance, 7)
      if (!surer) throw new Error('no plan')
      expect(finishAtChance(surer.replay, chance)).toBeLessThanOrEqual(finishAtChance(plain, chance))
      expect(checkDayPlan(surer.problem, surer.plan)).toEqual([])
    }
  })

  it('is null for a day that does not fit at all', () => {
    expect(robustPlan({ ...s1DayProblem, canners: s1DayProblem.canners.slice(0, 1) }, 0.8, 1)).toBeNull()
  })
})

describe('the last kettle', () => {
  it('leaves its canner empty in time, counted backwards when nothing is left to chance', () => {
    // jam 20 + 8 + 37, pickles 15 + 9 + 47 minutes before 21:35
    expect(lastStarts(certain(s1DayProblem), 0.9, 1)).toEqual([
      { preparationId: 'dill-pickles', code: 'D', title: 'Fresh-pack dill pickles', at: at('21:35') - 71 },
      { preparationId: 'plum-jam', code: 'J', title: 'Plum jam with liquid pectin', at: at('21:35') - 65 },
    ])
  })

  it('is sooner the surer it must be', () => {
    const [eight, nine, nineteen] = [0.8, 0.9, 0.95].map((chance) => lastStarts(s1DayProblem, chance, 1)[0]?.at ?? 0)
    expect(eight).toBeGreaterThanOrEqual(nine ?? 0)
    expect(nine).toBeGreaterThanOrEqual(nineteen ?? 0)
    expect(eight).toBeLessThan(at('21:35') - 71)
  })
})
