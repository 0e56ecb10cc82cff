import type { Project, ProjectSchedule } from '@/shared/scheduling/project/project'
import type { StartLag } from '@/shared/scheduling/waits/wait-project'
import { neverMoreThan, type Occupation, variablesOf } from '@/shared/scheduling/proof/cumulative'
import {
  addRule,
  atLeastAfter,
  atLeastOne,
  newSolver,
  provedLeast,
  type Solver,
  searchFor,
  settleRoot,
  variable,
} from '@/shared/scheduling/proof/solver'
import { leastOf, mostOf, type Store } from '@/shared/scheduling/proof/store'

/** An exact search over a project's schedules that end before a known one does. */
export type ProjectProof = {
  readonly project: Project
  readonly solver: Solver
  readonly starts: readonly number[]
  readonly ends: readonly number[]
  /** By task: a yes-or-no for each mode; empty where there is one. */
  readonly modes: readonly (readonly number[])[]
  readonly finish: number
  /** No schedule ends before this. */
  bound: number
  /** The best schedule this search has come upon; null while it has none. */
  found: ProjectSchedule | null
  /** Schedules that end after this are not looked for. */
  most: number
  rounds: number
}

/** Yes-or-nos and values together that a proof may keep count of; a larger project is not set out for. */
const MOST_ENTRIES = 3_000_000

/** Whether a project is small enough to be proved anything about, when one of its schedules ends then. */
export function mayBeProved(project: Project, known: number): boolean {
  const users = project.capacities.map(
    (_, resource) => project.tasks.filter((task) => task.modes.some((mode) => (mode.needs[resource] ?? 0) > 0)).length,
  )
  const pairs = users.reduce((sum, count) => sum + (count * (count - 1)) / 2, 0)
  return project.tasks.length * known + 2 * pairs < MOST_ENTRIES && project.capacities.length * known < MOST_ENTRIES && pairs < 60_000
}

/**
 * Sets out to prove what a project can reach.
 *
 * @param lags - waits from start to start besides the project's order
 * @param bound - a value known to be no more than the least end
 * @param known - end of a schedule that is known: only earlier ends are looked for
 */
export function startProjectProof(project: Project, bound: number, known: number, lags: readonly StartLag[] = []): ProjectProof {
  const solver = newSolver()
  const most = known - 1
  const shortest = project.tasks.map((task) => Math.min(...task.modes.map((mode) => mode.duration)))
  const starts = project.tasks.map((_, task) => variable(solver, 0, Math.max(0, most - (shortest[task] ?? 0))))
  const ends = project.tasks.map((task, index) =>
    task.modes.length === 1 ? (starts[index] ?? 0) : variable(solver, shortest[index] ?? 0, Math.max(most, shortest[index] ?? 0)),
  )
  const modes = project.tasks.map((task) => (task.modes.length === 1 ? [] : task.modes.map(() => variable(solver, 0, 1))))
  const finish = variable(solver, bound, Math.max(bound, most))
  const proof: ProjectProof = { project, solver, starts, ends, modes, finish, bound, found: null, most, rounds: 0 }
  /** What must be added to a task's end variable to have its end. */
  const rest = (task: number) => (modes[task]?.length === 0 ? (shortest[task] ?? 0) : 0)
  for (const arc of project.arcs) atLeastAfter(solver, ends[arc.before] ?? 0, starts[arc.after] ?? 0, rest(arc.before) + arc.lag)
  for (const { from, to, lag } of lags) atLeastAfter(solver, starts[from] ?? 0, starts[to] ?? 0, lag)
  for (const [task] of project.tasks.entries()) {
    atLeastAfter(solver, ends[task] ?? 0, finish, rest(task))
    chooseMode(proof, task)
  }
  addResources(proof, rest)
  settleRoot(solver)
  noteBound(proof)
  return proof
}

function chooseMode({ solver, project, starts, ends, modes }: ProjectProof, task: number): void {
  const choices = modes[task] ?? []
  if (choices.length === 0) return
  const [start = 0, end = 0] = [starts[task], ends[task]]
  atLeastOne(
    solver,
    choices.flatMap((choice) => [2 * choice, 1]),
  )
  for (const [index, choice] of choices.entries()) {
    const duration = project.tasks[task]?.modes[index]?.duration ?? 0
    atLeastAfter(solver, start, end, duration, 2 * choice, 1)
    atLeastAfter(solver, end, start, -duration, 2 * choice, 1)
    for (const other of choices.slice(index + 1)) atLeastOne(solver, [2 * choice + 1, 0, 2 * other + 1, 0])
  }
}

