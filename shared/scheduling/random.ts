/** Draws the next number in [0, 1). */
export type Random = () => number

/**
 * A stream of numbers that is the same for the same seed on every machine.
 *
 * Source: "mulberry32" mixing of a 32-bit counter, Tommy Ettinger 2017, public domain.
 */
export function randomFrom(seed: number): Random {
  let counter = seed >>> 0
  return () => {
    counter = (counter + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(counter ^ (counter >>> 15), counter | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

/** A whole number in [0, below). */
export const wholeBelow = (random: Random, below: number): number => Math.floor(random() * below)

/** Puts a list in random order, in place. */
export function shuffle<Thing>(random: Random, things: Thing[]): Thing[] {
  for (let last = things.length - 1; last > 0; last--) {
    const other = wholeBelow(random, last + 1)
    const kept = things[last] as Thing
    things[last] = things[other] as Thing
    things[other] = kept
  }
  return things
}
