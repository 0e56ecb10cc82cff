import { because, explain, raise, type Store } from '@/shared/scheduling/proof/store'

/**
 * Something that takes `height` of a limited thing from its start to its end.
 *
 * It runs from variable `start` + `startsAfter` to variable `end` + `endsAfter`, for at least `least`; both are one variable where the length
 * is fixed. With `needs` it only counts while that literal holds.
 */
export type Occupation = {
  readonly start: number
  readonly startsAfter: number
  readonly end: number
  readonly endsAfter: number
  readonly least: number
  readonly height: number
  readonly needs: readonly [side: number, value: number] | null
  /** True for work whose length and height are open: `least` is all of it (height 1), `mostAtOnce` the greatest height. Only for `workFits`. */
  readonly isWork?: boolean
  readonly mostAtOnce?: number
}

/**
 * Never more in use than there is, from what must run in any case.
 *
 * @param capacity - by time; what starts before 0 or ends after its length is not looked at there
 * @returns the rule to add, to be run when a variable of `variablesOf` changes
 */
export function neverMoreThan(occupations: readonly Occupation[], capacity: Int32Array): (store: Store) => boolean {
  const room = {
    occupations,
    capacity,
    used: new Int32Array(capacity.length),
    from: new Int32Array(occupations.length),
    to: new Int32Array(occupations.length),
  }
  return (store) => {
    for (;;) {
      const fault = lineUp(room, store)
      if (fault >= 0) return overused(room, store, fault)
      const moved = pushAll(room, store)
      if (moved === 'conflict') return false
      if (moved === 'none') return true
    }
  }
}

/** The variables that a set of occupations looks at. */
export const variablesOf = (occupations: readonly Occupation[]): number[] =>
  occupations.flatMap((one) => [one.start, one.end, ...(one.needs ? [one.needs[0] >> 1] : [])])

type Room = {
  readonly occupations: readonly Occupation[]
  readonly capacity: Int32Array
  readonly used: Int32Array
  /** By occupation: when it runs in any case; empty when from ≥ to. */
  readonly from: Int32Array
  readonly to: Int32Array
}

/** Fills in what must run; the first time that is overused, or −1. */
function lineUp({ occupations, capacity, used, from, to }: Room, { bound }: Store): number {
  used.fill(0)
  for (let index = 0; index < occupations.length; index++) {
    const one = occupations[index] as Occupation
    const begin = Math.max(0, one.startsAfter - (bound[2 * one.start + 1] ?? 0))
    const end = Math.min(capacity.length, (bound[2 * one.end] ?? 0) + one.endsAfter)
    from[index] = begin
    to[index] = end
    if (begin >= end) continue
    if (one.needs && (bound[one.needs[0]] ?? 0) < one.needs[1]) {
      to[index] = begin
      continue
    }
    used[begin] = (used[begin] ?? 0) + one.height
    if (end < used.length) used[end] = (used[end] ?? 0) - one.height
  }
  let level = 0
  let fault = -1
  for (let at = 0; at < used.length; at++) {
    level += used[at] ?? 0
    used[at] = level
    if (fault < 0 && level > (capacity[at] ?? 0)) fault = at
  }
  return fault
}

function overused(room: Room, store: Store, at: number): boolean {
  blame(room, at, (room.used[at] ?? 0) - (room.capacity[at] ?? 0) - 1, -1, (side, value) => void store.conflict.push(side, value))
  return false
}

/** Names what runs at a time, leaving out what `spare` allows. */
function blame(
  { occupations, from, to }: Room,
  at: number,
  spareAtFirst: number,
  except: number,
  each: (side: number, value: number) => void,
): void {
  let spare = spareAtFirst
  for (let index = 0; index < occupations.length; index++) {
    const one = occupations[index] as Occupation
    if (index === except || (from[index] ?? 0) > at || (to[index] ?? 0) <= at) continue
    if (one.height <= spare) {
      spare -= one.height
      continue
    }
    each(2 * one.start + 1, one.startsAfter - at)
    each(2 * one.end, at + 1 - one.endsAfter)
    if (one.needs) each(one.needs[0], one.needs[1])
  }
}

