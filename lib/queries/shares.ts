import 'server-only'
import { database } from '@/lib/db/client'
import { shareInput } from '@/lib/queries/share-input'
import { decimalOf } from '@/shared/allocation/largest-remainder'
import { shareJars } from '@/shared/allocation/share-jars'
import type { ShareTable } from '@/shared/allocation/share-table'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { dayShareRule } from '@/shared/share/day-share-rule'

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
  readonly recipeId: string
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

/** Reads the share-out in a fixed number of statements. What was awarded stands as it was written; before that the rule is worked out on what is sealed. */
export async function sharesPage(groupId: string, dayId: string, shareRule: string): Promise<SharesPage> {
  const db = database()
  const [inputs, awards, jars] = await Promise.all([
    shareInput(db, groupId, dayId),
    db.award.findMany({
      where: { groupId, preparation: { dayId } },
      select: { preparationId: true, householdId: true, asked: true, jars: true, quota: true, reason: true, handedOverAt: true },
    }),
    db.jar.groupBy({ by: ['householdId'], where: { groupId, dayId, state: 'sealed', householdId: { not: null } }, _count: true }),
  ])
  const isAwarded = awards.length > 0
  const rule = dayShareRule(shareRule)
  const products = inputs.map((input) => {
    const shared = shareJars(input.sealed.length, input.claims, rule)
    if (!shared.ok) throw new Error(`the shares of ${input.preparationId} cannot be reckoned: ${shared.problem.kind}`)
    const table = shared.value
    const cells = Object.fromEntries(
      table.shares.map((share) => {
        const award = awards.find((each) => each.preparationId === input.preparationId && each.householdId === share.householdId)
        const own = input.sealed
          .filter(({ householdId }) => householdId === share.householdId)
          .map(({ shortName, serial }) => ({ shortName, serial }))
        const allergens = input.claims.find(({ householdId }) => householdId === share.householdId)?.allergens ?? []
        const quota = share.sum ? (share.first + decimalOf(share.sum.quota)).toFixed(2) : ''
        const cell = award
          ? { asked: award.asked, jars: award.jars, quota: award.quota, reason: award.reason }
          : { asked: share.asked, jars: share.jars, quota, reason: '' }
        return [share.householdId, { ...cell, allergens, own }]
      }),
    )
    const given = Object.values(cells).reduce((sum, cell) => sum + cell.jars, 0)
    const exact = table.shares.reduce((sum, { sum: worked, first, jars }) => sum + (worked ? first + decimalOf(worked.quota) : jars), 0)
    return {
      preparationId: input.preparationId,
      title: input.title,
      recipeId: input.recipeId,
      jarSize: input.jarSize,
      sealed: input.sealed.length,
      unchecked: input.unchecked,
      asked: table.asked,
      given,
      left: input.sealed.length - given,
      exactSum: exact.toFixed(2),
      cells,
      table,
    }
  })
  const asking = (inputs[0]?.claims ?? []).filter(({ householdId }) =>
    products.some(({ cells }) => (cells[householdId]?.asked ?? 0) > 0 || (cells[householdId]?.jars ?? 0) > 0),
  )
  return {
    products,
    isAwarded,
    anyHandedOver: awards.some(({ handedOverAt }) => handedOverAt !== null),
    households: asking
      .map(({ householdId: id, householdName: name }) => ({
        id,
        name,
        handedOver: awards.some(({ householdId, handedOverAt }) => householdId === id && handedOverAt !== null),
        inStore: jars.find(({ householdId }) => householdId === id)?._count ?? 0,
      }))
      .sort((a, b) => (a.name < b.name ? -1 : 1)),
  }
}
