import { expect, it } from 'vitest'
import { isStillTheSame } from '@/shared/day/plan-age'
import { s1DayProblem } from '../../fixtures/s1-day-problem'

it('takes a day for the same whatever the order of its keys, and for another when an hour, a person or a process differs', () => {
  const [first, ...others] = s1DayProblem.canners
  const reordered = {
    ...s1DayProblem,
    canners: [{ ...first, capacity: { 'half-pint': 12, pint: 9, quart: 7 } }, ...others],
  } as typeof s1DayProblem
  expect(isStillTheSame(s1DayProblem, reordered)).toBe(true)
  const fewer = { ...s1DayProblem, preparations: s1DayProblem.preparations.map((each) => ({ ...each, jarsWanted: 8 })) }
  expect(isStillTheSame(s1DayProblem, fewer)).toBe(true)
  expect(isStillTheSame(s1DayProblem, { ...s1DayProblem, people: s1DayProblem.people.slice(1) })).toBe(false)
  expect(isStillTheSame(s1DayProblem, { ...s1DayProblem, window: { ...s1DayProblem.window, hardEnd: 1340 } })).toBe(false)
  const longer = {
    ...s1DayProblem,
    preparations: s1DayProblem.preparations.map((each) => ({ ...each, process: { ...each.process, minutes: 15 } })),
  }
  expect(isStillTheSame(s1DayProblem, longer)).toBe(false)
})
