import type { ProjectSchedule } from '@/shared/scheduling/project/project'
import type { Shop } from '@/shared/scheduling/shop/shop'

/**
 * Who follows whom on every machine, and what follows from it: `head` is the earliest start of a task, `tail` what must pass after its end.
 * −1 stands for nobody.
 */
export type Lines = {
  readonly shop: Shop
  readonly mode: Int32Array
  readonly machine: Int32Array
  readonly duration: Int32Array
  readonly previous: Int32Array
  readonly next: Int32Array
  readonly first: Int32Array
  readonly head: Int32Array
  readonly tail: Int32Array
  readonly order: Int32Array
  readonly open: Int32Array
  makespan: number
}

export function emptyLines(shop: Shop): Lines {
  const column = () => new Int32Array(shop.count)
  return {
    ...{ shop, mode: column(), machine: column(), duration: column(), previous: column(), next: column() },
    ...{ first: new Int32Array(shop.machines), head: column(), tail: column(), order: column(), open: column(), makespan: 0 },
  }
}

export function copyLines(from: Lines, into: Lines): void {
  for (const key of ['mode', 'machine', 'duration', 'previous', 'next', 'first', 'head', 'tail', 'order'] as const) into[key].set(from[key])
  into.makespan = from.makespan
}

export function setMode({ shop, mode, machine, duration }: Lines, task: number, chosen: number): void {
  mode[task] = chosen
  machine[task] = shop.modes[task]?.[chosen]?.machine ?? -1
  duration[task] = shop.modes[task]?.[chosen]?.duration ?? 0
}

/** Takes a task out of its machine's line. */
export function takeOut({ machine, previous, next, first }: Lines, task: number): void {
  const [before, after] = [previous[task] ?? -1, next[task] ?? -1]
  if (before >= 0) next[before] = after
  else if ((machine[task] ?? -1) >= 0) first[machine[task] ?? 0] = after
  if (after >= 0) previous[after] = before
}

/** Puts a task into its machine's line, before another; −1 puts it last, after `last`. */
export function putIn({ machine, previous, next, first }: Lines, task: number, last: number, after: number): void {
  const before = after >= 0 ? (previous[after] ?? -1) : last
  previous[task] = before
  next[task] = after
  if (after >= 0) previous[after] = task
  if (before >= 0) next[before] = task
  else if ((machine[task] ?? -1) >= 0) first[machine[task] ?? 0] = task
}

/** Takes machines and lines over from a schedule. */
export function setLines(lines: Lines, { starts, modes }: ProjectSchedule): void {
  const { shop } = lines
  lines.first.fill(-1)
  const byStart = [...shop.order].sort((a, b) => (starts[a] ?? 0) - (starts[b] ?? 0))
  const last = new Int32Array(shop.machines).fill(-1)
  for (const task of byStart) {
    setMode(lines, task, modes[task] ?? 0)
    const machine = lines.machine[task] ?? -1
    putIn(lines, task, machine >= 0 ? (last[machine] ?? -1) : -1, -1)
    if (machine >= 0) last[machine] = task
  }
  reckon(lines)
}

/** Works out heads and tails; false when the lines run in a circle, which leaves them wrong. */
export function reckon(lines: Lines): boolean {
  const { shop, previous, next, order, open, head, tail, duration } = lines
  const { count, before, after } = shop
  let filled = 0
  for (let task = 0; task < count; task++) {
    const waits = (before[task]?.length ?? 0) / 2 + ((previous[task] ?? -1) >= 0 ? 1 : 0)
    open[task] = waits
    if (waits === 0) order[filled++] = task
  }
  let makespan = 0
  for (let at = 0; at < filled; at++) {
    const task = order[at] ?? 0
    const line = previous[task] ?? -1
    let start = line >= 0 ? (head[line] ?? 0) + (duration[line] ?? 0) : 0
    const arcs = before[task] ?? []
    for (let index = 0; index < arcs.length; index += 2) {
      const other = arcs[index] ?? 0
      start = Math.max(start, (head[other] ?? 0) + (duration[other] ?? 0) + (arcs[index + 1] ?? 0))
    }
    head[task] = start
    makespan = Math.max(makespan, start + (duration[task] ?? 0))
    const leaving = after[task] ?? []
    for (let index = 0; index <= leaving.length; index += 2) {
      const other = index < leaving.length ? (leaving[index] ?? 0) : (next[task] ?? -1)
      if (other < 0) continue
      open[other] = (open[other] ?? 0) - 1
      if (open[other] === 0) order[filled++] = other
    }
  }
  if (filled < count) return false
  for (let at = count - 1; at >= 0; at--) {
    const task = order[at] ?? 0
    const line = next[task] ?? -1
    let rest = line >= 0 ? (duration[line] ?? 0) + (tail[line] ?? 0) : 0
    const arcs = after[task] ?? []
    for (let index = 0; index < arcs.length; index += 2) {
      const other = arcs[index] ?? 0
      rest = Math.max(rest, (arcs[index + 1] ?? 0) + (duration[other] ?? 0) + (tail[other] ?? 0))
    }
    tail[task] = rest
  }
  lines.makespan = makespan
  return true
}

/** The earliest end that a task's own order allows: of what must come before it, with lags. */
export function readyAfterOrder({ shop, head, duration }: Lines, task: number): number {
  const arcs = shop.before[task] ?? []
  let ready = 0
  for (let index = 0; index < arcs.length; index += 2) {
    const other = arcs[index] ?? 0
    ready = Math.max(ready, (head[other] ?? 0) + (duration[other] ?? 0) + (arcs[index + 1] ?? 0))
  }
  return ready
}

/** What must pass after a task's end by its own order. */
export function restAfterOrder({ shop, tail, duration }: Lines, task: number): number {
  const arcs = shop.after[task] ?? []
  let rest = 0
  for (let index = 0; index < arcs.length; index += 2) {
    const other = arcs[index] ?? 0
    rest = Math.max(rest, (arcs[index + 1] ?? 0) + (duration[other] ?? 0) + (tail[other] ?? 0))
  }
  return rest
}

export const scheduleOf = (lines: Lines): ProjectSchedule => ({
  starts: [...lines.head],
  modes: [...lines.mode],
  makespan: lines.makespan,
})
