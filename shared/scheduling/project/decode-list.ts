import type { Project } from '@/shared/scheduling/project/project'

/** A project made ready for many quick decodings: forwards, or mirrored in time. */
export type Decoder = {
  readonly count: number
  readonly capacities: readonly number[]
  /** By task: [task before, lag] pairs, flat. */
  readonly before: readonly (readonly number[])[]
  /** By task and mode: the duration, and the needs as [resource, amount] pairs, flat. */
  readonly modes: readonly (readonly { readonly duration: number; readonly needs: readonly number[] }[])[]
  /** Busy stretches of resources that take one task at a time, in order; reused from one decoding to the next. */
  readonly busy: number[][]
  /** Use by time of the other resources. */
  readonly used: Int32Array[]
  readonly horizon: number
}

/** Makes the decoder of a project; `mirrored` runs time backwards. */
export function decoderOf(project: Project, mirrored: boolean): Decoder {
  const before = project.tasks.map((): number[] => [])
  for (const arc of project.arcs) {
    if (mirrored) before[arc.before]?.push(arc.after, arc.lag)
    else before[arc.after]?.push(arc.before, arc.lag)
  }
  const longest = project.tasks.reduce((sum, task) => sum + Math.max(0, ...task.modes.map((mode) => mode.duration)), 0)
  const horizon = longest + project.arcs.reduce((sum, arc) => sum + arc.lag, 0) + 1
  return {
    count: project.tasks.length,
    capacities: project.capacities,
    before,
    modes: project.tasks.map((task) =>
      task.modes.map((mode) => ({
        duration: mode.duration,
        needs: mode.needs.flatMap((amount, resource) => (amount > 0 && mode.duration > 0 ? [resource, amount] : [])),
      })),
    ),
    busy: project.capacities.map(() => []),
    used: project.capacities.map((capacity) => new Int32Array(capacity > 1 ? horizon : 0)),
    horizon,
  }
}

/** Starts, ends and modes found by a decoding, with the latest end. */
export type Decoded = { readonly starts: Int32Array; readonly ends: Int32Array; readonly modes: Uint8Array; makespan: number }

export const emptyDecoded = (count: number): Decoded => ({
  starts: new Int32Array(count),
  ends: new Int32Array(count),
  modes: new Uint8Array(count),
  makespan: 0,
})

/**
 * Serial schedule generation: each task of the list in turn at its earliest fitting time.
 *
 * Source: Kolisch 1996, Serial and parallel resource-constrained project scheduling methods revisited, EJOR 90:320-333.
 *
 * @param list - tasks so that each stands after what must come before it
 * @param free - tasks marked here take the mode that ends first, of equals the shortest; the others keep theirs in `into.modes`
 * @param limit - give up and return false once a task ends after this
 */
export function decodeList(decoder: Decoder, list: ArrayLike<number>, into: Decoded, free: Uint8Array, limit: number): boolean {
  for (const stretch of decoder.busy) stretch.length = 0
  for (const used of decoder.used) used.fill(0)
  into.makespan = 0
  for (let at = 0; at < decoder.count; at++) {
    const task = list[at] ?? 0
    const ready = readyAt(decoder, task, into)
    if (!placeTask(decoder, task, ready, into, free[task] === 1)) return false
    const end = into.ends[task] ?? 0
    if (end > into.makespan) into.makespan = end
    if (end > limit) return false
  }
  return true
}

function readyAt({ before }: Decoder, task: number, { ends }: Decoded): number {
  const arcs = before[task] ?? []
  let ready = 0
  for (let at = 0; at < arcs.length; at += 2) {
    const end = (ends[arcs[at] ?? 0] ?? 0) + (arcs[at + 1] ?? 0)
    if (end > ready) ready = end
  }
  return ready
}

function placeTask(decoder: Decoder, task: number, ready: number, into: Decoded, mayChoose: boolean): boolean {
  const modes = decoder.modes[task] ?? []
  let mode = into.modes[task] ?? 0
  let start = earliestFit(decoder, modes[mode], ready)
  if (mayChoose && modes.length > 1) {
    let end = Number.POSITIVE_INFINITY
    for (let other = 0; other < modes.length; other++) {
      const at = earliestFit(decoder, modes[other], ready)
      const duration = modes[other]?.duration ?? 0
      if (at >= 0 && (at + duration < end || (at + duration === end && duration < (modes[mode]?.duration ?? 0)))) {
        end = at + duration
        start = at
        mode = other
      }
    }
  }
  if (start < 0) return false
  into.modes[task] = mode
  into.starts[task] = start
  into.ends[task] = start + (modes[mode]?.duration ?? 0)
  occupy(decoder, modes[mode], start)
  return true
}

type Way = { readonly duration: number; readonly needs: readonly number[] } | undefined

/** The first time from `ready` on at which every need is free for the whole duration; −1 when a need is over its limit. */
function earliestFit(decoder: Decoder, mode: Way, ready: number): number {
  if (!mode) return -1
  const { needs, duration } = mode
  let start = ready
  for (let at = 0; at < needs.length; ) {
    const resource = needs[at] ?? 0
    const amount = needs[at + 1] ?? 0
    if (amount > (decoder.capacities[resource] ?? 0)) return -1
    const fit =
      (decoder.capacities[resource] ?? 0) === 1
        ? gapFrom(decoder.busy[resource] ?? [], start, duration)
        : roomFrom(decoder, resource, amount, start, duration)
    at = fit === start ? at + 2 : fit > start && at > 0 ? 0 : at + 2
    start = fit
  }
  return start
}

function gapFrom(busy: readonly number[], from: number, duration: number): number {
  let start = from
  for (let at = 0; at < busy.length; at += 2) {
    if ((busy[at + 1] ?? 0) <= start) continue
    if ((busy[at] ?? 0) >= start + duration) break
    start = busy[at + 1] ?? start
  }
  return start
}

function roomFrom({ used, capacities, horizon }: Decoder, resource: number, amount: number, from: number, duration: number): number {
  const line = used[resource]
  if (!line) return from
  const most = (capacities[resource] ?? 0) - amount
  let start = from
  for (let at = start; at < start + duration && at < horizon; at++) if ((line[at] ?? 0) > most) start = at + 1
  return start
}

function occupy(decoder: Decoder, mode: Way, start: number): void {
  if (!mode) return
  const end = start + mode.duration
  for (let at = 0; at < mode.needs.length; at += 2) {
    const resource = mode.needs[at] ?? 0
    if ((decoder.capacities[resource] ?? 0) === 1) insertStretch(decoder.busy[resource] ?? [], start, end)
    const line = decoder.used[resource]
    if (line && line.length > 0) for (let slot = start; slot < end; slot++) line[slot] = (line[slot] ?? 0) + (mode.needs[at + 1] ?? 0)
  }
}

function insertStretch(busy: number[], start: number, end: number): void {
  let at = busy.length
  while (at > 0 && (busy[at - 2] ?? 0) > start) at -= 2
  busy.splice(at, 0, start, end)
}
