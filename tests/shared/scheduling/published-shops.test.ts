import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { endOfFlow, improveFlow, startFlowSearch } from '@/shared/scheduling/flow/order-flow'
import { fewestLoadMinutes } from '@/shared/scheduling/loads/fewest-load-minutes'
import { scheduleWithWaits } from '@/shared/scheduling/waits/schedule-with-waits'
import type { WaitProject } from '@/shared/scheduling/waits/wait-project'
import { readBatchMachine, readFlowShop, readWaitProject } from '@/tests/support/read-published'

const textOf = (name: string) => readFileSync(new URL(`../../fixtures/published/${name}`, import.meta.url), 'utf8')

describe('projects with least and longest waits', () => {
  const instances = [
    ['sm_j10_PSP1.SCH', 26],
    ['sm_j10_PSP3.SCH', 36],
    ['sm_j10_PSP5.SCH', 32],
  ] as const
  it.each(instances)('%s is proved to end at %i', (name, optimum) => {
    const project = readWaitProject(textOf(name))
    const answer = scheduleWithWaits(project, 20_000)
    expect([answer.makespan, answer.isProved]).toEqual([optimum, true])
    expect(waitFault(project, answer.starts ?? [])).toBeNull()
  })

  // two tasks of 4 on one machine; the second begins at most 2 after the first, which cannot be
  const pressed: WaitProject = {
    tasks: [
      { duration: 0, needs: [0] },
      { duration: 4, needs: [1] },
      { duration: 4, needs: [1] },
      { duration: 0, needs: [0] },
    ],
    lags: [
      { from: 0, to: 1, lag: 0 },
      { from: 1, to: 2, lag: 0 },
      { from: 2, to: 1, lag: -2 },
      { from: 2, to: 3, lag: 4 },
      { from: 1, to: 3, lag: 4 },
    ],
    capacities: [1],
  }

  it('have no schedule, and that is proved, when a longest wait cannot be met', () => {
    expect(scheduleWithWaits(pressed, 1_000)).toMatchObject({ starts: null, isProved: true })
  })

  it('are scheduled as soon as the wait is long enough', () => {
    const eased = { ...pressed, lags: pressed.lags.map((lag) => (lag.lag === -2 ? { ...lag, lag: -4 } : lag)) }
    expect(scheduleWithWaits(eased, 1_000)).toMatchObject({ starts: [0, 0, 4, 8], makespan: 8, isProved: true })
  })

  it('say that nothing is proved when the search is cut short', () => {
    expect(scheduleWithWaits(readWaitProject(textOf('sm_j10_PSP3.SCH')), 1).isProved).toBe(false)
  })
})

function waitFault({ tasks, lags, capacities }: WaitProject, starts: readonly number[]): string | null {
  const broken = lags.find((lag) => (starts[lag.to] ?? 0) < (starts[lag.from] ?? 0) + lag.lag)
  if (broken) return `${broken.to} does not wait for ${broken.from}`
  for (const [resource, capacity] of capacities.entries()) {
    for (const start of starts) {
      const used = tasks.reduce(
        (sum, task, index) =>
          sum + ((starts[index] ?? 0) <= start && start < (starts[index] ?? 0) + task.duration ? (task.needs[resource] ?? 0) : 0),
        0,
      )
      if (used > capacity) return `resource ${resource} at ${start}`
    }
  }
  return null
}

