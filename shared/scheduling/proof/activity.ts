import { holds, isExcluded, type Store } from '@/shared/scheduling/proof/store'

/**
 * Which literals take part in conflicts lately: those are decided first.
 *
 * A literal and its opposite are one entry, "variable x is at least v", numbered `base[x] + v`.
 *
 * Source: Eén, Sörensson 2003, An extensible SAT-solver, SAT 2003:502-518 (activities in a heap, growing increments).
 */
export type Activity = {
  readonly base: Int32Array
  readonly variableOf: Int32Array
  readonly value: Float64Array
  /** 1 when the entry was last wanted to hold, 0 when not to. */
  readonly wanted: Uint8Array
  readonly heap: number[]
  readonly place: Int32Array
  /** Entries that left the heap, and how many had left when each level was opened. */
  readonly gone: number[]
  readonly goneAt: number[]
  step: number
}

export function activityOf({ rootBound }: Store): Activity {
  const count = rootBound.length / 2
  const base = new Int32Array(count)
  let total = 0
  for (let variable = 0; variable < count; variable++) {
    base[variable] = total - (rootBound[2 * variable] ?? 0)
    total += 1 - (rootBound[2 * variable + 1] ?? 0) - (rootBound[2 * variable] ?? 0) + 1
  }
  const variableOf = new Int32Array(total)
  for (let variable = 0; variable < count; variable++) {
    const from = (base[variable] ?? 0) + (rootBound[2 * variable] ?? 0)
    variableOf.fill(variable, from, variable + 1 < count ? (base[variable + 1] ?? 0) + (rootBound[2 * variable + 2] ?? 0) : total)
  }
  const place = new Int32Array(total).fill(-1)
  return { base, variableOf, value: new Float64Array(total), wanted: new Uint8Array(total), heap: [], place, gone: [], goneAt: [], step: 1 }
}

const entryOf = ({ base }: Activity, side: number, value: number): number => (base[side >> 1] ?? 0) + ((side & 1) === 0 ? value : 1 - value)

/** A literal took part in a conflict. */
export function bump(activity: Activity, side: number, value: number): void {
  const entry = entryOf(activity, side, value)
  const raised = (activity.value[entry] ?? 0) + activity.step
  activity.value[entry] = raised
  if (raised > 1e100) scaleDown(activity)
  insert(activity, entry)
}

/** From now on what takes part counts for a little more. */
export function age(activity: Activity): void {
  activity.step /= 0.95
}

function scaleDown(activity: Activity): void {
  for (let entry = 0; entry < activity.value.length; entry++) activity.value[entry] = (activity.value[entry] ?? 0) * 1e-100
  activity.step *= 1e-100
}

/** Notes which way a literal was last wanted. */
export function want(activity: Activity, side: number, value: number): void {
  activity.wanted[entryOf(activity, side, value)] = (side & 1) === 0 ? 1 : 0
}

/** Puts an entry (back) where it may be decided. */
function insert(activity: Activity, entry: number): void {
  if ((activity.place[entry] ?? -1) < 0) {
    activity.place[entry] = activity.heap.length
    activity.heap.push(entry)
  }
  rise(activity, activity.place[entry] ?? 0)
}

/** The most active entry that is still open, or −1; entries that are settled leave the heap. */
export function mostActive(activity: Activity, store: Store): number {
  const { heap, base, variableOf } = activity
  while (heap.length > 0) {
    const entry = takeFirst(activity)
    const variable = variableOf[entry] ?? 0
    const value = entry - (base[variable] ?? 0)
    if (!holds(store, 2 * variable, value) && !isExcluded(store, 2 * variable, value)) return entry
    activity.gone.push(entry)
  }
  return -1
}

/** An entry as it is wanted: side and value. */
export function wantedLiteral({ base, variableOf, wanted }: Activity, entry: number): readonly [side: number, value: number] {
  const variable = variableOf[entry] ?? 0
  const value = entry - (base[variable] ?? 0)
  return wanted[entry] === 1 ? [2 * variable, value] : [2 * variable + 1, 1 - value]
}

/** A level opens, with this entry decided if there is one. */
export function openActivity(activity: Activity, entry: number): void {
  activity.goneAt.push(activity.gone.length)
  if (entry >= 0) activity.gone.push(entry)
}

/** Entries that left above a level come back. */
export function returnActivity(activity: Activity, level: number): void {
  const { gone, goneAt } = activity
  if (goneAt.length <= level) return
  const length = goneAt[level] ?? 0
  for (let at = gone.length - 1; at >= length; at--) insert(activity, gone[at] ?? 0)
  gone.length = length
  goneAt.length = level
}

function takeFirst({ heap, place, value }: Activity): number {
  const first = heap[0] ?? 0
  place[first] = -1
  const last = heap.pop() ?? 0
  if (heap.length > 0) {
    heap[0] = last
    place[last] = 0
    sink(heap, place, value)
  }
  return first
}

function rise({ heap, place, value }: Activity, from: number): void {
  let at = from
  const entry = heap[at] ?? 0
  const mine = value[entry] ?? 0
  while (at > 0) {
    const above = (at - 1) >> 1
    const other = heap[above] ?? 0
    if ((value[other] ?? 0) >= mine) break
    heap[at] = other
    place[other] = at
    at = above
  }
  heap[at] = entry
  place[entry] = at
}

function sink(heap: number[], place: Int32Array, value: Float64Array): void {
  let at = 0
  const entry = heap[0] ?? 0
  const mine = value[entry] ?? 0
  for (;;) {
    let below = 2 * at + 1
    if (below >= heap.length) break
    if (below + 1 < heap.length && (value[heap[below + 1] ?? 0] ?? 0) > (value[heap[below] ?? 0] ?? 0)) below++
    const other = heap[below] ?? 0
    if ((value[other] ?? 0) <= mine) break
    heap[at] = other
    place[other] = at
    at = below
  }
  heap[at] = entry
  place[entry] = at
}
