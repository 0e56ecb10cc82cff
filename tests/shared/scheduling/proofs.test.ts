import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseCanningDay } from '@/shared/forms/canning-day'
import type { CanningDay } from '@/shared/scheduling/day/canning-day'
import { modelOf } from '@/shared/scheduling/day/day-model'
import { finishBound } from '@/shared/scheduling/day/finish-bounds'
import { improve, startSearch } from '@/shared/scheduling/day/improve-day'
import { impossibleReasons } from '@/shared/scheduling/day/refuse-canning-day'
import { decodeList, decoderOf, emptyDecoded } from '@/shared/scheduling/project/decode-list'
import { improveProject, startProjectSearch } from '@/shared/scheduling/project/improve-project'
import { mayPlanOn, planOn, startProjectPlanner } from '@/shared/scheduling/project/plan-project'
import { type Project, type ProjectSchedule, scheduleFault } from '@/shared/scheduling/project/project'
import { emptyLesson, learn } from '@/shared/scheduling/proof/learn'
import { mayProveMoreOfDay, proveDayOn, startDayProof } from '@/shared/scheduling/proof/prove-day'
import { mayProveMore, type ProjectProof, proveOn, startProjectProof } from '@/shared/scheduling/proof/prove-project'
import { addVariable, because, DECIDED, emptyStore, explain, openLevel, raise } from '@/shared/scheduling/proof/store'
import { scheduleWithWaits } from '@/shared/scheduling/waits/schedule-with-waits'
import { randomFrom, wholeBelow } from '@/shared/scheduling/random'
import type { WaitProject } from '@/shared/scheduling/waits/wait-project'

function readDay(name: string): CanningDay {
  const parsed = parseCanningDay(JSON.parse(readFileSync(new URL(`../../fixtures/canning-days/${name}.json`, import.meta.url), 'utf8')))
  if (!parsed.ok) throw new Error(`${name}: ${parsed.problem.field} ${parsed.problem.message}`)
  return parsed.value
}

/** Every order of the numbers below a count. */
function orders(count: number): number[][] {
  if (count === 0) return [[]]
  return orders(count - 1).flatMap((order) =>
    Array.from({ length: count }, (_, at) => [...order.slice(0, at), count - 1, ...order.slice(at)]),
  )
}

/** The least end of all schedules: some order of tasks, each as early as it fits, in some modes, reaches it. */
function leastEndOf(project: Project): number {
  const decoder = decoderOf(project, false)
  const count = project.tasks.length
  const into = emptyDecoded(count)
  const ways = project.tasks.reduce<number[][]>((all, task) => all.flatMap((modes) => task.modes.map((_, mode) => [...modes, mode])), [[]])
  let least = Number.POSITIVE_INFINITY
  for (const order of orders(count)) {
    const place = order.map((_, task) => order.indexOf(task))
    if (project.arcs.some((arc) => (place[arc.before] ?? 0) > (place[arc.after] ?? 0))) continue
    for (const modes of ways) {
      into.modes.set(modes)
      if (decodeList(decoder, order, into, new Uint8Array(count), Number.POSITIVE_INFINITY)) least = Math.min(least, into.makespan)
    }
  }
  return least
}

const aMode = (capacities: readonly number[]) =>
  fc.record({
    duration: fc.integer({ min: 0, max: 5 }),
    needs: fc.tuple(...capacities.map((capacity) => fc.integer({ min: 0, max: capacity }))),
  })

const aProject = fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 2 })).chain((capacities) =>
  fc.record({
    tasks: fc.array(fc.record({ modes: fc.array(aMode(capacities), { minLength: 1, maxLength: 2 }) }), { minLength: 5, maxLength: 5 }),
    arcs: fc.array(
      fc
        .tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 2 }))
        .filter(([before, after]) => before < after)
        .map(([before, after, lag]) => ({ before, after, lag })),
      { maxLength: 4 },
    ),
    capacities: fc.constant(capacities),
  }),
)

