import 'server-only'
import { database } from '@/lib/db/client'
import { type ShareInput, shareInput, tablesOf } from '@/lib/queries/share-input'
import { decimalOf } from '@/shared/allocation/largest-remainder'
import { type LeftOffer, offerLeftJars, type Wish } from '@/shared/allocation/offer-left-jars'
import type { Share, ShareTable } from '@/shared/allocation/share-table'
import { JAR_MILLILITRES, type JarSize } from '@/shared/kitchen/jar-sizes'
import type { ProducePattern } from '@/shared/recipes/recipe'
import { dayShareRule } from '@/shared/share/day-share-rule'
import type { Shared, VolumeFit } from '@/shared/share/share-day'
import { isoDate } from '@/shared/time/calendar-date'
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
  /** How near all sizes together come, where the product is shared in several. */
  readonly fit: VolumeFit | null
  /** Whom to offer the jars that nobody claimed, in that order. */
  readonly offers: readonly LeftOffer[]
}

/** A household's line. */
export interface ShareHousehold {
  readonly id: string
  readonly name: string
  readonly handedOver: boolean
  /** Sealed jars of its own that are still in the store. */
  readonly inStore: number
  /** How to reach it; for those who hand over. */
  readonly contact: string
  readonly wantsOwnGlass: boolean
  /** Jars in its own glass, as far as it is known and it wishes for them. */
  readonly ownGlass: readonly string[]
}

/** The share-out of a day: as awarded, or as the rule would give it now. */
export interface SharesPage {
  readonly products: readonly SharedOut[]
  readonly households: readonly ShareHousehold[]
  readonly isAwarded: boolean
  readonly anyHandedOver: boolean
  readonly pickUp: { readonly place: string; readonly until: string | null; readonly contact: string }
  readonly everybody: readonly { readonly id: string; readonly name: string }[]
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
  const rule = dayShareRule(shareRule, dayId)
  const [inputs, awards, inStore, reach, wishes, waiting, day] = await Promise.all([
    shareInput(db, groupId, dayId, rule),
    db.award.findMany({
      where: { groupId, preparation: { dayId } },
      select: { preparationId: true, householdId: true, asked: true, jars: true, quota: true, reason: true, handedOverAt: true },
    }),
    db.jar.groupBy({ by: ['householdId'], where: { groupId, dayId, OR: TO_HAND_OVER, householdId: { not: null } }, _count: true }),
    db.household.findMany({ where: { groupId }, select: { id: true, name: true, contact: true }, orderBy: { name: 'asc' } }),
    db.ownJarWish.findMany({ where: { groupId, dayId }, select: { householdId: true } }),
    db.waiting.findMany({
      where: { groupId, preparation: { dayId } },
      select: { preparationId: true, householdId: true, jars: true, place: true, household: { select: { name: true } } },
    }),
    db.day.findUnique({
      where: { groupId_id: { groupId, id: dayId } },
      select: { pickUpPlace: true, pickUpUntil: true, pickUpContact: true },
    }),
  ])
  const tables = tablesOf(inputs, rule)
  const plain = inputs.map((input, index) => sharedOut(input, awards, tables[index]))
  const wishesOf = (preparationId: string) =>
    waiting
      .filter((wish) => wish.preparationId === preparationId)
      .map(({ householdId, jars, place, household }): Wish => ({ householdId, householdName: household.name, jars, place }))
  const products = plain.map((product) => ({ ...product, offers: leftOffers(product, plain, wishesOf(product.preparationId)) }))
  const handedOver = new Set(awards.filter(({ handedOverAt }) => handedOverAt !== null).map(({ householdId }) => householdId))
  const left = new Map(inStore.map(({ householdId, _count }) => [householdId, _count]))
  const households = (inputs[0]?.claims ?? [])
    .filter(({ householdId }) => products.some(({ cells }) => (cells[householdId]?.asked ?? 0) + (cells[householdId]?.jars ?? 0) > 0))
    .map(({ householdId: id, householdName: name }) => ({
      ...{ id, name, handedOver: handedOver.has(id), inStore: left.get(id) ?? 0 },
      contact: reach.find((household) => household.id === id)?.contact ?? '',
      wantsOwnGlass: wishes.some(({ householdId }) => householdId === id),
      ownGlass: inputs.flatMap(({ sealed }) => sealed.flatMap(({ wishedBy, shortName }) => (wishedBy === id ? [shortName] : []))),
    }))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
  const { pickUpPlace: place = '', pickUpUntil = null, pickUpContact: contact = '' } = day ?? {}
  const pickUp = { place, until: pickUpUntil && isoDate(pickUpUntil), contact }
  const everybody = reach.map(({ id, name }) => ({ id, name }))
  return { products, households, isAwarded: awards.length > 0, anyHandedOver: handedOver.size > 0, pickUp, everybody }
}

/** Whom to offer what is left of a product: by what they lack over the whole day. */
function leftOffers(product: Bare, all: readonly Bare[], waiting: readonly Wish[]): readonly LeftOffer[] {
  if (product.left <= 0) return []
  const volume = (id: string, of: 'asked' | 'jars') =>
    all.reduce((sum, each) => sum + (each.cells[id]?.allergens.length ? 0 : (each.cells[id]?.[of] ?? 0)) * JAR_MILLILITRES[each.jarSize], 0)
  const households = product.table.shares.map(({ householdId, householdName }) => ({
    ...{ householdId, householdName, asked: volume(householdId, 'asked'), got: volume(householdId, 'jars') },
    avoids: (product.cells[householdId]?.allergens.length ?? 0) > 0,
  }))
  return offerLeftJars(households, waiting)
}

type Bare = Omit<SharedOut, 'offers'>

function sharedOut(input: ShareInput, awards: readonly AwardRow[], shared: Shared | undefined): Bare {
  const { preparationId, title, pattern, isCold, jarSize, unchecked, sealed } = input
  if (!shared) throw new Error(`the shares of ${preparationId} cannot be reckoned`)
  const { table, fit } = shared
  const ofProduct = awards.filter((award) => award.preparationId === preparationId)
  const cells = Object.fromEntries(table.shares.map((share) => [share.householdId, cellOf(input, share, ofProduct)]))
  const given = Object.values(cells).reduce((sum, cell) => sum + cell.jars, 0)
  const exact = table.shares.reduce((sum, share) => sum + (share.sum ? share.first + decimalOf(share.sum.quota) : share.jars), 0)
  const counts = { sealed: sealed.length, unchecked, asked: table.asked, given, left: sealed.length - given, exactSum: exact.toFixed(2) }
  return { preparationId, title, pattern, isCold, jarSize, ...counts, cells, table, fit }
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
