import type { ProcessFinder } from '@/shared/forms/process-finder'
import { wholeFeet } from '@/shared/process/elevation'
import { findFood } from '@/shared/process/food-names'
import { lookUpProcess } from '@/shared/process/look-up-process'
import { type Elevation, type ProcessQuery, UNSAFE_METHODS } from '@/shared/process/process-query'
import type { ProcessRefusal } from '@/shared/process/process-refusal'
import type { ScheduledProcess } from '@/shared/process/scheduled-process'
import { UNVERIFIED_ROWS } from '@/shared/process/unverified-rows'
import { type PublishedWay, publishedWays } from './published-ways'

/** What the finder says: nothing yet, how the food may be put up, the printed process, or why there is none. */
export type FinderAnswer =
  | { readonly kind: 'nothing-asked' }
  | { readonly kind: 'choose'; readonly food: string; readonly feet: number | null; readonly ways: readonly PublishedWay[] }
  | { readonly kind: 'process'; readonly process: ScheduledProcess }
  | { readonly kind: 'refused'; readonly refusal: ProcessRefusal }

/**
 * Answers a question as far as it goes. Without a jar or a canner the published ways are offered instead of a guess; a food with no
 * way at all, at this elevation or anywhere, is refused with the reason.
 */
export function answerFinder(asked: ProcessFinder): FinderAnswer {
  const { food, jar, method } = asked
  if (food === undefined) return { kind: 'nothing-asked' }
  const elevation = elevationOf(asked)
  if (jar !== undefined && method !== undefined) return settle(queryOf(asked, { food, jar, method, elevation }))

  if (method !== undefined && isUnsafe(method)) return settle(queryOf(asked, { food, jar: 'pint', method, elevation }))

  const found = findFood(food)
  if (!found.ok) return settle(queryOf(asked, { food, jar: 'pint', method: 'boiling-water', elevation }))
  const feet = wholeFeet(elevation)
  const ways = publishedWays(found.value.id, feet)
  if (ways.length > 0) return { kind: 'choose', food: found.value.name, feet, ways }
  const [way] = publishedWays(found.value.id, null)
  const held = UNVERIFIED_ROWS.find(({ foodId }) => foodId === found.value.id)
  const { method: known = 'boiling-water', gauge = null } = way ?? held ?? {}
  // With no way anywhere the height does not matter, so the reason may be asked for at 0 ft: it cannot give a time.
  return settle({ food, pack: null, jar: way?.jars[0] ?? 'pint', method: known, gauge, elevation: way ? elevation : { feet: 0 } })
}

/** The elevation that was asked about, or null. */
export const elevationOf = ({ elevation, unit }: Pick<ProcessFinder, 'elevation' | 'unit'>): Elevation => {
  if (elevation === undefined) return null
  return unit === 'm' ? { metres: elevation } : { feet: elevation }
}

const isUnsafe = (method: ProcessQuery['method']): boolean => UNSAFE_METHODS.some((unsafe) => unsafe === method)

function queryOf(
  { pack, gauge, option, thickened, doubled, aluminium }: ProcessFinder,
  known: Pick<ProcessQuery, 'food' | 'jar' | 'method' | 'elevation'>,
): ProcessQuery {
  const preparation = {
    untestedThickener: thickened === 'yes',
    batchesInOneKettle: doubled === 'yes' ? 2 : 1,
    ...(aluminium === 'yes' ? { kettleMetal: 'aluminium' as const } : {}),
  }
  return { ...known, pack: pack ?? null, gauge: gauge ?? null, ...(option === undefined ? {} : { option }), preparation }
}

function settle(query: ProcessQuery): FinderAnswer {
  const found = lookUpProcess(query)
  return found.ok ? { kind: 'process', process: found.value } : { kind: 'refused', refusal: found.problem }
}
