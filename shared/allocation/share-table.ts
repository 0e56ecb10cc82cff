import type { ExactPart } from '@/shared/allocation/largest-remainder'

/**
 * How jars are shared when there are fewer than were asked for. Published before anybody buys anything.
 *
 * - `in-proportion`: everybody gets the same part of what they asked for.
 * - `one-each-first`: one jar for everybody who asked, then the rest in proportion to what is still wanted.
 * - `by-contribution`: in proportion to hours worked or produce brought, at most what was asked for.
 * - `equal`: the same number for everybody, at most what was asked for.
 * - `by-lot`: an order is drawn with the recorded seed; in that order everybody takes one jar, round after round.
 */
export type ShareRule =
  | { readonly kind: 'in-proportion' }
  | { readonly kind: 'one-each-first' }
  | { readonly kind: 'by-contribution'; readonly of: 'hours' | 'produce' }
  | { readonly kind: 'equal' }
  | { readonly kind: 'by-lot'; readonly seed: number }

/** The rule of a day whose organiser chose none. */
export const DEFAULT_SHARE_RULE: ShareRule = { kind: 'in-proportion' }

/** What one household asks for, of one product in one jar size. */
export interface Claim {
  readonly householdId: string
  readonly householdName: string
  /** Whole jars, 0 to 1,000,000. */
  readonly jars: number
  /** For `by-contribution`: minutes worked or hundredths of a pound brought, whole numbers of 0 or more. */
  readonly contribution?: number
  /** Allergens of the product that somebody in the household must not have; any at all means no jar. */
  readonly allergens?: readonly string[]
}

/**
 * Why a household gets what it gets.
 *
 * - `asked-for-none`, `allergen`: not part of the sharing.
 * - `all`: as many as were asked for, without any rounding.
 * - `exact`: the exact part is a whole number.
 * - `rounded-up`: the exact part was rounded up, as one of the largest fractions.
 * - `rounded-down`: the exact part was rounded down, larger fractions came first. `isTie`: the same fraction stood on both sides of the cut, and the
 *   tie rule decided.
 * - `one-each`: fewer jars than households; larger claims came first.
 * - `drawn`: by lot, in this place of the order, counted from 1.
 * - `together`: several sizes of one product were shared together, large jars first; so much was carried over from the larger ones, in millilitres, below 0
 *   when the household had had more than its part.
 */
export type ShareReason =
  | { readonly kind: 'asked-for-none' | 'all' | 'exact' | 'one-each' }
  | { readonly kind: 'rounded-up' | 'rounded-down'; readonly isTie: boolean }
  | { readonly kind: 'allergen'; readonly allergens: readonly string[] }
  | { readonly kind: 'drawn'; readonly place: number }
  | { readonly kind: 'together'; readonly carriedMillilitres: number }

/** The sum behind a share: `pool × weight ÷ weights`. */
export interface ShareSum {
  readonly pool: number
  readonly weight: number
  readonly weights: number
  readonly quota: ExactPart
}

/** What one household gets, and everything that is needed to redo it by hand. */
export interface Share {
  readonly householdId: string
  readonly householdName: string
  readonly asked: number
  /** Jars given before the sum: 1 under `one-each-first`, else 0. */
  readonly first: number
  /** None when no sum was needed: nothing asked, an allergen, enough for all, or by lot. */
  readonly sum: ShareSum | null
  readonly jars: number
  readonly reason: ShareReason
}

/** The share table of one product in one jar size. `given + left = sealed`. */
export interface ShareTable {
  readonly rule: ShareRule
  readonly sealed: number
  /** Jars asked for by the households that take part; claims stopped by an allergen are not in it. */
  readonly asked: number
  readonly given: number
  /** Sealed jars that nobody claimed. */
  readonly left: number
  /** By household name, then id. */
  readonly shares: readonly Share[]
}
