import { exactPart } from '@/shared/allocation/largest-remainder'
import { type ShareProblem, shareJars } from '@/shared/allocation/share-jars'
import { bestWorstDeviation, type SizedClaim, shareSizes } from '@/shared/allocation/share-sizes'
import type { Claim, Share, ShareRule, ShareTable } from '@/shared/allocation/share-table'
import { JAR_MILLILITRES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { ok, type Result } from '@/shared/result/result'
import { productRule } from './day-share-rule'

/** One product in one jar size, with what there is to share and who asks. */
export interface ToShare {
  readonly id: string
  /** The same for jars of one recipe in several sizes. */
  readonly recipeId: string
  readonly jarSize: JarSize
  /** Whole jars. */
  readonly jars: number
  readonly claims: readonly Claim[]
}

/** How far from their exact parts households are by volume, over all sizes of a product. Millilitres. */
export interface VolumeFit {
  readonly worst: number
  /** The smallest that any sharing could have reached; null when there are too many ways to try. */
  readonly best: number | null
}

/** A product's table, and how its sizes fit together where it is shared in several. */
export interface Shared {
  readonly id: string
  readonly table: ShareTable
  readonly fit: VolumeFit | null
}

/** Ways that are looked at for the best possible sharing: what a page can wait for. */
const TRIES = 100_000

/**
 * The share tables of a day by its rule, in the order given.
 *
 * In proportion, the sizes of one recipe are shared together, large jars first, and what rounding gave too much or too little of one size is carried into
 * the next, so that nobody is favoured twice. Under every other rule each size is a table of its own; a lot is drawn for each anew.
 */
export function shareDay(products: readonly ToShare[], rule: ShareRule): Result<Shared[], ShareProblem> {
  const shared = new Map<string, Shared>()
  for (const product of products) {
    const table = shareJars(product.jars, product.claims, productRule(rule, product))
    if (!table.ok) return table
    shared.set(product.id, { id: product.id, table: table.value, fit: null })
  }
  if (rule.kind === 'in-proportion') {
    for (const sizes of sizesOfRecipes(products)) for (const each of shareTogether(sizes, shared)) shared.set(each.id, each)
  }
  return ok(products.flatMap(({ id }) => shared.get(id) ?? []))
}

/** Products of one recipe in sizes that differ, the largest first; those that stand alone are not among them. */
function sizesOfRecipes(products: readonly ToShare[]): ToShare[][] {
  const groups = new Map<string, ToShare[]>()
  for (const product of products) {
    const group = groups.get(product.recipeId) ?? []
    if (!group.some(({ jarSize }) => jarSize === product.jarSize)) groups.set(product.recipeId, [...group, product])
  }
  const bySize = (a: ToShare, b: ToShare) => JAR_MILLILITRES[b.jarSize] - JAR_MILLILITRES[a.jarSize]
  return [...groups.values()].filter((group) => group.length > 1).map((group) => group.sort(bySize))
}

function shareTogether(sizes: readonly ToShare[], alone: ReadonlyMap<string, Shared>): Shared[] {
  const claims = sizedClaims(sizes)
  const sealed = Object.fromEntries(sizes.map(({ jarSize, jars }) => [jarSize, jars]))
  const together = shareSizes(sealed, claims)
  const fit: VolumeFit = { worst: together.worstDeviation, best: bestWorstDeviation(sealed, claims, TRIES) ?? null }
  const jarsOf = new Map(together.shares.map(({ householdId, jars }) => [householdId, jars]))
  const carried = new Map<string, number>()
  return sizes.flatMap((size) => {
    const before = alone.get(size.id)?.table
    if (!before) return []
    const pool = Math.min(size.jars, before.asked)
    const shares = before.shares.map((share): Share => {
      const jars = jarsOf.get(share.householdId)?.[size.jarSize] ?? 0
      if (share.reason.kind === 'asked-for-none' || share.reason.kind === 'allergen') return share
      const carriedMillilitres = carried.get(share.householdId) ?? 0
      const exact = before.asked === 0 ? 0 : (pool * share.asked) / before.asked
      carried.set(share.householdId, carriedMillilitres + (exact - jars) * JAR_MILLILITRES[size.jarSize])
      if (pool === before.asked) return share
      const sum = { pool, weight: share.asked, weights: before.asked, quota: exactPart(pool, share.asked, before.asked) }
      return { ...share, jars, first: 0, sum, reason: { kind: 'together', carriedMillilitres: Math.round(carriedMillilitres) } }
    })
    const given = shares.reduce((sum, { jars }) => sum + jars, 0)
    return [{ id: size.id, table: { ...before, shares, given, left: size.jars - given }, fit }]
  })
}

/** What each household asks for, size by size; where an allergen stands in the way, nothing. */
function sizedClaims(sizes: readonly ToShare[]): SizedClaim[] {
  const claimsOf = sizes.map(({ jarSize, claims }) => ({ jarSize, claims: new Map(claims.map((claim) => [claim.householdId, claim])) }))
  const names = new Map(sizes.flatMap(({ claims }) => claims.map(({ householdId, householdName }) => [householdId, householdName])))
  return [...names].map(([householdId, householdName]) => ({
    householdId,
    householdName,
    jars: Object.fromEntries(
      claimsOf.map(({ jarSize, claims }) => {
        const claim = claims.get(householdId)
        return [jarSize, claim && !claim.allergens?.length ? claim.jars : 0]
      }),
    ),
  }))
}
