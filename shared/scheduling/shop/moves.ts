import { type Lines, readyAfterOrder, restAfterOrder } from '@/shared/scheduling/shop/lines'

/** A task put elsewhere: before `before` in the line of the machine of `mode`; −1 puts it last, after `last`. */
export type Move = {
  readonly task: number
  readonly mode: number
  readonly before: number
  readonly last: number
  readonly estimate: number
}

/** One longest path, in order of time; of several the one that `pick` leads along. */
export function criticalPath(lines: Lines, pick: (count: number) => number): number[] {
  const { shop, head, duration, tail, previous, makespan } = lines
  const ends: number[] = []
  for (let task = 0; task < shop.count; task++)
    if ((tail[task] ?? 0) === 0 && (head[task] ?? 0) + (duration[task] ?? 0) === makespan) ends.push(task)
  const path: number[] = []
  let task = ends[pick(ends.length)] ?? -1
  while (task >= 0) {
    path.push(task)
    const start = head[task] ?? 0
    if (start === 0) break
    const from: number[] = []
    const line = previous[task] ?? -1
    if (line >= 0 && (head[line] ?? 0) + (duration[line] ?? 0) === start) from.push(line)
    const arcs = shop.before[task] ?? []
    for (let index = 0; index < arcs.length; index += 2) {
      const other = arcs[index] ?? 0
      if ((head[other] ?? 0) + (duration[other] ?? 0) + (arcs[index + 1] ?? 0) === start) from.push(other)
    }
    task = from[pick(from.length)] ?? -1
  }
  return path.reverse()
}

/**
 * Moves along a longest path: within each block of tasks that follow one another on a machine, one to either end of the block or an end
 * inwards; and tasks to other machines that can do them.
 *
 * Estimates are the longest path through what was moved. Moves that could close a circle are left out.
 *
 * Sources: Balas, Vazacopoulos 1998, Guided local search with shifting bottleneck for job shop scheduling, Management Science 44:262-275;
 * Zhang, Li, Guan, Rao 2007, A tabu search algorithm with a new neighborhood structure for the job shop scheduling problem, C&OR
 * 34:3229-3242; Mastrolilli, Gambardella 2000, Effective neighbourhood functions for the flexible job shop problem, J. Scheduling 3:3-20.
 */
export function movesAlong(lines: Lines, path: readonly number[], each: (move: Move) => void): void {
  const { machine } = lines
  for (let from = 0; from < path.length; ) {
    let to = from + 1
    const here = machine[path[from] ?? 0] ?? -1
    while (to < path.length && here >= 0 && lines.previous[path[to] ?? 0] === path[to - 1]) to++
    if (to - from > 1) movesInBlock(lines, path.slice(from, to), each)
    from = to
  }
  for (const task of path) elsewhere(lines, task, each)
}

function movesInBlock(lines: Lines, block: readonly number[], each: (move: Move) => void): void {
  const last = block.length - 1
  for (let at = 0; at <= last; at++) {
    if (at < last) toTheRight(lines, block, at, last, each)
    if (at > 0 && !(at === last && last === 1)) toTheLeft(lines, block, at, 0, each)
    if (at > 0 && at < last) {
      toTheRight(lines, block, 0, at, each)
      toTheLeft(lines, block, last, at, each)
    }
  }
}

function toTheRight(lines: Lines, block: readonly number[], from: number, to: number, each: (move: Move) => void): void {
  const { head, tail, duration, previous, next, mode } = lines
  const task = block[from] ?? 0
  const target = block[to] ?? 0
  if (restAfterOrder(lines, task) > (tail[target] ?? 0) + (duration[target] ?? 0)) return
  const before = previous[task] ?? -1
  let end = before >= 0 ? (head[before] ?? 0) + (duration[before] ?? 0) : 0
  const heads: number[] = []
  for (let at = from + 1; at <= to; at++) {
    const one = block[at] ?? 0
    const start = Math.max(end, readyAfterOrder(lines, one))
    heads.push(start)
    end = start + (duration[one] ?? 0)
  }
  const start = Math.max(end, readyAfterOrder(lines, task))
  const after = next[target] ?? -1
  let rest = Math.max(restAfterOrder(lines, task), after >= 0 ? (tail[after] ?? 0) + (duration[after] ?? 0) : 0)
  let estimate = start + (duration[task] ?? 0) + rest
  rest += duration[task] ?? 0
  for (let at = to; at > from; at--) {
    const one = block[at] ?? 0
    rest = Math.max(rest, restAfterOrder(lines, one))
    estimate = Math.max(estimate, (heads[at - from - 1] ?? 0) + (duration[one] ?? 0) + rest)
    rest += duration[one] ?? 0
  }
  each({ task, mode: mode[task] ?? 0, before: after, last: target, estimate })
}

