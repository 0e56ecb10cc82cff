import { SUPPLY_KINDS, type SupplyKind } from '@/shared/kitchen/equipment'
import { JAR_SIZES, type JarSize, jarName } from '@/shared/kitchen/jar-sizes'
import type { Mouth } from './lid-age'

/** Things of one purchase, as far as sums need them. */
export interface CountedLot {
  readonly kind: SupplyKind
  readonly jarSize: JarSize | null
  readonly mouth: Mouth
  readonly count: number
  readonly isUsable: boolean
}

/** One sum: "Pints, regular: 38 jars". `notUsable` are counted apart. */
export interface StockTotal {
  readonly label: string
  readonly count: number
  readonly unit: string
  readonly notUsable: number
}

/** Sums by kind, size and mouth: jars by size first, then bands, then lids. A sum of nothing is left out. */
export function stockTotals(lots: readonly CountedLot[]): StockTotal[] {
  const keys = SUPPLY_KINDS.flatMap((kind) =>
    (kind === 'jar' ? JAR_SIZES : [null]).flatMap((jarSize) => (['regular', 'wide'] as const).map((mouth) => ({ kind, jarSize, mouth }))),
  )
  return keys.flatMap(({ kind, jarSize, mouth }) => {
    const same = lots.filter((lot) => lot.kind === kind && lot.jarSize === jarSize && lot.mouth === mouth && lot.count > 0)
    if (same.length === 0) return []
    const count = sum(same.filter(({ isUsable }) => isUsable))
    const label = `${jarSize === null ? `${capital(kind)}s` : capital(jarName(jarSize, 2))}, ${mouth}`
    return [{ label, count, unit: count === 1 ? kind : `${kind}s`, notUsable: sum(same) - count }]
  })
}

const sum = (lots: readonly CountedLot[]) => lots.reduce((total, { count }) => total + count, 0)

const capital = (word: string) => `${word.slice(0, 1).toUpperCase()}${word.slice(1)}`
