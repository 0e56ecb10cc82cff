import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { type Gauge, type Method, PACKS, type Pack } from '@/shared/kitchen/methods'
import { linesOf } from '@/shared/process/process-index'

/** A canner as the tables tell them apart: the method, and for pressure the gauge. */
export type CannerKind = Parameters<typeof linesOf>[1]

/** One canner and pack for which a food has printed rows, with the jars that are printed. */
export type PublishedWay = {
  readonly method: Method
  readonly gauge: Gauge | null
  readonly pack: Pack
  readonly jars: readonly JarSize[]
}

const CANNERS: readonly { readonly kind: CannerKind; readonly method: Method; readonly gauge: Gauge | null }[] = [
  { kind: 'boiling-water', method: 'boiling-water', gauge: null },
  { kind: 'atmospheric-steam', method: 'atmospheric-steam', gauge: null },
  { kind: 'dial', method: 'pressure', gauge: 'dial' },
  { kind: 'weighted', method: 'pressure', gauge: 'weighted' },
]

/** A canner as the tables tell them apart; null for pressure without its gauge. */
export const cannerKindOf = (method: Method, gauge: Gauge | null): CannerKind | null => (method === 'pressure' ? gauge : method)

/**
 * The ways in which a food is printed, canner by canner and pack by pack, each with the jar sizes printed for it.
 *
 * @param feet - whole feet above sea level; null while nobody has said, then every way that is printed for any elevation
 */
export function publishedWays(foodId: string, feet: number | null): PublishedWay[] {
  return CANNERS.flatMap(({ kind, method, gauge }) =>
    PACKS.map((pack) => ({ method, gauge, pack, jars: JAR_SIZES.filter((jar) => isPrinted(foodId, kind, pack, jar, feet)) })),
  ).filter(({ jars }) => jars.length > 0)
}

/** Printed for this very size, not only allowed to it by the rule for smaller jars. */
const isPrinted = (foodId: string, canner: CannerKind, pack: Pack, jar: JarSize, feet: number | null): boolean =>
  linesOf(foodId, canner, pack, jar)?.some(({ bands }) =>
    bands.some(
      ({ band, process }) =>
        process?.jarRow === jar && (feet === null || (feet >= band.minFeet && (band.maxFeet === null || feet <= band.maxFeet))),
    ),
  ) ?? false
