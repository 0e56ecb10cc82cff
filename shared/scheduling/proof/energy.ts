import type { Occupation } from '@/shared/scheduling/proof/cumulative'
import { because, explain, raise, type Store } from '@/shared/scheduling/proof/store'

/**
 * Never more work in any stretch of time than fits: of everything, the part that must lie in the stretch wherever it is put.
 *
 * Stretches run from an earliest start to a latest end. What would not fit beside the rest is moved, or left out where it may be.
 *
 * Source: Erschler, Lopez 1990, Energy-based approach for task scheduling under time and resources constraints, PMS 2:115-121; explained as in
 * Schutt, Feydy, Stuckey 2013, Explaining time-table-edge-finding propagation for the cumulative resource constraint, CPAIOR 10:234-250.
 *
 * @param capacity - by time; what lies after its length is not looked at
 */
export function workFits(occupations: readonly Occupation[], capacity: Int32Array): (store: Store) => boolean {
  const sums = new Float64Array(capacity.length + 1)
  for (let at = 0; at < capacity.length; at++) sums[at + 1] = (sums[at] ?? 0) + (capacity[at] ?? 0)
  const count = occupations.length
  const room: Room = {
    ...{
      occupations,
      sums,
      begin: new Int32Array(count),
      lastBegin: new Int32Array(count),
      end: new Int32Array(count),
      lastEnd: new Int32Array(count),
    },
    ...{ state: new Uint8Array(count) },
  }
  return (store) => {
    readBounds(room, store)
    for (let first = 0; first < count; first++) {
      const from = room.begin[first] ?? 0
      if (room.state[first] !== PRESENT || isSeen(room.begin, room.state, first)) continue
      for (let last = 0; last < count; last++) {
        const to = room.lastEnd[last] ?? 0
        if (room.state[last] !== PRESENT || to <= from || to > capacity.length || isSeen(room.lastEnd, room.state, last)) continue
        if (!lookAt(room, store, Math.max(0, from), to)) return false
      }
    }
    return true
  }
}

const [ABSENT, OPEN, PRESENT] = [0, 1, 2] as const

type Room = {
  readonly occupations: readonly Occupation[]
  readonly sums: Float64Array
  readonly begin: Int32Array
  readonly lastBegin: Int32Array
  readonly end: Int32Array
  readonly lastEnd: Int32Array
  readonly state: Uint8Array
}

function readBounds({ occupations, begin, lastBegin, end, lastEnd, state }: Room, { bound }: Store): void {
  for (let index = 0; index < occupations.length; index++) {
    const one = occupations[index] as Occupation
    begin[index] = (bound[2 * one.start] ?? 0) + one.startsAfter
    lastBegin[index] = one.startsAfter - (bound[2 * one.start + 1] ?? 0)
    end[index] = (bound[2 * one.end] ?? 0) + one.endsAfter
    lastEnd[index] = one.endsAfter - (bound[2 * one.end + 1] ?? 0)
    const { needs } = one
    state[index] = !needs || (bound[needs[0]] ?? 0) >= needs[1] ? PRESENT : (bound[needs[0] ^ 1] ?? 0) >= 1 - needs[1] ? ABSENT : OPEN
  }
}

function isSeen(values: Int32Array, state: Uint8Array, index: number): boolean {
  for (let before = 0; before < index; before++) if (state[before] === PRESENT && values[before] === values[index]) return true
  return false
}

/** The length of something that lies in [from, to) wherever it is put; of work that may be done in other ways, all or nothing. */
function inside({ occupations, begin, end, lastBegin, lastEnd }: Room, index: number, from: number, to: number): number {
  const one = occupations[index] as Occupation
  if (one.isWork) return (begin[index] ?? 0) >= from && (lastEnd[index] ?? 0) <= to ? one.least : 0
  return Math.min(one.least, (end[index] ?? 0) - from, to - (lastBegin[index] ?? 0), to - from)
}

function lookAt(room: Room, store: Store, from: number, to: number): boolean {
  const { occupations, sums, state, begin, lastEnd } = room
  const fits = (sums[to] ?? 0) - (sums[from] ?? 0)
  let work = 0
  for (let index = 0; index < occupations.length; index++) {
    if (state[index] !== PRESENT) continue
    const part = inside(room, index, from, to)
    if (part > 0) work += part * (occupations[index]?.height ?? 0)
  }
  if (work > fits) return tooMuch(room, store, from, to, work - fits - 1)
  for (let index = 0; index < occupations.length; index++) {
    const one = occupations[index] as Occupation
    if (state[index] === ABSENT) continue
    const own = Math.max(0, inside(room, index, from, to))
    const left = fits - work + (state[index] === PRESENT ? own * one.height : 0)
    if (state[index] === OPEN) {
      if (own > 0 && own * one.height > left && !leaveOut(room, store, index, from, to, own, own * one.height - left - 1)) return false
      continue
    }
    if (one.isWork) {
      if (!endsLater(room, store, index, from, to, left)) return false
      continue
    }
    const most = Math.floor(left / one.height)
    const longest = Math.min(one.least, to - from)
    if (most >= longest) continue
    // begun as early as may be, too much of it would lie inside: it must begin so late that less does
    if (
      Math.min(longest, (begin[index] ?? 0) + one.least - from) > most &&
      to - most > (begin[index] ?? 0) &&
      !later(room, store, index, from, to, most)
    )
      return false
    if (
      Math.min(longest, to - (lastEnd[index] ?? 0) + one.least) > most &&
      from + most < (lastEnd[index] ?? 0) &&
      !earlier(room, store, index, from, to, most)
    )
      return false
  }
  return true
}

