/** A slot that no timetable can end before, and what says so. */
export type Bound = { readonly slot: number; readonly because: string }

/** Work that cannot begin before `head` and after which `tail` more slots must pass before the end. */
export type Part = { readonly head: number; readonly tail: number; readonly work: number }

/**
 * The least end by which all work can fit: for every head and tail that occur, the parts with at least that head and at least that tail
 * must fit in what the resource gives between the head and the end less the tail.
 *
 * @param capacity - work that can be done in slots [from, to); never falls when the interval grows
 * @returns a slot; `slots + 1` when the work does not even fit by then
 */
export function leastEnd(parts: readonly Part[], capacity: (from: number, to: number) => number, slots: number): number {
  const heads = [...new Set(parts.map((part) => part.head))].sort((a, b) => b - a)
  const tails = [...new Set(parts.map((part) => part.tail))].sort((a, b) => b - a)
  const tailIndex = new Map(tails.map((tail, index) => [tail, index]))
  const byHead = new Map<number, Part[]>()
  for (const part of parts) {
    const here = byHead.get(part.head)
    if (here) here.push(part)
    else byHead.set(part.head, [part])
  }
  const work = new Float64Array(tails.length)
  let end = 0
  for (const head of heads) {
    for (const part of byHead.get(head) ?? []) work[tailIndex.get(part.tail) ?? 0] = (work[tailIndex.get(part.tail) ?? 0] ?? 0) + part.work
    let sum = 0
    for (const [index, tail] of tails.entries()) {
      sum += work[index] ?? 0
      while (sum > 0 && end <= slots && capacity(head, end - tail) < sum - 1e-6) end++
    }
  }
  return end
}