describe('what is proved of a project', () => {
  it('is the least end that any order and any modes give', () => {
    fc.assert(
      fc.property(aProject, (project) => {
        const least = leastEndOf(project)
        const proof = startProjectProof(project, 0, 60)
        for (let round = 0; round < 400 && mayProveMore(proof); round++) proveOn(proof, 50)
        expect([proof.found?.makespan, proof.bound]).toEqual([least, least])
        if (proof.found) expect(scheduleFault(project, proof.found)).toBeNull()
      }),
      { numRuns: 150, seed: 11 },
    )
  }, 60_000)

  it('is learned in clauses that the best schedule known keeps, every one', () => {
    for (let seed = 1; seed <= 8; seed++) {
      const project = crowdedProject(seed)
      const search = startProjectSearch(project, seed)
      improveProject(search, 100)
      const proof = startProjectProof(project, search.bound, search.best.makespan + 1)
      for (let round = 0; round < 6 && mayProveMore(proof); round++) {
        proveOn(proof, 50)
        expect([seed, ...brokenClauses(proof, search.best)]).toEqual([seed])
      }
      expect(proof.bound).toBeLessThanOrEqual(search.best.makespan)
    }
  }, 60_000)

  it('and what is found meet, whatever the planner leans to', () => {
    fc.assert(
      fc.property(aProject, fc.constantFrom('proof' as const, 'both' as const), (project, leaning) => {
        const planner = startProjectPlanner(project, 1, leaning)
        for (let round = 0; round < 400 && mayPlanOn(planner); round++) planOn(planner, 1)
        expect([planner.best.makespan, planner.bound]).toEqual([leastEndOf(project), planner.best.makespan])
        expect(scheduleFault(project, planner.best)).toBeNull()
      }),
      { numRuns: 60, seed: 12 },
    )
  }, 60_000)
})

describe('a lesson', () => {
  it('leaves no two literals out for one another', () => {
    const store = emptyStore()
    const [cause, a, b, decided] = [0, 1, 2, 3].map(() => 2 * addVariable(store, 0, 9)) as [number, number, number, number]
    const raiseFrom = (from: number, fromValue: number, to: number, value: number) => {
      const reason = explain(store)
      because(store, reason, from, fromValue)
      raise(store, to, value, reason)
    }
    openLevel(store)
    raise(store, cause, 1, DECIDED)
    raiseFrom(cause, 1, b, 3)
    raiseFrom(b, 3, a, 2)
    raiseFrom(a, 2, b, 5)
    openLevel(store)
    raise(store, decided, 1, DECIDED)
    store.conflict.push(a, 2, b, 5, decided, 1)
    const lesson = emptyLesson(() => undefined)
    learn(store, lesson, 1)
    // b at least 5 follows from a at least 2, which came first; a at least 2 must stay, for b at least 3 does not follow from the rest
    expect(lesson.learned).toEqual([decided + 1, 0, a + 1, -1])
  })
})

/** Thirty tasks that need much of four things. */
function crowdedProject(seed: number): Project {
  const random = randomFrom(seed)
  const upTo = (most: number) => 1 + wholeBelow(random, most)
  const tasks = Array.from({ length: 30 }, () => ({
    modes: [{ duration: upTo(10), needs: [0, 1, 2, 3].map(() => (random() < 0.6 ? upTo(8) : 0)) }],
  }))
  const arcs = tasks.flatMap((_, before) =>
    [0, 1].flatMap(() => {
      const after = before + upTo(9)
      return after < tasks.length ? [{ before, after, lag: 0 }] : []
    }),
  )
  return { tasks, arcs, capacities: [10, 12, 14, 16] }
}

/** Clauses and bounds of the root that a schedule breaks, as literals; yes-or-nos of order are read off its starts. */
function brokenClauses({ solver, starts, finish }: ProjectProof, schedule: ProjectSchedule): string[] {
  const { store, differences } = solver
  const value: number[] = []
  for (const [task, start] of starts.entries()) value[start] = schedule.starts[task] ?? 0
  value[finish] = schedule.makespan
  const sideOf = (side: number) => (side % 2 === 0 ? (value[side >> 1] ?? 0) : -(value[side >> 1] ?? 0))
  differences.condition.forEach((condition, index) => {
    if (condition < 0 || condition % 2 === 1 || (differences.from[index] ?? 0) % 2 === 1) return
    const keeps = sideOf(differences.to[index] ?? 0) >= sideOf(differences.from[index] ?? 0) + (differences.lag[index] ?? 0)
    value[condition >> 1] = keeps ? 1 : 0
  })
  const broken = store.clauses.filter(
    ({ literals }) => !literals.some((side, at) => at % 2 === 0 && sideOf(side) >= (literals[at + 1] ?? 0)),
  )
  const excluded = store.rootBound.flatMap((bound, side) => (sideOf(side) >= bound ? [] : [`side ${side} at least ${bound}`]))
  return [...broken.map(({ literals }) => literals.join(' ')), ...excluded]
}

