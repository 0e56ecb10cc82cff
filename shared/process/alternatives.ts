import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { type Gauge, type Method, PACKS, type Pack } from '@/shared/kitchen/methods'
import { type CannerKind, linesOf, type ReadyLine } from './process-index'
import type { PublishedAlternative } from './process-refusal'
import type { Band } from './published-row'

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
      JAR_SIZES.filter((jar) => isPublished(linesOf(asked.foodId, canner, pack, jar), jar, feet)).map((jar) => ({
        canner,
        pack,
        jar,
      })),
    ),
  )
  return all
    .map((each) => ({ each, distance: distance(asked, each) }))
    .filter(({ each }) => !(each.canner === asked.canner && each.pack === asked.pack && each.jar === asked.jar))
    .sort((a, b) => a.distance - b.distance)
    .slice(0, MOST)
    .map(({ each: { canner, pack, jar } }) => ({ foodId: asked.foodId, ...methodOf(canner), pack, jar }))
}

/** Printed for this very jar size, not only allowed to it by the rule for smaller jars. */
const isPublished = (lines: readonly ReadyLine[] | undefined, jar: JarSize, feet: number): boolean =>
  lines?.some(({ bands }) => bands.some(({ band, process }) => process?.jarRow === jar && reaches(band, feet))) ?? false

const reaches = ({ minFeet, maxFeet }: Band, feet: number): boolean => feet >= minFeet && (maxFeet === null || feet <= maxFeet)

/** Another canner counts most, then another pack, then each step of jar size; 0 is the very thing asked for. */
const distance = (asked: AlternativeSearch, each: { canner: CannerKind; pack: Pack; jar: JarSize }): number =>
  (each.canner === asked.canner ? 0 : 100) +
  (asked.pack === null || each.pack === asked.pack ? 0 : 10) +
  Math.abs(JAR_SIZES.indexOf(each.jar) - JAR_SIZES.indexOf(asked.jar))

const methodOf = (canner: CannerKind): { method: Method; gauge: Gauge | null } =>
  canner === 'dial' || canner === 'weighted' ? { method: 'pressure', gauge: canner } : { method: canner, gauge: null }
