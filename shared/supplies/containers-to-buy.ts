import { JAR_SIZES, type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import type { Method } from '@/shared/kitchen/methods'
import { judgeLids, type Mouth } from './lid-age'
import { type Need, supplyNeed } from './supplies-needed'

/** Jars, lids or bands of one purchase. */
export interface ContainerLot {
  readonly kind: string
  readonly jarSize: string | null
  readonly mouth: string
  readonly count: number
  readonly chipped: number
  readonly isShopJar: boolean
  /** ISO date; null when nobody knows. */
  readonly boughtOn: string | null
}

/** Jars planned of one size. */
export interface PlannedContainers {
  readonly size: JarSize
  readonly jars: number
  readonly method: Method
}

/** What a day needs of jars of one size, or of lids or bands of one mouth. */
export interface ContainerNeed extends Need {
  readonly kind: 'jar' | 'lid' | 'band'
  readonly size: JarSize | null
  readonly mouth: Mouth
  /** In stock and left out: chipped jars, shop jars under pressure, lids that are too old or of unknown age. */
  readonly leftOut: number
  readonly promised: number
}

/** "pint jars, regular mouth", "lids, wide mouth": unique in a list, and the name its packs are kept under. */
export const containerName = ({ kind, size, mouth }: Pick<ContainerNeed, 'kind' | 'size' | 'mouth'>): string =>
  size === null ? `${kind}s, ${mouth} mouth` : `${jarName(size)} jars, ${mouth} mouth`

/** The mouth that most jars in stock of a size have; regular when there are none. */
export function mouthOf(size: JarSize, stock: readonly Pick<ContainerLot, 'kind' | 'jarSize' | 'mouth' | 'count'>[]): Mouth {
  const count = (mouth: Mouth) =>
    stock.filter((lot) => lot.kind === 'jar' && lot.jarSize === size && lot.mouth === mouth).reduce((sum, lot) => sum + lot.count, 0)
  return count('wide') > count('regular') ? 'wide' : 'regular'
}

/**
 * Jars by size, lids and bands by mouth, against stock and promises, in whole boxes of twelve.
 *
 * Chipped jars are out, shop jars are out of every size that goes under pressure, lids go by age. Lids have the day's spare on top; jars and bands are
 * counted as planned, because a jar that breaks is replaced by one that did not fill.
 *
 * Source: USDA Complete Guide to Home Canning, Agriculture Information Bulletin No. 539, Guide 1, Jars and lids.
 *
 * @param date - the canning day, `2027-08-26`
 * @param promised - whole jars that households promised, by size
 */
export function containersToBuy(
  planned: readonly PlannedContainers[],
  stock: readonly ContainerLot[],
  { date, sparePercent, promised }: { date: string; sparePercent: number; promised: Readonly<Partial<Record<JarSize, number>>> },
): ContainerNeed[] {
  const sizes = JAR_SIZES.filter((size) => planned.some((line) => line.size === size && line.jars > 0))
  const jarsOf = (size: JarSize) => sum(planned.filter((line) => line.size === size).map(({ jars }) => jars))
  const jars = sizes.map((size) => {
    const isPressure = planned.some((line) => line.size === size && line.method === 'pressure')
    const lots = stock.filter((lot) => lot.kind === 'jar' && lot.jarSize === size)
    const fit = (lot: ContainerLot) => (isPressure && lot.isShopJar ? 0 : lot.count - lot.chipped)
    return needOf({ kind: 'jar', size, mouth: mouthOf(size, stock) }, jarsOf(size), lots, fit, 0, promised[size] ?? 0)
  })
  const mouths = (['regular', 'wide'] as const).filter((mouth) => sizes.some((size) => mouthOf(size, stock) === mouth))
  const rest = (['lid', 'band'] as const).flatMap((kind) =>
    mouths.map((mouth) => {
      const total = sum(sizes.filter((size) => mouthOf(size, stock) === mouth).map(jarsOf))
      const lots = stock.filter((lot) => lot.kind === kind && lot.mouth === mouth)
      const isFresh = (lot: ContainerLot) => judgeLids({ mouth, count: lot.count, since: lot.boughtOn, isUsed: false }, date).isUsable
      const fit = (lot: ContainerLot) => (kind === 'band' || isFresh(lot) ? lot.count : 0)
      return needOf({ kind, size: null, mouth }, total, lots, fit, kind === 'lid' ? sparePercent : 0, 0)
    }),
  )
  return [...jars, ...rest]
}

function needOf(
  thing: Pick<ContainerNeed, 'kind' | 'size' | 'mouth'>,
  planned: number,
  lots: readonly ContainerLot[],
  fit: (lot: ContainerLot) => number,
  sparePercent: number,
  promised: number,
): ContainerNeed {
  const usable = sum(lots.map(fit))
  const leftOut = sum(lots.map(({ count }) => count)) - usable
  return { ...thing, ...supplyNeed(planned, usable + promised, sparePercent), leftOut, promised }
}

const sum = (counts: readonly number[]) => counts.reduce((total, count) => total + count, 0)
