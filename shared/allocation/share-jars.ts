import { drawOrder } from '@/shared/allocation/draw-order'
import { inHouseholdOrder } from '@/shared/allocation/in-household-order'
import { exactPart } from '@/shared/allocation/largest-remainder'
import type { Claim, Share, ShareReason, ShareRule, ShareSum, ShareTable } from '@/shared/allocation/share-table'
import { ok, type Result, refuse } from '@/shared/result/result'

/** Why jars were not shared. */
export type ShareProblem =
  | { readonly kind: 'jars-not-whole'; readonly jars: number }
  | { readonly kind: 'claim-not-whole'; readonly householdName: string; readonly jars: number }
  | { readonly kind: 'contribution-not-whole'; readonly householdName: string; readonly contribution: number }
  | { readonly kind: 'household-twice'; readonly householdName: string }

const MOST_JARS = 1_000_000
const MOST_CONTRIBUTION = 1_000_000_000

interface Award {
  readonly jars: number
  readonly first: number
  readonly sum: ShareSum | null
  readonly reason: ShareReason
}

/**
 * Shares the sealed jars of one product in one jar size by the day's rule.
 *
 * Jars are never made or lost, nobody gets more than was asked for, and the order of the claims does not matter. Equal fractions go by household
 * name, then id; where a rule gives households with different claims the same exact part, the larger claim comes before the name.
 * Jars that are held or did not seal must be left out of `sealed` by the caller.
 *
 * @param sealed - whole jars to share, 0 to 1,000,000
 */
export function shareJars(sealed: number, claims: readonly Claim[], rule: ShareRule): Result<ShareTable, ShareProblem> {
  const problem = findProblem(sealed, claims)
  if (problem) return refuse(problem)

  const inOrder = inHouseholdOrder(claims)
  const taking = inOrder.filter((claim) => claim.jars > 0 && !claim.allergens?.length)
  const awards = awardByRule(sealed, taking, rule)
  const shares = inOrder.map((claim) => toShare(claim, awards.get(claim.householdId)))
  const given = shares.reduce((sum, share) => sum + share.jars, 0)
  const asked = taking.reduce((sum, claim) => sum + claim.jars, 0)
  return ok({ rule, sealed, asked, given, left: sealed - given, shares })
}

function findProblem(sealed: number, claims: readonly Claim[]): ShareProblem | undefined {
  if (!isWhole(sealed, MOST_JARS)) return { kind: 'jars-not-whole', jars: sealed }
  const seen = new Set<string>()
  for (const { householdId, householdName, jars, contribution = 0 } of claims) {
    if (!isWhole(jars, MOST_JARS)) return { kind: 'claim-not-whole', householdName, jars }
    if (!isWhole(contribution, MOST_CONTRIBUTION)) return { kind: 'contribution-not-whole', householdName, contribution }
    if (seen.has(householdId)) return { kind: 'household-twice', householdName }
    seen.add(householdId)
  }
  return undefined
}

const isWhole = (value: number, most: number) => Number.isInteger(value) && value >= 0 && value <= most

function toShare({ householdId, householdName, jars: asked, allergens = [] }: Claim, award: Award | undefined): Share {
  if (award) return { householdId, householdName, asked, ...award }
  const reason: ShareReason = allergens.length > 0 ? { kind: 'allergen', allergens } : { kind: 'asked-for-none' }
  return { householdId, householdName, asked, jars: 0, first: 0, sum: null, reason }
}

function awardByRule(sealed: number, claims: readonly Claim[], rule: ShareRule): Map<string, Award> {
  switch (rule.kind) {
    case 'in-proportion':
      return fillUp(
        sealed,
        claims.map((claim) => ({ claim, weight: claim.jars, cap: claim.jars, first: 0 })),
      )
    case 'equal':
      return fillUp(
        sealed,
        largestClaimFirst(claims).map((claim) => ({ claim, weight: 1, cap: claim.jars, first: 0 })),
      )
    case 'one-each-first':
      return oneEachFirst(sealed, claims)
    case 'by-contribution':
      return byContribution(sealed, claims)
    case 'by-lot':
      return byLot(sealed, claims, rule.seed)
    default:
      return rule satisfies never
  }
}

/** Claims come in by household, and sorting is stable, so equal claims stay in that order. */
const largestClaimFirst = (claims: readonly Claim[]) => [...claims].sort((a, b) => b.jars - a.jars)

interface Taker {
  readonly claim: Claim
  readonly weight: number
  readonly cap: number
  readonly first: number
}

/**
 * Shares a pool in proportion to weights, nobody above the cap: whoever would reach the cap gets it, and the rest is shared among the others.
 *
 * In the order of cap to weight one pass is enough, because every cap that is reached raises the level for those who come later.
 */
