import 'server-only'
import { database } from '@/lib/db/client'
import { type ShareInput, shareInput } from '@/lib/queries/share-input'
import { decimalOf } from '@/shared/allocation/largest-remainder'
import { shareJars } from '@/shared/allocation/share-jars'
import type { Share, ShareRule, ShareTable } from '@/shared/allocation/share-table'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { ProducePattern } from '@/shared/recipes/recipe'
import { dayShareRule } from '@/shared/share/day-share-rule'
import { sayQuota } from '@/shared/wording/say-share'
import { TO_HAND_OVER } from './share-input'

/** What one household got, or would get, of one product. */
export interface ShareCell {
  readonly asked: number
  readonly jars: number
  readonly quota: string
  readonly reason: string
  readonly allergens: readonly string[]
  /** The jars that are its own. */
  readonly own: readonly { readonly shortName: string; readonly serial: string }[]
}

/** One product of the share-out with its table by the rule. */
export interface SharedOut {
  readonly preparationId: string
  readonly title: string
  readonly pattern: ProducePattern
  readonly isCold: boolean
  readonly jarSize: JarSize
  readonly sealed: number
  readonly unchecked: number
  readonly asked: number
  readonly given: number
  readonly left: number
  /** "46.00" */
  readonly exactSum: string
  readonly cells: Readonly<Record<string, ShareCell>>
  readonly table: ShareTable
}

/** A household's line. */
export interface ShareHousehold {
  readonly id: string
  readonly name: string
  readonly handedOver: boolean
  /** Sealed jars of its own that are still in the store. */
  readonly inStore: number
}

/** The share-out of a day: as awarded, or as the rule would give it now. */
export interface SharesPage {
  readonly products: readonly SharedOut[]
  readonly households: readonly ShareHousehold[]
  readonly isAwarded: boolean
  readonly anyHandedOver: boolean
}

interface AwardRow {
  readonly preparationId: string
  readonly householdId: string
  readonly asked: number
  readonly jars: number
  readonly quota: string
  readonly reason: string
  readonly handedOverAt: Date | null
}

/** Reads the share-out in a fixed number of statements. What was awarded stands as it was written; before that the rule is worked out on what is sealed. */
export async function sharesPage(groupId: string, dayId: string, shareRule: string): Promise<SharesPage> {
  const db = database()
  const [inputs, awards, inStore] = await Promise.all([
    shareInput(db, groupId, dayId),
    db.award.findMany({
      where: { groupId, preparation: { dayId } },
      select: { preparationId: true, householdId: true, asked: true, jars: true, quota: true, reason: true, handedOverAt: true },
    }),
    db.jar.groupBy({ by: ['householdId'], where: { groupId, dayId, OR: TO_HAND_OVER, householdId: { not: null } }, _count: true }),
  ])
  const products = inputs.map((input) => sharedOut(input, awards, dayShareRule(shareRule)))
  const handedOver = new Set(awards.filter(({ handedOverAt }) => handedOverAt !== null).map(({ householdId }) => householdId))
  const left = new Map(inStore.map(({ householdId, _count }) => [householdId, _count]))
  const households = (inputs[0]?.claims ?? [])
    .filter(({ householdId }) => products.some(({ cells }) => (cells[householdId]?.asked ?? 0) + (cells[householdId]?.jars ?? 0) > 0))
    .map(({ householdId: id, householdName: name }) => ({ id, name, handedOver: handedOver.has(id), inStore: left.get(id) ?? 0 }))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
  return { products, households, isAwarded: awards.length > 0, anyHandedOver: handedOver.size > 0 }
}

function sharedOut(input: ShareInput, awards: readonly AwardRow[], rule: ShareRule): SharedOut {
  const { preparationId, title, pattern, isCold, jarSize, unchecked, sealed } = input
  const shared = shareJars(sealed.length, input.claims, rule)
  if (!shared.ok) throw new Error(`the shares of ${preparationId} cannot be reckoned: ${shared.problem.kind}`)
  const table = shared.value
  const ofProduct = awards.filter((award) => award.preparationId === preparationId)
  const cells = Object.fromEntries(table.shares.map((share) => [share.householdId, cellOf(input, share, ofProduct)]))
  const given = Object.values(cells).reduce((sum, cell) => sum + cell.jars, 0)
  const exact = table.shares.reduce((sum, share) => sum + (share.sum ? share.first + decimalOf(share.sum.quota) : share.jars), 0)
  const counts = { sealed: sealed.length, unchecked, asked: table.asked, given, left: sealed.length - given, exactSum: exact.toFixed(2) }
  return { preparationId, title, pattern, isCold, jarSize, ...counts, cells, table }
}

/** As it was awarded, or as the rule gives it now. */
function cellOf({ claims, sealed }: ShareInput, share: Share, awards: readonly AwardRow[]): ShareCell {
  const { householdId } = share
  const award = awards.find((each) => each.householdId === householdId)
  const { asked, jars, quota, reason } = award ?? { asked: share.asked, jars: share.jars, quota: sayQuota(share), reason: '' }
  return {
    asked,
    jars,
    quota,
    reason,
    allergens: claims.find((claim) => claim.householdId === householdId)?.allergens ?? [],
    own: sealed.filter((jar) => jar.householdId === householdId).map(({ shortName, serial }) => ({ shortName, serial })),
  }
}
