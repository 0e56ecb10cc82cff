import { type ShareProblem, shareJars } from '@/shared/allocation/share-jars'
import type { Claim, ShareRule } from '@/shared/allocation/share-table'
import { ok, type Result } from '@/shared/result/result'

/** How many jars a day is expected to give, from the recipe's yield. `low <= typical <= high`, whole jars. */
export interface JarRange {
  readonly low: number
  readonly typical: number
  readonly high: number
}

/** What one household may count on. */
export interface Prediction {
  readonly householdId: string
  readonly householdName: string
  readonly asked: number
  /** Jars if only `low` seal. */
  readonly atLow: number
  readonly atTypical: number
  /** The fewest over all numbers from `low` to `high`: with largest fractions one more jar in all can mean one fewer for somebody. */
  readonly least: number
  /** The most over all numbers from `low` to `high`. */
  readonly most: number
}

/**
 * What each household gets if the jars turn out low, typical or high, so that a promise can be judged before it is asked for.
 *
 * Works out every number in the range, so keep the range to what a day can give (hundreds).
 */
export function predictShares(range: JarRange, claims: readonly Claim[], rule: ShareRule): Result<Prediction[], ShareProblem> {
  const tables = new Map<number, ReadonlyMap<string, number>>()
  for (let jars = range.low; jars <= Math.max(range.low, range.high); jars += 1) {
    const shared = shareJars(jars, claims, rule)
    if (!shared.ok) return shared
    tables.set(jars, new Map(shared.value.shares.map((share) => [share.householdId, share.jars])))
  }
  return ok(
    claims.map(({ householdId, householdName, jars: asked }) => {
      const all = [...tables.values()].map((table) => table.get(householdId) ?? 0)
      const at = (jars: number) => tables.get(jars)?.get(householdId) ?? 0
      return {
        householdId,
        householdName,
        asked,
        atLow: at(range.low),
        atTypical: at(range.typical),
        least: Math.min(...all),
        most: Math.max(...all),
      }
    }),
  )
}
