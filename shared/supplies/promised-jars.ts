import type { JarSize } from '@/shared/kitchen/jar-sizes'

/** Ways of naming a jar size in a promise, the longer names first: a half-pint is no pint. */
const NAMES: readonly (readonly [RegExp, JarSize])[] = [
  [/half[\s-]*gallon/i, 'half-gallon'],
  [/half[\s-]*pint/i, 'half-pint'],
  [/pint[\s-]*and/i, 'pint-and-half'],
  [/12[\s-]*oz/i, '12-oz'],
  [/pint/i, 'pint'],
  [/quart/i, 'quart'],
]

/** The jars among promises like "half-pint jars", by size. Lids and bands, and jars without a size, are not counted. */
export function readPromisedJars(
  promises: readonly { readonly item: string; readonly quantity: number }[],
): Partial<Record<JarSize, number>> {
  const sums: Partial<Record<JarSize, number>> = {}
  for (const { item, quantity } of promises) {
    if (/\b(?:lid|band)s?\b/i.test(item)) continue
    const size = NAMES.find(([name]) => name.test(item))?.[1]
    if (size) sums[size] = (sums[size] ?? 0) + Math.floor(quantity)
  }
  return sums
}