function toTheLeft(lines: Lines, block: readonly number[], from: number, to: number, each: (move: Move) => void): void {
  const { head, tail, duration, previous, next, mode } = lines
  const task = block[from] ?? 0
  const target = block[to] ?? 0
  if (readyAfterOrder(lines, task) > (head[target] ?? 0) + (duration[target] ?? 0)) return
  const after = next[task] ?? -1
  let rest = after >= 0 ? (tail[after] ?? 0) + (duration[after] ?? 0) : 0
  const rests: number[] = []
  for (let at = from - 1; at >= to; at--) {
    const one = block[at] ?? 0
    rest = Math.max(rest, restAfterOrder(lines, one))
    rests.push(rest)
    rest += duration[one] ?? 0
  }
  const before = previous[target] ?? -1
  const start = Math.max(readyAfterOrder(lines, task), before >= 0 ? (head[before] ?? 0) + (duration[before] ?? 0) : 0)
  let end = start + (duration[task] ?? 0)
  let estimate = end + Math.max(rest, restAfterOrder(lines, task))
  for (let at = to; at < from; at++) {
    const one = block[at] ?? 0
    const begin = Math.max(end, readyAfterOrder(lines, one))
    end = begin + (duration[one] ?? 0)
    estimate = Math.max(estimate, end + (rests[from - 1 - at] ?? 0))
  }
  each({ task, mode: mode[task] ?? 0, before: target, last: before, estimate })
}

/** Other modes of a task: for each the place where the path through it is shortest. */
function elsewhere(lines: Lines, task: number, each: (move: Move) => void): void {
  const { shop, mode, head, tail, duration, next, first } = lines
  const modes = shop.modes[task] ?? []
  if (modes.length < 2) return
  const ready = readyAfterOrder(lines, task)
  const rest = restAfterOrder(lines, task)
  for (let chosen = 0; chosen < modes.length; chosen++) {
    const to = modes[chosen]
    if (!to || chosen === mode[task]) continue
    if (to.machine < 0 || to.machine === lines.machine[task]) {
      each({ task, mode: chosen, before: lines.next[task] ?? -1, last: lines.previous[task] ?? -1, estimate: ready + to.duration + rest })
      continue
    }
    let before = -1
    let best: Move | null = null
    for (let after = first[to.machine] ?? -1; ; after = next[after] ?? -1) {
      const begin = Math.max(ready, before >= 0 ? (head[before] ?? 0) + (duration[before] ?? 0) : 0)
      const beyond = Math.max(rest, after >= 0 ? (tail[after] ?? 0) + (duration[after] ?? 0) : 0)
      const isSound = (before < 0 || mayFollow(lines, before, task)) && (after < 0 || mayLead(lines, task, after))
      const estimate = begin + to.duration + beyond
      if (isSound && (!best || estimate < best.estimate)) best = { task, mode: chosen, before: after, last: before, estimate }
      if (after < 0) break
      before = after
    }
    if (best) each(best)
  }
}

/** No way leads from what comes after the task to the other: it ends before any of that could have begun. */
function mayFollow({ shop, head, duration }: Lines, other: number, task: number): boolean {
  const arcs = shop.after[task] ?? []
  for (let index = 0; index < arcs.length; index += 2) {
    const next = arcs[index] ?? 0
    if (next === other || (head[other] ?? 0) >= (head[next] ?? 0) + (duration[next] ?? 0)) return false
  }
  return true
}

/** No way leads from the other to what comes before the task. */
function mayLead({ shop, head, duration }: Lines, task: number, other: number): boolean {
  const arcs = shop.before[task] ?? []
  for (let index = 0; index < arcs.length; index += 2) {
    const prior = arcs[index] ?? 0
    if (prior === other || (head[prior] ?? 0) >= (head[other] ?? 0) + (duration[other] ?? 0)) return false
  }
  return true
}