/** Moves what cannot run where it would; `none` when nothing moved. */
function pushAll(room: Room, store: Store): 'none' | 'some' | 'conflict' {
  const { occupations, capacity, used } = room
  let least = Number.POSITIVE_INFINITY
  for (let at = 0; at < used.length; at++) {
    const free = (capacity[at] ?? 0) - (used[at] ?? 0)
    if (free < least) least = free
  }
  let mustLineUp = false
  for (let index = 0; index < occupations.length; index++) {
    const one = occupations[index] as Occupation
    if (one.height <= least || one.least <= 0) continue
    if (one.needs && (store.bound[one.needs[0]] ?? 0) < one.needs[1]) {
      if ((store.bound[one.needs[0] ^ 1] ?? 0) < 1 - one.needs[1] && !mayRun(room, store, index, one)) return 'conflict'
      continue
    }
    const [wasFrom, wasTo] = [store.bound[2 * one.start] ?? 0, store.bound[2 * one.end + 1] ?? 0]
    if (!pushLater(room, store, index, one) || !pushEarlier(room, store, index, one)) return 'conflict'
    if (store.bound[2 * one.start] !== wasFrom || store.bound[2 * one.end + 1] !== wasTo) mustLineUp = true
  }
  return mustLineUp ? 'some' : 'none'
}

/** Whether another may run beside what must run at a time. */
function isFull({ used, capacity, from, to }: Room, index: number, one: Occupation, at: number): boolean {
  if (at < 0 || at >= used.length) return false
  const own = at >= (from[index] ?? 0) && at < (to[index] ?? 0) ? one.height : 0
  return (used[at] ?? 0) - own + one.height > (capacity[at] ?? 0)
}

function pushLater(room: Room, store: Store, index: number, one: Occupation): boolean {
  for (;;) {
    const begin = (store.bound[2 * one.start] ?? 0) + one.startsAfter
    let at = begin + one.least - 1
    while (at >= begin && !isFull(room, index, one, at)) at--
    if (at < begin) return true
    const reason = explain(store)
    because(store, reason, 2 * one.start, at - one.least + 1 - one.startsAfter)
    if (one.needs) because(store, reason, one.needs[0], one.needs[1])
    blameFor(room, store, reason, at, index, one)
    if (!raise(store, 2 * one.start, at + 1 - one.startsAfter, reason)) return false
  }
}

function pushEarlier(room: Room, store: Store, index: number, one: Occupation): boolean {
  for (;;) {
    const end = one.endsAfter - (store.bound[2 * one.end + 1] ?? 0)
    let at = end - one.least
    while (at < end && !isFull(room, index, one, at)) at++
    if (at >= end) return true
    const reason = explain(store)
    because(store, reason, 2 * one.end + 1, one.endsAfter - at - one.least)
    if (one.needs) because(store, reason, one.needs[0], one.needs[1])
    blameFor(room, store, reason, at, index, one)
    if (!raise(store, 2 * one.end + 1, one.endsAfter - at, reason)) return false
  }
}

/** What may be left out is left out where it would have to run at a full time. */
function mayRun(room: Room, store: Store, index: number, one: Occupation): boolean {
  if (!one.needs) return true
  const begin = Math.max(0, one.startsAfter - (store.bound[2 * one.start + 1] ?? 0))
  const end = Math.min(room.used.length, (store.bound[2 * one.end] ?? 0) + one.endsAfter)
  for (let at = begin; at < end; at++) {
    if (!isFull(room, index, one, at)) continue
    const reason = explain(store)
    because(store, reason, 2 * one.start + 1, one.startsAfter - at)
    because(store, reason, 2 * one.end, at + 1 - one.endsAfter)
    blameFor(room, store, reason, at, index, one)
    return raise(store, one.needs[0] ^ 1, 1 - one.needs[1], reason)
  }
  return true
}

function blameFor(room: Room, store: Store, reason: number, at: number, index: number, one: Occupation): void {
  const own = at >= (room.from[index] ?? 0) && at < (room.to[index] ?? 0) ? one.height : 0
  const spare = (room.used[at] ?? 0) - own + one.height - (room.capacity[at] ?? 0) - 1
  blame(room, at, spare, index, (side, value) => because(store, reason, side, value))
}
