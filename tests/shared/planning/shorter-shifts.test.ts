import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { DayProblem } from '@/shared/planning/day-problem'
import { withShorterShifts } from '@/shared/planning/shorter-shifts'
import { sayShorterShifts } from '@/shared/wording/say-shifts'
import { s1DayProblem } from '@/tests/fixtures/s1-day-problem'

const [anybody] = s1DayProblem.people
if (!anybody) throw new Error('somebody comes')

const day = (
  limit: number | null,
  hours: readonly (readonly [from: number, until: number])[],
  skills: readonly string[] = [],
): DayProblem => ({
  ...s1DayProblem,
  window: { ...s1DayProblem.window, headcountLimit: limit },
  people: hours.map(([from, until], index) => ({
    ...anybody,
    id: `q${index}`,
    name: `Q${index}`,
    skills: index === 0 ? skills : [],
    from,
    until,
  })),
})
const most = ({ people }: DayProblem) =>
  Math.max(...people.map(({ from: at }) => people.filter(({ from, until }) => from <= at && at < until).length))

describe('shifts that overlap in a room that holds fewer', () => {
  it('are cut where they overlap, at whoever loses least', () => {
    const over = day(2, [
      [480, 780],
      [480, 800],
      [720, 1080],
    ])
    const cut = withShorterShifts(over)
    expect(cut?.shifts).toEqual([{ personId: 'q0', from: 480, until: 720 }])
    expect(cut && most(cut.problem)).toBe(2)
    expect(sayShorterShifts(over, cut?.shifts ?? [])).toBe('Q0 goes at 12:00')
  })

  it('let somebody come later where that costs less, and keep whoever minds canners', () => {
    const over = day(
      2,
      [
        [480, 730],
        [480, 1080],
        [720, 1080],
      ],
      ['boiling-water-operator'],
    )
    const cut = withShorterShifts(over)
    expect(cut?.shifts).toEqual([{ personId: 'q2', from: 730, until: 1080 }])
    expect(sayShorterShifts(over, cut?.shifts ?? [])).toBe('Q2 comes at 12:10')
  })

  it('stay as they are where the room holds them all, or nobody counted', () => {
    expect(
      withShorterShifts(
        day(3, [
          [480, 780],
          [480, 800],
          [720, 1080],
        ]),
      ),
    ).toBeNull()
    expect(
      withShorterShifts(
        day(null, [
          [480, 780],
          [480, 800],
          [720, 1080],
        ]),
      ),
    ).toBeNull()
  })

  it('are not cut below two hours: then too many have signed up', () => {
    expect(
      withShorterShifts(
        day(1, [
          [480, 600],
          [480, 590],
        ]),
      ),
    ).toBeNull()
  })

  it('never hold more than the room may, whatever the hours', () => {
    const shift = fc
      .tuple(fc.integer({ min: 400, max: 800 }), fc.integer({ min: 120, max: 500 }))
      .map(([from, length]) => [from, from + length] as const)
    fc.assert(
      fc.property(fc.array(shift, { minLength: 1, maxLength: 12 }), fc.integer({ min: 1, max: 8 }), (hours, limit) => {
        const over = day(limit, hours)
        const cut = withShorterShifts(over)
        if (!cut) return
        expect(most(cut.problem)).toBeLessThanOrEqual(limit)
        for (const [index, person] of cut.problem.people.entries()) {
          const [from = 0, until = 0] = hours[index] ?? []
          expect(person.from >= from && person.until <= until && person.until - person.from >= 120).toBe(true)
        }
      }),
    )
  })
})