/** Work begun in the stretch that has not room for all of it ends after it, and by so much later as the rest takes the most people. */
function endsLater(room: Room, store: Store, index: number, from: number, to: number, left: number): boolean {
  const one = room.occupations[index] as Occupation
  const rest = one.least - left
  if (rest <= 0 || (room.begin[index] ?? 0) < from) return true
  const end = to + Math.ceil(rest / (one.mostAtOnce ?? rest))
  if (end - one.endsAfter <= (store.bound[2 * one.end] ?? 0)) return true
  const reason = explain(store)
  because(store, reason, 2 * one.start, from - one.startsAfter)
  // work in part is left where the end follows all the same
  const spare = one.least - left - 1 - (end - to - 1) * (one.mostAtOnce ?? rest)
  blame(room, from, to, spare, index, (side, value) => because(store, reason, side, value))
  return raise(store, 2 * one.end, end - one.endsAfter, reason)
}

/** Names the parts that lie inside, each weakened as far as `spareAtFirst` allows. */
function blame(
  room: Room,
  from: number,
  to: number,
  spareAtFirst: number,
  except: number,
  each: (side: number, value: number) => void,
): void {
  let spare = spareAtFirst
  for (let index = 0; index < room.occupations.length; index++) {
    const one = room.occupations[index] as Occupation
    if (index === except || room.state[index] !== PRESENT) continue
    const part = inside(room, index, from, to)
    if (part <= 0) continue
    const weakest = Math.min(part, Math.floor(spare / one.height))
    const less = one.isWork && weakest < part ? 0 : weakest
    spare -= less * one.height
    if (part === less) continue
    if (one.isWork) {
      each(2 * one.start, from - one.startsAfter)
      each(2 * one.end + 1, one.endsAfter - to)
      continue
    }
    each(2 * one.end, from + part - less - one.endsAfter)
    each(2 * one.start + 1, one.startsAfter - (to - part + less))
    if (one.needs) each(one.needs[0], one.needs[1])
  }
}

function tooMuch(room: Room, store: Store, from: number, to: number, spare: number): boolean {
  blame(room, from, to, spare, -1, (side, value) => void store.conflict.push(side, value))
  return false
}

function leaveOut(room: Room, store: Store, index: number, from: number, to: number, own: number, spare: number): boolean {
  const one = room.occupations[index] as Occupation
  if (!one.needs) return true
  const reason = explain(store)
  because(store, reason, 2 * one.end, from + own - one.endsAfter)
  because(store, reason, 2 * one.start + 1, one.startsAfter - (to - own))
  blame(room, from, to, spare, index, (side, value) => because(store, reason, side, value))
  return raise(store, one.needs[0] ^ 1, 1 - one.needs[1], reason)
}

function later(room: Room, store: Store, index: number, from: number, to: number, most: number): boolean {
  const one = room.occupations[index] as Occupation
  const reason = explain(store)
  because(store, reason, 2 * one.start, from + most + 1 - one.least - one.startsAfter)
  return push(room, store, reason, index, from, to, most) && raise(store, 2 * one.start, to - most - one.startsAfter, reason)
}

function earlier(room: Room, store: Store, index: number, from: number, to: number, most: number): boolean {
  const one = room.occupations[index] as Occupation
  const reason = explain(store)
  because(store, reason, 2 * one.end + 1, one.endsAfter - (to - most - 1 + one.least))
  return push(room, store, reason, index, from, to, most) && raise(store, 2 * one.end + 1, one.endsAfter - (from + most), reason)
}

/** The rest of the explanation: itself present, and the others that leave it no more than `most`. */
function push({ ...room }: Room, store: Store, reason: number, index: number, from: number, to: number, most: number): boolean {
  const one = room.occupations[index] as Occupation
  if (one.needs) because(store, reason, one.needs[0], one.needs[1])
  const own = Math.max(0, inside(room, index, from, to)) * one.height
  let work = 0
  for (let other = 0; other < room.occupations.length; other++) {
    if (room.state[other] === PRESENT) work += Math.max(0, inside(room, other, from, to)) * (room.occupations[other]?.height ?? 0)
  }
  const left = (room.sums[to] ?? 0) - (room.sums[from] ?? 0) - (work - own)
  blame(room, from, to, (most + 1) * one.height - left - 1, index, (side, value) => because(store, reason, side, value))
  return true
}
