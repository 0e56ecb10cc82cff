/**
 * Draws an order by lot: the same seed and the same names give the same order on every machine, whatever order they came in.
 *
 * The names are sorted, then shuffled from the back (Fisher and Yates) with a 32-bit generator started from the seed. Good enough that nobody can
 * steer it once the seed is fixed before the names are known; not for secrets.
 *
 * @param seed - any whole number from 0 to 4,294,967,295; write it down with the result
 * @param ids - different from each other
 */
export function drawOrder(seed: number, ids: readonly string[]): string[] {
  const next = generator(seed)
  const drawn = [...ids].sort(byCodeUnits)
  for (let last = drawn.length - 1; last > 0; last -= 1) {
    const pick = Math.floor(next() * (last + 1))
    const [a, b] = [drawn[last], drawn[pick]]
    if (a !== undefined && b !== undefined) {
      drawn[last] = b
      drawn[pick] = a
    }
  }
  return drawn
}

/** A seed from any text, the same on every machine: its 32-bit FNV-1a hash. */
export function seedOf(text: string): number {
  let hash = 0x811c9dc5
  for (let place = 0; place < text.length; place += 1) hash = Math.imul(hash ^ text.charCodeAt(place), 0x01000193)
  return hash >>> 0
}

const byCodeUnits = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)

/** The generator known as mulberry32: 32 bits of state, numbers from 0 up to but not 1. */
function generator(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}
