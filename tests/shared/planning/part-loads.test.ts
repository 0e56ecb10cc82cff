import { describe, expect, it } from 'vitest'
import { partLoads } from '@/shared/planning/part-loads'
import { planOnce } from '@/shared/planning/plan-once'
import { sayPartLoad } from '@/shared/wording/say-part-loads'
import { plumJam, s1DayProblem } from '@/tests/fixtures/s1-day-problem'

const answer = planOnce(s1DayProblem)
if (!answer.ok) throw new Error('the evening has no plan')
const plan = answer.value
const jamIn = (halfPints: number) => ({
  ...s1DayProblem,
  canners: s1DayProblem.canners.map((canner) => ({ ...canner, capacity: { ...canner.capacity, 'half-pint': halfPints } })),
})
const ofJam = (halfPints: number) => partLoads(jamIn(halfPints), plan).filter(({ preparationId }) => preparationId === plumJam.id)
const jamLoads = plan.loads.filter(({ preparationId }) => preparationId === plumJam.id)
const [first] = jamLoads
const jars = first?.batchParts.reduce((sum, part) => sum + part.jars.typical, 0) ?? 0

describe('loads with free places', () => {
  it('are none where every canner is full', () => {
    expect(ofJam(jars)).toEqual([])
  })

  it('are told by their batch where one more would not fit', () => {
    expect(ofJam(12)).toEqual([{ preparationId: plumJam.id, loads: jamLoads.length, jars, places: 12, why: 'batch' }])
    expect(ofJam(12).map((part) => sayPartLoad(s1DayProblem, part))).toEqual([
      `Plum jam: ${jamLoads.length} loads of ${jars} half-pints where 12 have room. One more batch would not fit, and a tested batch is neither cut up nor made larger.`,
    ])
  })

  it('are told by the waiting of filled jars where one more would fit', () => {
    expect(ofJam(40)[0]?.why).toBe('apart')
  })

  it('are told by what is wanted where nothing is left', () => {
    if (!first) throw new Error('no load of jam')
    const batches = plan.batches.filter(({ id }) => first.batchParts.some(({ batchId }) => batchId === id))
    const [only] = partLoads(jamIn(12), { ...plan, loads: [first], batches })
    expect(only).toMatchObject({ loads: 1, why: 'rest' })
    expect(only && sayPartLoad(s1DayProblem, only)).toBe(
      `Plum jam: one load of ${jars} half-pints where 12 have room. No more of it is wanted.`,
    )
  })
})
