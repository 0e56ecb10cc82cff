import { inHouseholdOrder } from './in-household-order'

/** A household, as far as left jars can be offered to it. Volumes in millilitres over all products of the day. */
export interface Short {
  readonly householdId: string
  readonly householdName: string
  readonly asked: number
  readonly got: number
  /** Allergens of the product that it must not have. */
  readonly avoids: boolean
}

/** A wish on the waiting list of the product. */
export interface Wish {
  readonly householdId: string
  readonly householdName: string
  readonly jars: number
  readonly place: number
}

/** Whom to ask next, and why. */
export interface LeftOffer {
  readonly householdId: string
  readonly householdName: string
  readonly why:
    | { readonly kind: 'cut'; readonly missing: number }
    | { readonly kind: 'waiting'; readonly jars: number; readonly place: number }
}

/**
 * In which order jars that nobody claimed are offered: first to those whose claims were cut, the largest lack by volume first, ties by household name; then
 * down the waiting list. Who must not have the product is not asked.
 */
export function offerLeftJars(households: readonly Short[], waiting: readonly Wish[]): LeftOffer[] {
  const avoiding = new Set(households.filter(({ avoids }) => avoids).map(({ householdId }) => householdId))
  const cut = inHouseholdOrder(households)
    .filter(({ asked, got, householdId }) => asked > got && !avoiding.has(householdId))
    .sort((a, b) => b.asked - b.got - (a.asked - a.got))
  const asked = new Set(cut.map(({ householdId }) => householdId))
  const others = [...waiting]
    .sort((a, b) => a.place - b.place)
    .filter(({ householdId }) => !asked.has(householdId) && !avoiding.has(householdId))
  return [
    ...cut.map(({ householdId, householdName, asked: wanted, got }) => ({
      ...{ householdId, householdName, why: { kind: 'cut' as const, missing: wanted - got } },
    })),
    ...others.map(({ householdId, householdName, jars, place }) => ({
      ...{ householdId, householdName, why: { kind: 'waiting' as const, jars, place } },
    })),
  ]
}
