import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import type { Method } from '@/shared/kitchen/methods'

/**
 * Spare lids and jars on top of the plan, in percent.
 *
 * Common practice: 5 to 10 % for lids that bend and jars that crack; the larger one.
 */
export const SPARE_PERCENT = 10

/** Jars, lids and bands are sold by the dozen. Common practice. */
export const BOX_OF = 12

/** What to have and what to buy of one thing. All counts are whole. */
export interface Need {
  readonly planned: number
  /** Planned and spare, rounded up. */
  readonly withSpare: number
  readonly usable: number
  readonly missing: number
  /** Whole boxes that cover what is missing. */
  readonly boxes: number
  /** What is over when those boxes are bought, above plan and spare. */
  readonly over: number
}

/**
 * How many of one thing a day needs, and how many boxes to buy.
 *
 * 80 planned jars are 88 lids with 10 % spare, which is 8 boxes of 12.
 *
 * @param planned - jars planned, a whole number
 * @param usable - what is there and may be used
 * @throws RangeError for fractions and negative numbers
 */
export function supplyNeed(planned: number, usable: number, sparePercent = SPARE_PERCENT, boxOf = BOX_OF): Need {
  for (const count of [planned, usable, sparePercent]) requireWhole(count)
  if (!Number.isSafeInteger(boxOf) || boxOf < 1) throw new RangeError(`Not a box size: ${boxOf}`)

  const withSpare = Math.ceil((planned * (100 + sparePercent)) / 100)
  const missing = Math.max(0, withSpare - usable)
  const boxes = Math.ceil(missing / boxOf)
  return { planned, withSpare, usable, missing, boxes, over: Math.max(0, usable + boxes * boxOf - withSpare) }
}

/** Empty jars of one size as they stand in a cellar. */
export interface JarStock {
  readonly size: JarSize
  readonly count: number
  /** Of those, jars with a nick or a crack in the rim: they do not seal and may break. */
  readonly chipped: number
  /** Glass that food was bought in: weaker than canning jars. */
  readonly isShopJar: boolean
}

/** What a day needs of one jar size, and what was left out of the stock. */
export interface JarNeed extends Need {
  readonly size: JarSize
  readonly chippedOut: number
  /** Shop jars left out because this size goes under pressure. */
  readonly shopJarsOut: number
}

/**
 * What the planned jars of each size need against the stock: chipped jars are out, shop jars are out wherever a pressure canner is used.
 *
 * Source: USDA Complete Guide to Home Canning, Agriculture Information Bulletin No. 539, Guide 1, Jars and lids.
 *
 * @param planned - how many jars of which size go into which kind of canner; a size may come more than once
 * @returns one line a size, smallest first, for every size that is planned
 */
export function jarsNeeded(
  planned: readonly { readonly size: JarSize; readonly jars: number; readonly method: Method }[],
  stock: readonly JarStock[],
  sparePercent = SPARE_PERCENT,
): JarNeed[] {
  return JAR_SIZES.filter((size) => planned.some((line) => line.size === size)).map((size) => {
    const lines = planned.filter((line) => line.size === size)
    const isPressure = lines.some((line) => line.method === 'pressure')
    const ofSize = stock.filter((line) => line.size === size)
    const chippedOut = sum(ofSize.map((line) => line.chipped))
    const shopJarsOut = isPressure ? sum(ofSize.filter((line) => line.isShopJar).map((line) => line.count - line.chipped)) : 0
    const usable = sum(ofSize.map((line) => line.count)) - chippedOut - shopJarsOut
    return { size, chippedOut, shopJarsOut, ...supplyNeed(sum(lines.map((line) => line.jars)), usable, sparePercent) }
  })
}

const sum = (counts: readonly number[]) => counts.reduce((total, count) => total + count, 0)

function requireWhole(count: number): void {
  if (!Number.isSafeInteger(count) || count < 0) throw new RangeError(`Not a whole number of 0 or more: ${count}`)
}