describe('stages in a row', () => {
  it('ta001 is ordered to its published optimum', () => {
    const times = readFlowShop(textOf('ta001.txt'))
    const search = startFlowSearch(times, 1)
    for (let round = 0; round < 40 && search.best.makespan > 1278; round++) improveFlow(search, 20)
    expect(search.best.makespan).toBe(1278)
    expect(endOfFlow(times, search.best.order)).toBe(1278)
    expect([...search.best.order].sort((a, b) => a - b)).toEqual(times.map((_, job) => job))
  })

  it('never claims an end that its order does not have', () => {
    const someTimes = fc
      .integer({ min: 2, max: 4 })
      .chain((stages) =>
        fc.array(fc.array(fc.integer({ min: 1, max: 30 }), { minLength: stages, maxLength: stages }), { minLength: 2, maxLength: 8 }),
      )
    fc.assert(
      fc.property(someTimes, (times) => {
        const search = startFlowSearch(times, 3)
        improveFlow(search, 5)
        expect(endOfFlow(times, search.best.order)).toBe(search.best.makespan)
        const busiest = Math.max(...times.map((row) => row.reduce((sum, minutes) => sum + minutes, 0)))
        expect(search.best.makespan).toBeGreaterThanOrEqual(busiest)
      }),
      { numRuns: 60, seed: 2 },
    )
  })
})

describe('loads of one canner', () => {
  it.each([
    ['p1s1_1.txt', 54],
    ['p2s2_1.txt', 25],
  ] as const)('%s takes %i at least, and no more', (name, optimum) => {
    const { capacity, jobs } = readBatchMachine(textOf(name))
    const items = jobs.map((job) => ({ size: job.size, minutes: job.time }))
    const answer = fewestLoadMinutes(items, capacity)
    expect(answer?.minutes).toBe(optimum)
    expect(answer?.loads.flat().sort((a, b) => a - b)).toEqual(items.map((_, index) => index))
    for (const load of answer?.loads ?? [])
      expect(load.reduce((sum, index) => sum + (items[index]?.size ?? 0), 0)).toBeLessThanOrEqual(capacity)
  })

  it('are none for a tray that is larger than the canner', () => {
    expect(fewestLoadMinutes([{ size: 8, minutes: 10 }], 7)).toBeNull()
  })

  it('are never fewer than the bound says, and the fewest where every way can be tried', () => {
    const someItems = fc.array(fc.record({ size: fc.integer({ min: 1, max: 9 }), minutes: fc.integer({ min: 1, max: 20 }) }), {
      minLength: 1,
      maxLength: 20,
    })
    fc.assert(
      fc.property(someItems, (items) => {
        const all = fewestLoadMinutes(items, 10)
        expect(all?.minutes).toBeGreaterThanOrEqual(all?.bound ?? Number.POSITIVE_INFINITY)
        expect(all?.loads.flat().sort((a, b) => a - b)).toEqual(items.map((_, index) => index))
        for (const load of all?.loads ?? []) expect(load.reduce((sum, index) => sum + (items[index]?.size ?? 0), 0)).toBeLessThanOrEqual(10)
        const few = items.slice(0, 6)
        expect(fewestLoadMinutes(few, 10)?.minutes).toBe(fewestByTrying(few, 10))
      }),
      { numRuns: 40, seed: 3 },
    )
  })

  it('hold everything, also when there are too many to try every way', () => {
    const items = Array.from({ length: 40 }, (_, index) => ({ size: 1 + (index % 7), minutes: 10 + ((index * 13) % 29) }))
    const answer = fewestLoadMinutes(items, 9)
    expect(answer?.loads.flat().sort((a, b) => a - b)).toEqual(items.map((_, index) => index))
    for (const load of answer?.loads ?? []) expect(load.reduce((sum, index) => sum + (items[index]?.size ?? 0), 0)).toBeLessThanOrEqual(9)
  })
})

/** The fewest minutes of all ways to put items into loads, one after another into each that is there or a new one. */
function fewestByTrying(items: readonly { readonly size: number; readonly minutes: number }[], capacity: number): number {
  const place = (at: number, loads: readonly { readonly size: number; readonly minutes: number }[]): number => {
    const item = items[at]
    if (!item) return loads.reduce((sum, load) => sum + load.minutes, 0)
    const joined = loads.flatMap((load, index) =>
      load.size + item.size > capacity
        ? []
        : [loads.with(index, { size: load.size + item.size, minutes: Math.max(load.minutes, item.minutes) })],
    )
    return Math.min(...[...joined, [...loads, item]].map((next) => place(at + 1, next)))
  }
  return place(0, [])
}
