/** `to` begins at least `lag` units after `from` begins. A negative lag says the longest that `from` may begin after `to`. */
export type StartLag = { readonly from: number; readonly to: number; readonly lag: number }

/**
 * Tasks with least and longest waits between their starts, and resources with a limit. Task 0 begins everything, the last task ends it.
 */
export type WaitProject = {
  readonly tasks: readonly { readonly duration: number; readonly needs: readonly number[] }[]
  readonly lags: readonly StartLag[]
  readonly capacities: readonly number[]
}

export type WaitAnswer = {
  /** Starts of the best schedule found; null when none was. */
  readonly starts: readonly number[] | null
  /** Start of the last task; infinite when none was found. */
  readonly makespan: number
  /** True when the search came to its end: the schedule is the best there is, or there is none. */
  readonly isProved: boolean
  readonly nodes: number
}

/**
 * Searches depth first for the earliest end under least and longest waits.
 *
 * A node takes every task at its earliest start under the waits. Where a resource is first overused, some of the tasks then running must
 * wait for another of them: each least set that resolves it, behind each task that stays, is a branch, the one that ends first tried first.
 *
 * Source: De Reyck, Herroelen 1998, A branch-and-bound procedure for the RCPSP with generalized precedence relations, EJOR 111:152-174.
 *
 * @param mostNodes - gives up after so many; the answer is then the best so far and not proved
 */
export function scheduleWithWaits(project: WaitProject, mostNodes: number): WaitAnswer {
  const search: Search = { project, mostNodes, nodes: 0, best: null, makespan: Number.POSITIVE_INFINITY }
  const arcs = project.lags.map((lag) => ({ ...lag }))
  const starts = earliest(
    project,
    arcs,
    project.tasks.map(() => 0),
  )
  if (starts) descend(search, arcs, starts)
  return { starts: search.best, makespan: search.makespan, isProved: search.nodes < mostNodes, nodes: search.nodes }
}

type Search = { readonly project: WaitProject; readonly mostNodes: number; nodes: number; best: readonly number[] | null; makespan: number }

const lastOf = (starts: readonly number[]): number => starts.at(-1) ?? 0

/** Pushes starts right until every wait holds; null when they push one another in a circle. */
function earliest(project: WaitProject, arcs: readonly StartLag[], from: readonly number[]): number[] | null {
  const starts = [...from]
  for (let round = 0; round <= project.tasks.length; round++) {
    let moved = false
    for (const { from: before, to, lag } of arcs) {
      const least = (starts[before] ?? 0) + lag
      if ((starts[to] ?? 0) < least) {
        starts[to] = least
        moved = true
      }
    }
    if (!moved) return starts
  }
  return null
}

function descend(search: Search, arcs: StartLag[], starts: readonly number[]): void {
  if (lastOf(starts) >= search.makespan || search.nodes >= search.mostNodes) return
  search.nodes++
  const clash = firstClash(search.project, starts)
  if (!clash) {
    search.best = starts
    search.makespan = lastOf(starts)
    return
  }
  const branches = clash.flatMap((waiting) => branchesOf(search.project, arcs, starts, waiting))
  branches.sort((a, b) => lastOf(a.starts) - lastOf(b.starts) || sum(a.starts) - sum(b.starts))
  for (const branch of branches) {
    arcs.push(...branch.arcs)
    descend(search, arcs, branch.starts)
    arcs.length -= branch.arcs.length
  }
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0)

type Waiting = { readonly late: readonly number[]; readonly stay: readonly number[] }

function branchesOf({ tasks, ...rest }: WaitProject, arcs: readonly StartLag[], starts: readonly number[], { late, stay }: Waiting) {
  return stay.flatMap((first) => {
    const more = late.map((task) => ({ from: first, to: task, lag: tasks[first]?.duration ?? 0 }))
    const pushed = earliest({ tasks, ...rest }, [...arcs, ...more], starts)
    return pushed ? [{ arcs: more, starts: pushed }] : []
  })
}

/** The ways out of the first overuse: least sets of running tasks that must wait, each with those that stay; null when nothing clashes. */
function firstClash({ tasks, capacities }: WaitProject, starts: readonly number[]): Waiting[] | null {
  const moments = [...new Set(starts)].sort((a, b) => a - b)
  for (const moment of moments) {
    const running = starts
      .map((_, task) => task)
      .filter((task) => (starts[task] ?? 0) <= moment && moment < (starts[task] ?? 0) + (tasks[task]?.duration ?? 0))
    const fits = (set: readonly number[]) =>
      capacities.every((capacity, resource) => sum(set.map((task) => tasks[task]?.needs[resource] ?? 0)) <= capacity)
    if (!fits(running)) return leastSets(running, fits)
  }
  return null
}

function leastSets(running: readonly number[], fits: (set: readonly number[]) => boolean): Waiting[] {
  const found: Waiting[] = []
  const all = Array.from({ length: 2 ** running.length }, (_, bits) => bits).sort((a, b) => ones(a) - ones(b) || a - b)
  const bitsFound: number[] = []
  for (const bits of all) {
    if (bits === 0 || bitsFound.some((less) => (bits & less) === less)) continue
    const stay = running.filter((_, index) => (bits & (1 << index)) === 0)
    if (!fits(stay)) continue
    bitsFound.push(bits)
    found.push({ late: running.filter((_, index) => (bits & (1 << index)) !== 0), stay })
  }
  return found
}

function ones(bits: number): number {
  let count = 0
  for (let left = bits; left > 0; left &= left - 1) count++
  return count
}
