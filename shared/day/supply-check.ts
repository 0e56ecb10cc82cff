import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import type { Method } from '@/shared/kitchen/methods'
import { judgeLids } from '@/shared/supplies/lid-age'
import { type JarNeed, jarsNeeded, type Need, supplyNeed } from '@/shared/supplies/supplies-needed'

/** Jars, bands or lids of one purchase, as the stock lists them. */
export interface StockLot {
  readonly kind: string
  readonly jarSize: string | null
  readonly mouth: string
  readonly count: number
  /** Of jars: those with a nick or a crack in the rim, and glass that food was bought in. */
  readonly chipped: number
  readonly isShopJar: boolean
  /** ISO date, or null when nobody knows. */
  readonly boughtOn: string | null
}

/** Jars planned of one size, at their typical yield. */
export interface PlannedJars {
  readonly size: JarSize
  readonly jars: number
  readonly method: Method
}

/** What a day needs of jars, lids and bands against the stock. */
export interface SupplyCheck {
  readonly jars: readonly JarNeed[]
  readonly lids: Need
  /** Lids in stock that may not go on jars: too old, or of unknown age. */
  readonly lidsOut: number
  readonly bands: Need
}

/**
 * Holds the planned jars against the stock. Lids get the day's spare on top; jars and bands are counted as planned, because a jar that
 * breaks is replaced by the one that did not fill. Chipped jars are out, and shop jars of a size that goes under pressure, as on the shopping list.
 *
 * @param sparePercent - spare lids on top of the plan
 */
export function checkSupplies(
  planned: readonly PlannedJars[],
  stock: readonly StockLot[],
  date: string,
  sparePercent: number,
): SupplyCheck {
  const total = planned.reduce((sum, line) => sum + line.jars, 0)
  const jarLots = stock.flatMap(({ kind, jarSize, count, chipped, isShopJar }) => {
    const size = JAR_SIZES.find((each) => each === jarSize)
    return kind === 'jar' && size ? [{ size, count, chipped, isShopJar }] : []
  })
  const lids = stock.filter((lot) => lot.kind === 'lid')
  const usable = lids.filter(isUsableOn(date)).reduce((sum, lot) => sum + lot.count, 0)
  const all = lids.reduce((sum, lot) => sum + lot.count, 0)
  const bands = stock.filter((lot) => lot.kind === 'band').reduce((sum, lot) => sum + lot.count, 0)
  return {
    jars: jarsNeeded(planned, jarLots, 0),
    lids: supplyNeed(total, usable, sparePercent),
    lidsOut: all - usable,
    bands: supplyNeed(total, bands, 0),
  }
}

const isUsableOn = (date: string) => (lot: StockLot) =>
  judgeLids({ mouth: lot.mouth === 'wide' ? 'wide' : 'regular', count: lot.count, since: lot.boughtOn, isUsed: false }, date).isUsable