/** Tries every start up to the horizon. */
function leastEndWithWaits({ tasks, lags, capacities }: WaitProject, horizon: number): number {
  let least = Number.POSITIVE_INFINITY
  const starts: number[] = [0]
  const place = (task: number) => {
    if (task === tasks.length) {
      if (isKept()) least = Math.min(least, starts.at(-1) ?? 0)
      return
    }
    for (let start = 0; start <= horizon; start++) {
      starts[task] = start
      place(task + 1)
    }
  }
  const isKept = () =>
    lags.every(({ from, to, lag }) => (starts[to] ?? 0) >= (starts[from] ?? 0) + lag) &&
    capacities.every((capacity, resource) =>
      starts.every((moment) => {
        const running = tasks.filter((task, index) => (starts[index] ?? 0) <= moment && moment < (starts[index] ?? 0) + task.duration)
        return running.reduce((sum, task) => sum + (task.needs[resource] ?? 0), 0) <= capacity
      }),
    )
  place(1)
  return least
}

describe('what is proved under longest waits', () => {
  const aWaitProject = fc.record({
    inner: fc.array(fc.record({ duration: fc.integer({ min: 1, max: 3 }), needs: fc.tuple(fc.integer({ min: 0, max: 2 })) }), {
      minLength: 3,
      maxLength: 3,
    }),
    waits: fc.array(fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 3 }), fc.integer({ min: -4, max: 3 })), {
      maxLength: 4,
    }),
  })
  it('is what trying every start gives, or that there is none', () => {
    let hopeless = 0
    fc.assert(
      fc.property(aWaitProject, ({ inner, waits }) => {
        const idle = { duration: 0, needs: [0] }
        const ends = inner.map(({ duration }, index) => ({ from: index + 1, to: 4, lag: duration }))
        const lags = [...waits.filter(([from, to]) => from !== to).map(([from, to, lag]) => ({ from, to, lag })), ...ends]
        const project: WaitProject = { tasks: [idle, ...inner, idle], lags, capacities: [2] }
        const least = leastEndWithWaits(project, 12)
        const answer = scheduleWithWaits(project, 5_000)
        expect([answer.makespan, answer.isProved]).toEqual([least, true])
        if (least === Number.POSITIVE_INFINITY) hopeless++
      }),
      { numRuns: 40, seed: 13 },
    )
    expect(hopeless).toBeGreaterThan(0)
  }, 120_000)
})

function provedEnd(day: CanningDay, known: number, conflicts: number): number {
  const model = modelOf(day)
  const proof = startDayProof(model, finishBound(model).slot, known)
  while (mayProveMoreOfDay(proof) && proof.solver.conflicts < conflicts) proveDayOn(proof, 100)
  return proof.bound
}

describe('what is proved of a day', () => {
  it.each([
    ['cd-s01', 220],
    ['cd-s03', 330],
  ] as const)('%s is that it cannot end before %i', (name, optimum) => {
    expect(provedEnd(readDay(name), optimum / 5, 5_000) * 5).toBe(optimum)
    // nor is more claimed when no plan is known
    expect(provedEnd(readDay(name), 121, 3_000) * 5).toBeLessThanOrEqual(optimum)
  })

  it('is never more than a plan reaches, on days cut out of known ones', () => {
    let [raised, closed] = [0, 0]
    const days = [readDay('cd-s05'), readDay('cd-m01'), readDay('cd-s03')]
    const cut = fc.constantFrom(...days).chain((whole) =>
      fc.record({
        whole: fc.constant(whole),
        batches: fc.subarray([...whole.batches], { minLength: 1, maxLength: 5 }),
        canners: fc.subarray([...whole.canners], { minLength: 2 }),
        kettles: fc.subarray([...whole.kettles], { minLength: 2 }),
        burners: fc.integer({ min: 3, max: 6 }),
        stoveWatch: fc.integer({ min: 1, max: 3 }),
        prepPlaces: fc.integer({ min: 2, max: 5 }),
        fillStations: fc.integer({ min: 1, max: 2 }),
      }),
    )
    fc.assert(
      fc.property(cut, ({ whole, ...parts }) => {
        const day: CanningDay = { ...whole, ...parts }
        const model = modelOf(day)
        if (impossibleReasons(model).length > 0) return
        const bound = finishBound(model).slot
        const search = startSearch(model, bound, 1)
        improve(search, 400)
        if (!search.best) return
        const proved = provedEnd(day, search.best.finish + 2, 1_500)
        expect(proved).toBeLessThanOrEqual(search.best.finish)
        if (proved > bound) raised++
        if (proved === search.best.finish) closed++
      }),
      { numRuns: 60, seed: 14 },
    )
    expect(raised).toBeGreaterThan(10)
    expect(closed).toBeGreaterThan(20)
  }, 120_000)
})