function fillUp(pool: number, takers: readonly Taker[]): Map<string, Award> {
  const awards = new Map<string, Award>(
    takers.filter(({ cap }) => cap === 0).map(({ claim, first }) => [claim.householdId, allOf(first, 0)]),
  )
  const byCap = takers
    .map((taker, place) => ({ ...taker, place }))
    .filter(({ cap }) => cap > 0)
    .sort((a, b) => a.cap * b.weight - b.cap * a.weight || a.place - b.place)
  let left = pool
  let weights = byCap.reduce((sum, taker) => sum + taker.weight, 0)
  let full = 0
  for (const { claim, weight, cap, first } of byCap) {
    if (BigInt(left) * BigInt(weight) < BigInt(cap) * BigInt(weights)) break
    awards.set(claim.householdId, allOf(first, cap))
    left -= cap
    weights -= weight
    full += 1
  }
  roundOff(
    left,
    weights,
    byCap.slice(full).sort((a, b) => a.place - b.place),
    awards,
  )
  return awards
}

const allOf = (first: number, cap: number): Award => ({ jars: first + cap, first, sum: null, reason: { kind: 'all' } })

/** Whole parts first, then one each to the largest fractions; equal fractions in the order of the takers. */
function roundOff(pool: number, weights: number, takers: readonly Taker[], awards: Map<string, Award>): void {
  const parts = takers.map((taker, place) => ({ ...taker, place, quota: exactPart(pool, taker.weight, weights) }))
  const whole = parts.reduce((sum, part) => sum + part.quota.whole, 0)
  const byFraction = [...parts].sort((a, b) => b.quota.over - a.quota.over || a.place - b.place)
  const ups = pool - whole
  const tied = byFraction[ups - 1]?.quota.over === byFraction[ups]?.quota.over ? byFraction[ups]?.quota.over : undefined
  for (const [rank, { claim, weight, quota, first }] of byFraction.entries()) {
    const isUp = rank < ups
    const reason: ShareReason =
      quota.over === 0 ? { kind: 'exact' } : { kind: isUp ? 'rounded-up' : 'rounded-down', isTie: quota.over === tied }
    awards.set(claim.householdId, { jars: first + quota.whole + (isUp ? 1 : 0), first, sum: { pool, weight, weights, quota }, reason })
  }
}

function oneEachFirst(sealed: number, claims: readonly Claim[]): Map<string, Award> {
  if (sealed >= claims.length) {
    const takers = claims.map((claim) => ({ claim, weight: claim.jars - 1, cap: claim.jars - 1, first: 1 }))
    return fillUp(sealed - claims.length, takers)
  }
  return new Map(
    largestClaimFirst(claims).map((claim, place) => {
      const first = place < sealed ? 1 : 0
      return [claim.householdId, { jars: first, first, sum: null, reason: { kind: 'one-each' } }]
    }),
  )
}

/** Those who gave nothing take part only in what the others leave, in proportion to their claims. */
function byContribution(sealed: number, claims: readonly Claim[]): Map<string, Award> {
  const takers = largestClaimFirst(claims).map((claim) => ({ claim, weight: claim.contribution ?? 0, cap: claim.jars, first: 0 }))
  const giving = fillUp(
    sealed,
    takers.filter((taker) => taker.weight > 0),
  )
  const left = [...giving.values()].reduce((sum, award) => sum - award.jars, sealed)
  const others = fillUp(
    left,
    takers.filter((taker) => taker.weight === 0).map((taker) => ({ ...taker, weight: taker.cap })),
  )
  return new Map([...giving, ...others])
}

function byLot(sealed: number, claims: readonly Claim[], seed: number): Map<string, Award> {
  const order = drawOrder(
    seed,
    claims.map((claim) => claim.householdId),
  )
  const asked = new Map(claims.map((claim) => [claim.householdId, claim.jars]))
  const rounds = wholeRounds(sealed, [...asked.values()])
  let left = sealed - claims.reduce((sum, claim) => sum + Math.min(claim.jars, rounds), 0)
  return new Map(
    order.map((id, index) => {
      const wanted = asked.get(id) ?? 0
      const extra = wanted > rounds && left > 0 ? 1 : 0
      left -= extra
      return [id, { jars: Math.min(wanted, rounds) + extra, first: 0, sum: null, reason: { kind: 'drawn', place: index + 1 } }]
    }),
  )
}

/** How many whole rounds of one jar each the pool allows, each household stopping at its claim. */
function wholeRounds(pool: number, claims: readonly number[]): number {
  const sorted = [...claims].sort((a, b) => a - b)
  let left = pool
  let rounds = 0
  for (const [index, claim] of sorted.entries()) {
    const still = sorted.length - index
    const step = Math.min(claim - rounds, Math.floor(left / still))
    left -= step * still
    rounds += step
    if (rounds < claim) break
  }
  return rounds
}
