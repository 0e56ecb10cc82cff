import { breakRuleOf } from '@/shared/planning/breaks'
import type { DayProblem } from '@/shared/planning/day-problem'
import { usualMinutesOf } from '@/shared/planning/robust-plan'

/**
 * Whether the day is still the one that its plan was made for: hours, kitchen, equipment, people and processes.
 *
 * How many jars are planned is left aside, and so is how slow the stages were taken to be: both may have been chosen while planning. The order
 * of keys does not matter, so a problem that was stored in between compares like a fresh one.
 */
export const isStillTheSame = (planned: DayProblem, now: DayProblem): boolean => facts(planned) === facts(now)

function facts(problem: DayProblem): string {
  const canners = problem.canners.map(({ usable: _, whyNot: __, ...canner }) => canner)
  const preparations = problem.preparations.map(asUsual)
  const chilled = problem.chilled?.map(({ jarsWanted: _, spare: __, ...work }) => work)
  return JSON.stringify({ ...problem, breaks: breakRuleOf(problem), locks: undefined, canners, preparations, chilled }, inKeyOrder)
}

function asUsual({
  jarsWanted: _,
  spare: __,
  ranges: ___,
  alternatives: ____,
  usualMinutes,
  ...preparation
}: DayProblem['preparations'][number]) {
  const { prep, kettle, comeUp } = usualMinutes ?? usualMinutesOf(preparation)
  const cycle = { ...preparation.cycle, comeUpMinutes: comeUp }
  return { ...preparation, prep: { ...preparation.prep, workMinutes: prep }, kettleMinutes: kettle, cycle }
}

const inKeyOrder = (_: string, value: unknown): unknown =>
  value !== null && typeof value === 'object' && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
    : value
