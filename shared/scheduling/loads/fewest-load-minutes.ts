/** Something that goes into a load: its room, and the minutes that a load with it must run at least. */
export type LoadItem = { readonly size: number; readonly minutes: number }

/** Most items for which every way of loading is tried. */
const MOST_EXACT = 14

/**
 * Divides items over loads of one canner so that the minutes of all loads, each as long as its longest item, are fewest.
 *
 * Exact up to 14 items (every set that fits with the longest one left is tried, and remembered). Above that the longest item left opens a
 * load and the longest that still fit join it; then two or three loads at a time are divided anew in the best way, until none gets shorter.
 *
 * Source of the problem: Uzsoy 1994, Scheduling a single batch processing machine with non-identical job sizes, IJPR 32:1615-1635.
 *
 * @returns loads of item numbers, their minutes together and minutes that no division is below; null when an item is larger than the canner
 */
export function fewestLoadMinutes(
  items: readonly LoadItem[],
  capacity: number,
): { readonly minutes: number; readonly bound: number; readonly loads: readonly (readonly number[])[] } | null {
  if (items.some((item) => item.size > capacity)) return null
  const order = items.map((_, index) => index).sort((a, b) => (items[b]?.minutes ?? 0) - (items[a]?.minutes ?? 0) || a - b)
  const isExact = items.length <= MOST_EXACT
  const loads = isExact ? everyWay(items, capacity, order) : divideAnew(items, capacity, longestFirst(items, capacity, order))
  const minutes = loads.reduce((sum, load) => sum + minutesOf(items, load), 0)
  return { minutes, bound: isExact ? minutes : boundOf(items, capacity, order), loads }
}

const minutesOf = (items: readonly LoadItem[], load: readonly number[]): number =>
  Math.max(...load.map((index) => items[index]?.minutes ?? 0))

/** Minutes if items could be cut: longest first, each load filled to the brim. */
function boundOf(items: readonly LoadItem[], capacity: number, order: readonly number[]): number {
  let [minutes, filled] = [0, 0]
  for (const index of order) {
    const { size = 0, minutes: length = 0 } = items[index] ?? {}
    const opened = Math.ceil((filled + size) / capacity) - Math.ceil(filled / capacity)
    minutes += opened * length
    filled += size
  }
  return minutes
}

/** Most items of a few loads that are divided anew together. */
const MOST_ANEW = 10

function divideAnew(items: readonly LoadItem[], capacity: number, first: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const loads = first.map((load) => [...load])
  for (let better = true; better; ) {
    better = false
    for (const group of groupsOf(loads.length)) {
      const before = group.map((at) => loads[at] ?? [])
      const order = before.flat().sort((a, b) => (items[b]?.minutes ?? 0) - (items[a]?.minutes ?? 0) || a - b)
      if (order.length > MOST_ANEW || order.length === 0) continue
      const anew = everyWay(items, capacity, order)
      const total = (all: readonly (readonly number[])[]) =>
        all.reduce((sum, load) => sum + (load.length > 0 ? minutesOf(items, load) : 0), 0)
      if (total(anew) >= total(before)) continue
      better = true
      for (const [place, at] of group.entries()) loads[at] = [...(anew[place] ?? [])]
      for (const load of anew.slice(group.length)) loads.push([...load])
    }
  }
  return loads.filter((load) => load.length > 0)
}

/** Every two of the loads, and every three while there are not too many. */
function groupsOf(count: number): number[][] {
  const groups: number[][] = []
  for (let one = 0; one < count; one++)
    for (let two = one + 1; two < count; two++) {
      groups.push([one, two])
      for (let three = two + 1; three < count && count <= 14; three++) groups.push([one, two, three])
    }
  return groups
}

type Way = { readonly minutes: number; readonly loads: readonly (readonly number[])[] }

function everyWay(items: readonly LoadItem[], capacity: number, order: readonly number[]): readonly (readonly number[])[] {
  const known = new Map<number, Way>()
  const size = (at: number) => items[order[at] ?? 0]?.size ?? 0
  const best = (left: number): Way => {
    if (left === 0) return { minutes: 0, loads: [] }
    const found = known.get(left)
    if (found) return found
    const first = Math.log2(left & -left)
    const minutes = items[order[first] ?? 0]?.minutes ?? 0
    let answer: Way = { minutes: Number.POSITIVE_INFINITY, loads: [] }
    const others = left & ~(1 << first)
    for (let more = others; ; more = (more - 1) & others) {
      const load = bitsOf(more | (1 << first))
      if (load.reduce((sum, at) => sum + size(at), 0) <= capacity) {
        const rest = best(others & ~more)
        if (rest.minutes + minutes < answer.minutes)
          answer = { minutes: rest.minutes + minutes, loads: [load.map((at) => order[at] ?? 0), ...rest.loads] }
      }
      if (more === 0) break
    }
    known.set(left, answer)
    return answer
  }
  return best(2 ** order.length - 1).loads
}

function bitsOf(bits: number): number[] {
  const found: number[] = []
  for (let at = 0; bits >> at > 0; at++) if ((bits >> at) & 1) found.push(at)
  return found
}

function longestFirst(items: readonly LoadItem[], capacity: number, order: readonly number[]): number[][] {
  const loads: number[][] = []
  const left = [...order]
  while (left.length > 0) {
    let room = capacity
    const load = left.filter((index) => {
      const size = items[index]?.size ?? 0
      if (size > room) return false
      room -= size
      return true
    })
    for (const index of load) left.splice(left.indexOf(index), 1)
    loads.push(load)
  }
  return loads
}
