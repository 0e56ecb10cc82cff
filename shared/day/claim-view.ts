import { predictShares } from '@/shared/allocation/predict-shares'
import type { Claim, ShareRule } from '@/shared/allocation/share-table'
import type { JarYield } from '@/shared/recipes/recipe'

/** What a household sees of one product while it makes up its mind; all in jars. */
export interface ClaimView {
  /** Jars that will probably come about, and jars that surely will. */
  readonly likely: number
  readonly sure: number
  readonly yours: number
  readonly others: number
  /** The most that this household may ask for. */
  readonly most: number
  /** What it gets if only the sure jars seal, for each count asked for, from 0 up to `most`. */
  readonly ifOnlySure: readonly number[]
}

/** A product's offer with all claims on it. */
export interface ProductOffer {
  readonly offered: number
  readonly spareJars: number
  readonly claims: ReadonlyMap<string, number>
  /** Names of the households that claim. */
  readonly claimants: ReadonlyMap<string, string>
}

/**
 * Jars that the offer will bring: as many whole batches as it takes, each with its range, but never more than are offered.
 *
 * @param batchYield - jars of one batch in the product's jar size
 */
export function expectedJars({ offered, spareJars }: Pick<ProductOffer, 'offered' | 'spareJars'>, batchYield: JarYield): JarYield {
  const batches = Math.ceil((offered + spareJars) / Math.max(1, batchYield.typical))
  const upTo = (jars: number) => Math.min(offered, jars * batches)
  return { low: upTo(batchYield.low), typical: upTo(batchYield.typical), high: upTo(batchYield.high) }
}

/** How a product looks to one household: its own jars, the others', and what a short yield would leave it. */
export function claimView(
  product: ProductOffer,
  batchYield: JarYield,
  household: { id: string; name: string },
  rule: ShareRule,
): ClaimView {
  const { low: sure, typical: likely } = expectedJars(product, batchYield)
  const yours = product.claims.get(household.id) ?? 0
  const others = [...product.claims].filter(([id]) => id !== household.id)
  const othersSum = others.reduce((sum, [, jars]) => sum + jars, 0)
  const most = Math.max(yours, product.offered - othersSum)
  const ifOnlySure = Array.from({ length: most + 1 }, (_, asked) => {
    const claims: Claim[] = [
      ...others.map(([id, jars]) => ({ householdId: id, householdName: product.claimants.get(id) ?? id, jars })),
      { householdId: household.id, householdName: household.name, jars: asked },
    ]
    const predicted = predictShares({ low: sure, typical: sure, high: sure }, claims, rule)
    return predicted.ok ? (predicted.value.find(({ householdId }) => householdId === household.id)?.atLow ?? 0) : 0
  })
  return { likely, sure, yours, others: othersSum, most, ifOnlySure }
}
