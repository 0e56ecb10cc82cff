import { type JarRange, predictShares } from '@/shared/allocation/predict-shares'
import type { Claim, ShareRule } from '@/shared/allocation/share-table'
import { chanceOfAtLeast, type JarChances } from '@/shared/recipes/jar-chances'

/** What a household sees of one product while it makes up its mind; all in jars. */
export interface ClaimView {
  /** Jars that will probably come about, and jars that surely will. */
  readonly likely: number
  readonly sure: number
  readonly yours: number
  readonly others: number
  /** The most that this household may ask for: what the others leave, within the caps. */
  readonly most: number
  /** What it gets if only the sure jars seal, for each count asked for, from 0 up to `most`. */
  readonly ifOnlySure: readonly number[]
  /** The chance, 0 to 1, that everybody gets all they ask for, for each count that this household asks for. */
  readonly chances: readonly number[]
}

/** A product's offer with all claims on it. */
export interface ProductOffer {
  readonly offered: number
  readonly claims: ReadonlyMap<string, number>
  /** Names of the households that claim. */
  readonly claimants: ReadonlyMap<string, string>
}

/** What the day is expected to give of a product, after those that do not seal. */
export interface ExpectedJars {
  readonly sealed: JarRange
  readonly chances: JarChances
}

/**
 * How a product looks to one household: its own jars, the others', and what a short yield would leave it.
 *
 * @param rule - as it holds for this product, see `productRule`
 * @param given - minutes or produce by household, where the rule shares by them
 * @param cap - the most that one household may ask for; null without one. Whoever asks for more already keeps it.
 */
export function claimView(
  product: ProductOffer,
  { sealed, chances }: ExpectedJars,
  household: { id: string; name: string },
  rule: ShareRule,
  cap: number | null = null,
  given: ReadonlyMap<string, number> = new Map(),
): ClaimView {
  const upTo = (jars: number) => Math.min(product.offered, jars)
  const [sure, likely] = [upTo(sealed.low), upTo(sealed.typical)]
  const yours = product.claims.get(household.id) ?? 0
  const others = [...product.claims].filter(([id]) => id !== household.id)
  const othersSum = others.reduce((sum, [, jars]) => sum + jars, 0)
  const most = Math.max(yours, Math.min(product.offered - othersSum, cap ?? product.offered))
  const counts = Array.from({ length: most + 1 }, (_, asked) => asked)
  const ifOnlySure = counts.map((asked) => {
    const claims = [
      ...others.map(([id, jars]) => ({ householdId: id, householdName: product.claimants.get(id) ?? id, jars })),
      { householdId: household.id, householdName: household.name, jars: asked },
    ].map((claim): Claim => ({ ...claim, contribution: given.get(claim.householdId) ?? 0 }))
    const predicted = predictShares({ low: sure, typical: sure, high: sure }, claims, rule)
    return predicted.ok ? (predicted.value.find(({ householdId }) => householdId === household.id)?.atLow ?? 0) : 0
  })
  return {
    likely,
    sure,
    yours,
    others: othersSum,
    most,
    ifOnlySure,
    chances: counts.map((asked) => chanceOfAtLeast(chances, othersSum + asked)),
  }
}
