/** Things from which the largest is taken again and again. */
export interface Heaped {
  /** How many there are, each with an index from 0 on. */
  readonly size: number
  /** What a thing is worth now; only taking it changes that, and never upwards. */
  readonly worthOf: (index: number) => bigint
  /** Whether it may be taken (once more). */
  readonly isOpen: (index: number) => boolean
  readonly take: (index: number) => void
}

/**
 * Takes so many times the thing that is worth most at the moment, of equal ones that of the lowest index; fewer times where nothing is open any more.
 *
 * A binary heap, so that thousands of households take as many steps of a few comparisons each.
 */
export function takeLargest(times: number, { size, worthOf, isOpen, take }: Heaped): void {
  const heap = Array.from({ length: size }, (_, index) => index).filter(isOpen)
  const comesFirst = (a: number, b: number) => {
    const [one, other] = [worthOf(a), worthOf(b)]
    return one > other || (one === other && a < b)
  }
  for (let at = (heap.length >> 1) - 1; at >= 0; at -= 1) sink(heap, at, comesFirst)
  for (let left = times; left > 0 && heap.length > 0; left -= 1) {
    const [first = 0] = heap
    take(first)
    if (!isOpen(first)) {
      const last = heap.pop() ?? first
      if (heap.length > 0) heap[0] = last
    }
    sink(heap, 0, comesFirst)
  }
}

/** Lets what stands at a place go down until nothing below comes before it. */
function sink(heap: number[], from: number, comesFirst: (a: number, b: number) => boolean): void {
  for (let at = from; ; ) {
    let best = at
    for (const below of [2 * at + 1, 2 * at + 2]) {
      const [one, other] = [heap[below], heap[best]]
      if (one !== undefined && other !== undefined && comesFirst(one, other)) best = below
    }
    const [here, there] = [heap[at], heap[best]]
    if (best === at || here === undefined || there === undefined) return
    heap[at] = there
    heap[best] = here
    at = best
  }
}
