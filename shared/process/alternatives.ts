import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { type Gauge, type Method, PACKS, type Pack } from '@/shared/kitchen/methods'
import { type CannerKind, LINES, lineKey, type ReadyLine } from './process-index'
import type { PublishedAlternative } from './process-refusal'

const CANNERS: readonly CannerKind[] = ['boiling-water', 'atmospheric-steam', 'dial', 'weighted']
const MOST = 6

/** What was asked for and could not be had. */
export type AlternativeSearch = {
  readonly foodId: string
  readonly canner: CannerKind | null
  readonly pack: Pack | null
  readonly jar: JarSize
}

/**
 * The published ways to put up the same food at the same elevation, nearest first: the same canner and pack with another jar, then
 * another pack, then another canner. At most six; ties keep the order of canners, packs and jars.
 *
 * @param feet - whole feet above sea level
 */
export function publishedAlternatives(asked: AlternativeSearch, feet: number): PublishedAlternative[] {
  const all = CANNERS.flatMap((canner) =>
    PACKS.flatMap((pack) =>
      JAR_SIZES.filter((jar) => isPublished(LINES.get(lineKey(asked.foodId, canner, pack, jar)), feet)).map((jar) => ({
        canner,
        pack,
        jar,
      })),
    ),
  )
  return all
    .map((each) => ({ each, distance: distance(asked, each) }))
    .filter(({ distance }) => distance > 0)
    .sort((a, b) => a.distance - b.distance)
    .slice(0, MOST)
    .map(({ each: { canner, pack, jar } }) => ({ foodId: asked.foodId, ...methodOf(canner), pack, jar }))
}

const isPublished = (lines: readonly ReadyLine[] | undefined, feet: number): boolean =>
  lines?.some(({ bands }) =>
    bands.some(({ band, process }) => process !== null && feet >= band.minFeet && feet <= (band.maxFeet ?? Number.POSITIVE_INFINITY)),
  ) ?? false

/** Another canner counts most, then another pack, then each step of jar size; 0 is the very thing asked for. */
const distance = (asked: AlternativeSearch, each: { canner: CannerKind; pack: Pack; jar: JarSize }): number =>
  (each.canner === asked.canner ? 0 : 100) +
  (asked.pack === null || each.pack === asked.pack ? 0 : 10) +
  Math.abs(JAR_SIZES.indexOf(each.jar) - JAR_SIZES.indexOf(asked.jar))

const methodOf = (canner: CannerKind): { method: Method; gauge: Gauge | null } =>
  canner === 'dial' || canner === 'weighted' ? { method: 'pressure', gauge: canner } : { method: canner, gauge: null }
