import { leastEnd } from '@/shared/scheduling/energy-bound'
import { type Decoded, type Decoder, decodeList, decoderOf, emptyDecoded } from '@/shared/scheduling/project/decode-list'
import { type Project, type ProjectSchedule, topologicalOrder } from '@/shared/scheduling/project/project'
import { type Random, randomFrom, wholeBelow } from '@/shared/scheduling/random'

/** A search over orders of tasks. Deterministic for a seed and a number of steps; `best` never gets worse. */
export type ProjectSearch = {
  readonly project: Project
  readonly forwards: Decoder
  readonly backwards: Decoder
  readonly random: Random
  readonly hasModes: boolean
  /** Masks of tasks that may choose their mode. */
  readonly allFree: Uint8Array
  readonly noneFree: Uint8Array
  readonly someFree: Uint8Array
  readonly before: readonly (readonly number[])[]
  readonly after: readonly (readonly number[])[]
  current: Decoded
  spare: Decoded
  mirror: Decoded
  best: ProjectSchedule
  readonly bound: number
  sinceBetter: number
  departures: number
  steps: number
}

/** Starts a search from the best of several rules of thumb. The project must have no `projectProblem`. */
export function startProjectSearch(project: Project, seed: number): ProjectSearch {
  const count = project.tasks.length
  const forwards = decoderOf(project, false)
  const backwards = decoderOf(project, true)
  const before = project.tasks.map((): number[] => [])
  const after = project.tasks.map((): number[] => [])
  for (const arc of project.arcs) {
    before[arc.after]?.push(arc.before)
    after[arc.before]?.push(arc.after)
  }
  const search: ProjectSearch = {
    ...{
      project,
      forwards,
      backwards,
      before,
      after,
      random: randomFrom(seed),
      hasModes: project.tasks.some((task) => task.modes.length > 1),
    },
    ...{ allFree: new Uint8Array(count).fill(1), noneFree: new Uint8Array(count), someFree: new Uint8Array(count) },
    ...{ current: emptyDecoded(count), spare: emptyDecoded(count), mirror: emptyDecoded(count) },
    ...{
      best: { starts: [], modes: [], makespan: Number.POSITIVE_INFINITY },
      bound: projectBound(project),
      sinceBetter: 0,
      departures: 0,
      steps: 0,
    },
  }
  for (const list of firstLists(project)) {
    decodeList(forwards, list, search.spare, search.allFree, Number.POSITIVE_INFINITY)
    justify(search)
    if (search.best.makespan === Number.POSITIVE_INFINITY || search.spare.makespan < search.current.makespan) accept(search)
  }
  return search
}

/** True while a better schedule may exist. */
export const mayImproveProject = (search: ProjectSearch): boolean => search.best.makespan > search.bound

/** Does a number of steps: each moves some tasks in the order, schedules anew, and pushes everything right and left again. */
export function improveProject(search: ProjectSearch, steps: number): void {
  for (let step = 0; step < steps && mayImproveProject(search); step++) improveOnce(search)
}

/**
 * No schedule ends before this: the longest chain, and for each resource the work between heads and tails against its limit.
 */
