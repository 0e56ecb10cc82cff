import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type WorkAndJars, workBesideJars } from '@/shared/share/work-beside-jars'

const line = (householdName: string, more: Partial<WorkAndJars> = {}): WorkAndJars => ({
  ...{ householdId: householdName.toLowerCase(), householdName, promisedMinutes: 0, plannedMinutes: 0, countedMinutes: null },
  ...{ jars: 0, millilitres: 0 },
  ...more,
})
const parts = (households: readonly WorkAndJars[]) =>
  workBesideJars(households).lines.map(({ householdName, workPercent, foodPercent }) => [householdName, workPercent, foodPercent])

describe('work beside jars', () => {
  it('stands by household name, whoever does or gets more, and leaves out who does and gets nothing', () => {
    const households = [
      line('Cedar', { plannedMinutes: 600, jars: 2, millilitres: 474 }),
      line('birch'),
      line('Ash', { plannedMinutes: 200, jars: 3, millilitres: 1422 }),
    ]
    expect(parts(households)).toEqual([
      ['Ash', 25, 75],
      ['Cedar', 75, 25],
    ])
  })

  it('is taken from what was counted, else from the plan, else from what was promised', () => {
    const [promised, planned, counted] = [{ promisedMinutes: 60 }, { plannedMinutes: 120 }, { countedMinutes: 90 }]
    expect(workBesideJars([line('Ash', promised)]).basis).toBe('promised')
    expect(workBesideJars([line('Ash', { ...promised, ...planned })]).basis).toBe('planned')
    const table = workBesideJars([line('Ash', { ...promised, ...planned, ...counted }), line('Birch', planned)])
    expect(table.basis).toBe('counted')
    expect(table.lines.map(({ workPercent }) => workPercent)).toEqual([100, 0])
    expect(table.sums).toEqual({ promisedMinutes: 60, plannedMinutes: 240, countedMinutes: 90, jars: 0, millilitres: 0 })
  })

  it('says no part of nothing', () => {
    expect(parts([line('Ash', { jars: 1, millilitres: 473 })])).toEqual([['Ash', null, 100]])
    expect(workBesideJars([])).toMatchObject({ lines: [], basis: 'promised' })
    expect(parts([line('Ash', { countedMinutes: 0, promisedMinutes: 30 })])).toEqual([['Ash', 100, null]])
  })

  it('has parts that add up to 100 %', () => {
    const one = fc.record({ planned: fc.nat(2000), jars: fc.nat(40) })
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 40 }), (rows) => {
        const { lines } = workBesideJars(
          rows.map(({ planned, jars }, index) => line(`H${index}`, { plannedMinutes: planned, jars, millilitres: jars * 473 })),
        )
        for (const part of ['workPercent', 'foodPercent'] as const) {
          const known = lines.flatMap((each) => each[part] ?? [])
          if (known.length > 0) expect(known.reduce((sum, percent) => sum + percent, 0)).toBe(100)
        }
      }),
    )
  })
})