function addResources(proof: ProjectProof, rest: (task: number) => number): void {
  const { project, solver, starts, ends, modes, most } = proof
  const before = reachability(project)
  const orders = new Map<number, readonly [number, number]>()
  for (const [resource, capacity] of project.capacities.entries()) {
    const users = project.tasks.flatMap((task, index) =>
      task.modes.flatMap((mode, at) => ((mode.needs[resource] ?? 0) > 0 && mode.duration > 0 ? [{ task: index, mode, at }] : [])),
    )
    if (capacity > 1) {
      const occupations = users.map(({ task, mode, at }): Occupation => {
        const choice = modes[task]?.[at]
        return {
          ...{ start: starts[task] ?? 0, startsAfter: 0, end: ends[task] ?? 0, endsAfter: rest(task), least: mode.duration },
          ...{ height: mode.needs[resource] ?? 0, needs: choice === undefined ? null : [2 * choice, 1] },
        }
      })
      addRule(solver, neverMoreThan(occupations, new Int32Array(Math.max(1, most)).fill(capacity)), variablesOf(occupations))
    }
    users.forEach((one, at) => {
      for (const other of users.slice(at + 1)) {
        const together = (one.mode.needs[resource] ?? 0) + (other.mode.needs[resource] ?? 0)
        if (one.task === other.task || together <= capacity || isOrdered(before, one.task, other.task)) continue
        const [first, second] = orderOf(proof, orders, one.task, other.task, rest)
        if (first === (second ^ 1)) continue
        const unless = [one, other].flatMap(({ task, at: mode }) => {
          const choice = modes[task]?.[mode]
          return choice === undefined ? [] : [2 * choice + 1, 0]
        })
        atLeastOne(solver, [first, 1, second, 1, ...unless])
      }
    })
  }
}

/** Literals (the side; the value is 1) of "one ends before the other begins" and the other way round. */
function orderOf(
  { solver, starts, ends, project, modes }: ProjectProof,
  orders: Map<number, readonly [number, number]>,
  one: number,
  other: number,
  rest: (task: number) => number,
): readonly [number, number] {
  const key = one * project.tasks.length + other
  const known = orders.get(key)
  if (known) return known
  const isPlain = modes[one]?.length === 0 && modes[other]?.length === 0
  const first = variable(solver, 0, 1)
  const second = isPlain ? first : variable(solver, 0, 1)
  const secondSide = isPlain ? 2 * first + 1 : 2 * second
  const secondValue = isPlain ? 0 : 1
  atLeastAfter(solver, ends[one] ?? 0, starts[other] ?? 0, rest(one), 2 * first, 1)
  atLeastAfter(solver, ends[other] ?? 0, starts[one] ?? 0, rest(other), secondSide, secondValue)
  const answer = [2 * first, secondSide] as const
  orders.set(key, answer)
  return answer
}

function reachability(project: Project): Uint8Array[] {
  const count = project.tasks.length
  const after = project.tasks.map((): number[] => [])
  for (const arc of project.arcs) after[arc.before]?.push(arc.after)
  return project.tasks.map((_, task) => {
    const reached = new Uint8Array(count)
    const open = [task]
    for (let next = open.pop(); next !== undefined; next = open.pop())
      for (const one of after[next] ?? []) {
        if (reached[one]) continue
        reached[one] = 1
        open.push(one)
      }
    return reached
  })
}

const isOrdered = (before: readonly Uint8Array[], one: number, other: number) => before[one]?.[other] === 1 || before[other]?.[one] === 1

function noteBound(proof: ProjectProof): void {
  proof.bound = proof.solver.isImpossible ? proof.most + 1 : Math.max(proof.bound, provedLeast(proof.solver, proof.finish))
}

/** True while the bound may rise or a better schedule be found. */
export const mayProveMore = (proof: ProjectProof): boolean => proof.bound <= proof.most && !proof.solver.isImpossible

/** Somebody else knows a schedule that ends then. */
export function lowerMost(proof: ProjectProof, known: number): void {
  proof.most = Math.min(proof.most, known - 1)
}

/** Works on, for so many conflicts: by turns on "nothing ends at the bound" and on "something ends before the best". */
export function proveOn(proof: ProjectProof, conflicts: number): void {
  if (!mayProveMore(proof)) return
  const target = proof.rounds++ % 2 === 0 ? proof.bound : proof.most
  const outcome = searchFor(proof.solver, [2 * proof.finish + 1, -target], (store) => soonest(proof, store), conflicts)
  if (outcome === 'solved') noteFound(proof)
  if (outcome === 'refuted' && target === proof.most) proof.bound = proof.most + 1
  noteBound(proof)
}

/** Decides the open task that can begin first: its quickest mode, then that it begins then. */
function soonest({ project, starts, modes }: ProjectProof, store: Store): readonly [number, number] | null {
  let chosen = -1
  let key = Number.POSITIVE_INFINITY
  for (const [task, start] of starts.entries()) {
    const [least, most] = [leastOf(store, start), mostOf(store, start)]
    const isChosen = (modes[task] ?? []).every((choice) => leastOf(store, choice) === mostOf(store, choice))
    if (least === most && isChosen) continue
    if (least * 65_536 + most < key) {
      key = least * 65_536 + most
      chosen = task
    }
  }
  if (chosen < 0) return null
  const open = (modes[chosen] ?? []).map((choice, index) => ({ choice, duration: project.tasks[chosen]?.modes[index]?.duration ?? 0 }))
  const free = open.filter(({ choice }) => leastOf(store, choice) < mostOf(store, choice)).sort((a, b) => a.duration - b.duration)[0]
  if (free) return [2 * free.choice, 1]
  const start = starts[chosen] ?? 0
  return [2 * start + 1, -leastOf(store, start)]
}

function noteFound(proof: ProjectProof): void {
  const { store } = proof.solver
  const starts = proof.starts.map((start) => leastOf(store, start))
  const modes = proof.modes.map((choices) =>
    Math.max(
      0,
      choices.findIndex((choice) => leastOf(store, choice) === 1),
    ),
  )
  const makespan = Math.max(0, ...starts.map((start, task) => start + (proof.project.tasks[task]?.modes[modes[task] ?? 0]?.duration ?? 0)))
  proof.found = { starts, modes, makespan }
  proof.most = makespan - 1
}