export function projectBound(project: Project): number {
  const order = topologicalOrder(project)
  const shortest = project.tasks.map((task) => Math.min(...task.modes.map((mode) => mode.duration)))
  const head = project.tasks.map(() => 0)
  const tail = project.tasks.map(() => 0)
  const after = project.tasks.map((): { readonly task: number; readonly lag: number }[] => [])
  for (const arc of project.arcs) after[arc.before]?.push({ task: arc.after, lag: arc.lag })
  for (const task of order) {
    for (const next of after[task] ?? [])
      head[next.task] = Math.max(head[next.task] ?? 0, (head[task] ?? 0) + (shortest[task] ?? 0) + next.lag)
  }
  for (const task of [...order].reverse()) {
    for (const next of after[task] ?? [])
      tail[task] = Math.max(tail[task] ?? 0, next.lag + (shortest[next.task] ?? 0) + (tail[next.task] ?? 0))
  }
  const chain = Math.max(0, ...project.tasks.map((_, task) => (head[task] ?? 0) + (shortest[task] ?? 0) + (tail[task] ?? 0)))
  const most = shortest.reduce((sum, duration) => sum + duration, 0) + project.arcs.reduce((sum, arc) => sum + arc.lag, 0)
  const energies = project.capacities.map((capacity, resource) => {
    const work = (task: number) =>
      Math.min(...(project.tasks[task]?.modes ?? []).map((mode) => mode.duration * (mode.needs[resource] ?? 0)))
    const parts = project.tasks.map((_, task) => ({ head: head[task] ?? 0, tail: tail[task] ?? 0, work: work(task) }))
    return leastEnd(parts, (from, to) => capacity * Math.max(0, to - from), most)
  })
  return Math.max(chain, ...energies)
}

function firstLists(project: Project): number[][] {
  const order = topologicalOrder(project)
  const tail = project.tasks.map(() => 0)
  const after = project.tasks.map((): number[] => [])
  for (const arc of project.arcs) after[arc.before]?.push(arc.after)
  const duration = (task: number) => Math.min(...(project.tasks[task]?.modes ?? []).map((mode) => mode.duration))
  for (const task of [...order].reverse()) tail[task] = duration(task) + Math.max(0, ...(after[task] ?? []).map((next) => tail[next] ?? 0))
  const followers = followersOf(order, after)
  const size = (task: number) => (project.tasks[task]?.modes[0]?.needs ?? []).reduce((sum, need) => sum + need, 0) * duration(task)
  return [(task: number) => -(tail[task] ?? 0), (task: number) => -(followers[task] ?? 0), (task: number) => -size(task), () => 0].map(
    (value) => listBy(project, value),
  )
}

function followersOf(order: readonly number[], after: readonly (readonly number[])[]): number[] {
  const sets = new Map<number, Set<number>>()
  for (const task of [...order].reverse()) {
    const all = new Set(after[task])
    for (const next of after[task] ?? []) for (const one of sets.get(next) ?? []) all.add(one)
    sets.set(task, all)
  }
  return order.map((_, task) => sets.get(task)?.size ?? 0)
}

/** An order that keeps what must come before, else the least value first; ties by number. */
function listBy(project: Project, value: (task: number) => number): number[] {
  const open = project.tasks.map(() => 0)
  const after = project.tasks.map((): number[] => [])
  for (const arc of project.arcs) {
    open[arc.after] = (open[arc.after] ?? 0) + 1
    after[arc.before]?.push(arc.after)
  }
  const ready = project.tasks.map((_, task) => task).filter((task) => open[task] === 0)
  const list: number[] = []
  while (ready.length > 0) {
    const next = ready.reduce((best, task) => (value(task) < value(best) || (value(task) === value(best) && task < best) ? task : best))
    ready.splice(ready.indexOf(next), 1)
    list.push(next)
    for (const task of after[next] ?? []) {
      open[task] = (open[task] ?? 0) - 1
      if (open[task] === 0) ready.push(task)
    }
  }
  return list
}

/** Pushes the spare schedule to the right and back to the left; keeps the better. Tormos, Lova 2001, Annals of OR 102:65-81. */
function justify(search: ProjectSearch): void {
  const { spare, mirror } = search
  mirror.modes.set(spare.modes)
  const fromEnd = indices(search.forwards.count).sort(
    (a, b) => (spare.ends[b] ?? 0) - (spare.ends[a] ?? 0) || (spare.starts[b] ?? 0) - (spare.starts[a] ?? 0),
  )
  if (!decodeList(search.backwards, fromEnd, mirror, search.noneFree, spare.makespan)) return
  const again = indices(search.forwards.count).sort(
    (a, b) => (mirror.ends[b] ?? 0) - (mirror.ends[a] ?? 0) || (mirror.starts[b] ?? 0) - (mirror.starts[a] ?? 0),
  )
  decodeList(search.forwards, again, spare, search.noneFree, Number.POSITIVE_INFINITY)
}

