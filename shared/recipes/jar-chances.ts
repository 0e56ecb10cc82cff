import type { JarYield } from './recipe'

/** The chance of each whole number of jars: `chances[n]` is the chance of exactly n; they sum to 1. */
export type JarChances = readonly number[]

/**
 * The chance of each number of jars from one batch: highest at the typical yield, falling evenly to just outside the printed range.
 *
 * Logged yields of the same recipe count one each against three for the printed range (common practice), so a log of three weighs as much
 * as the publication and a long log outweighs it.
 */
export function batchChances({ low, typical, high }: JarYield, logged: readonly number[] = []): JarChances {
  const counts: number[] = Array.from({ length: Math.max(high, ...logged) + 1 }, () => 0)
  const heights = counts.map((_, jars) => triangle(jars, low, typical, high))
  const total = sum(heights)
  const share = PRINTED_WEIGHT / (PRINTED_WEIGHT + logged.length)
  const printed = heights.map((height) => (height / total) * share)
  return printed.map((chance, jars) => chance + (1 - share) * frequency(logged, jars))
}

/** The chances for several batches together, each on its own. */
export const severalBatches = (one: JarChances, batches: number): JarChances =>
  Array.from({ length: batches }).reduce<JarChances>((together) => convolve(together, one), [1])

/** The chances after losses: each jar seals with the same chance, on its own. */
export function afterLosses(chances: JarChances, sealChance: number): JarChances {
  return chances.reduceRight<number[]>((sealed, chance) => addAt(convolve(sealed, [1 - sealChance, sealChance]), 0, chance), [])
}

/** The chances when no more than `most` jars are put up, whatever there would be. */
export function atMost(chances: JarChances, most: number): JarChances {
  const over = sum(chances.slice(most + 1))
  return chances.slice(0, most + 1).map((chance, jars) => (jars === most ? chance + over : chance))
}

/** The chances with so many jars more, which are there already. */
export const moreBy = (chances: JarChances, jars: number): JarChances => [...Array.from({ length: jars }, () => 0), ...chances]

/** The chance of at least this many jars, 0 to 1. */
export const chanceOfAtLeast = (chances: JarChances, jars: number): number => Math.min(1, sum(chances.filter((_, count) => count >= jars)))

/** The jars that are reached with at least this chance: the most that may be promised. */
export function jarsAtChance(chances: JarChances, chance: number): number {
  const most = chances.findLastIndex((_, jars) => chanceOfAtLeast(chances, jars) >= chance - 1e-12)
  return Math.max(0, most)
}

/** The mean number of jars. */
export const expectedJars = (chances: JarChances): number => sum(chances.map((chance, jars) => chance * jars))

const PRINTED_WEIGHT = 3

/** Height of a triangle over [low - 1, high + 1] with its top at `typical`: 1 at the top, 0 at both ends. */
function triangle(jars: number, low: number, typical: number, high: number): number {
  const fromEnd = jars <= typical ? (jars - (low - 1)) / (typical - (low - 1)) : (high + 1 - jars) / (high + 1 - typical)
  return Math.max(0, fromEnd)
}

const frequency = (logged: readonly number[], jars: number): number =>
  logged.length === 0 ? 0 : logged.filter((each) => each === jars).length / logged.length

function convolve(a: JarChances, b: JarChances): number[] {
  const together = Array.from({ length: Math.max(1, a.length + b.length - 1) }, () => 0)
  for (const [i, x] of a.entries()) for (const [j, y] of b.entries()) addAt(together, i + j, x * y)
  return together
}

function addAt(values: number[], index: number, amount: number): number[] {
  values[index] = (values[index] ?? 0) + amount
  return values
}

const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0)