const indices = (count: number): number[] => Array.from({ length: count }, (_, index) => index)

function accept(search: ProjectSearch): void {
  const { spare, current } = search
  search.current = spare
  search.spare = current
  if (spare.makespan >= search.best.makespan) return
  search.best = { starts: [...spare.starts], modes: [...spare.modes], makespan: spare.makespan }
  search.sinceBetter = 0
}

function improveOnce(search: ProjectSearch): void {
  const { random, current, spare } = search
  search.steps++
  search.sinceBetter++
  const moved = movedList(search)
  spare.modes.set(current.modes)
  const free = search.hasModes ? changeModes(search, moved.touched) : search.noneFree
  if (!decodeList(search.forwards, moved.list, spare, free, Number.POSITIVE_INFINITY)) return
  if (random() < 0.5 || spare.makespan <= current.makespan + 2) justify(search)
  const worse = spare.makespan - current.makespan
  const heat = Math.max(search.hasModes ? 0.25 : 0.7, search.best.makespan * 0.004)
  if (worse <= 0 || -Math.log(1 - random()) * heat > worse) accept(search)
  if (search.sinceBetter > 800 + 60 * search.forwards.count) setOut(search)
}

/** After long without a better schedule: from the best again, or from a new random order; the latter more often where tasks have one mode. */
function setOut(search: ProjectSearch): void {
  search.sinceBetter = 0
  search.departures++
  const count = search.forwards.count
  const fresh = (search.departures % 3 === 0) === search.hasModes
  const key = indices(count).map((task) => (fresh ? search.random() : (search.best.starts[task] ?? 0)))
  const list = indices(count).sort((a, b) => (key[a] ?? 0) - (key[b] ?? 0))
  if (!fresh) search.spare.modes.set(search.best.modes)
  decodeList(search.forwards, sound(search, list), search.spare, fresh ? search.allFree : search.noneFree, Number.POSITIVE_INFINITY)
  justify(search)
  accept(search)
}

/** The present order with some tasks that run near one another moved to other places; each stays after what must come before it. */
function movedList(search: ProjectSearch): { readonly list: number[]; readonly touched: readonly number[] } {
  const { random, current, forwards } = search
  const count = forwards.count
  const key = new Float64Array(count)
  for (let task = 0; task < count; task++) key[task] = (current.starts[task] ?? 0) + random() * 0.01
  const minute = random() * current.makespan
  const width = current.makespan * (0.04 + random() * random() * 0.5)
  const share = 0.15 + random() * 0.6
  const touched = indices(count).filter((task) => Math.abs((current.starts[task] ?? 0) - minute) < width && random() < share)
  const strength = random() < 0.5 ? width : width / 3
  for (const task of touched) key[task] = (key[task] ?? 0) + (random() - 0.5) * 2 * strength
  const list = indices(count).sort((a, b) => (key[a] ?? 0) - (key[b] ?? 0))
  return { list: sound(search, list), touched }
}

/** The same order, but for tasks that stand before what must come first: these follow it at once. */
function sound({ before }: ProjectSearch, list: readonly number[]): number[] {
  const done = new Uint8Array(list.length)
  const result: number[] = []
  const add = (task: number) => {
    if (done[task]) return
    done[task] = 1
    for (const first of before[task] ?? []) add(first)
    result.push(task)
  }
  for (const task of list) add(task)
  return result
}

/** Gives some of the moved tasks another mode at random, and lets others choose; the rest keep theirs. */
function changeModes({ random, project, spare, someFree }: ProjectSearch, touched: readonly number[]): Uint8Array {
  someFree.fill(0)
  const choosing = random()
  for (const task of touched) {
    const count = project.tasks[task]?.modes.length ?? 1
    if (random() < choosing) someFree[task] = 1
    else if (count > 1 && random() < 0.15) spare.modes[task] = wholeBelow(random, count)
  }
  return someFree
}
