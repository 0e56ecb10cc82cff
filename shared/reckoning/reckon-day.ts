import { inHouseholdOrder } from '@/shared/allocation/in-household-order'
import { JAR_MILLILITRES, type JarSize } from '@/shared/kitchen/jar-sizes'
import { ok, type Result, refuse } from '@/shared/result/result'
import { type Minor, MOST_MINOR } from '@/shared/reckoning/money'
import { type ExactShare, shareExactly } from '@/shared/reckoning/share-exactly'

/** Whoever pays or is paid: a household, or a fund or grower outside of them (who takes no jars). */
export interface Party {
  readonly householdId: string
  readonly householdName: string
  /** Percent on top of the share, for the equipment fund: 25 where late joiners pay a quarter more. 0 when left out. */
  readonly surchargePercent?: number
}

/** A pool of cost and what it is shared over. */
export interface Pool {
  readonly id: string
  /** Products whose jars carry it; a pool in common names them all. */
  readonly products: readonly string[]
  /** Every jar the same, or by what a jar holds. */
  readonly by: 'jars' | 'volume'
}

/** Money laid out, or something given and credited. */
export interface Outlay {
  readonly kind: 'paid' | 'credited'
  readonly item: string
  readonly partyId: string
  readonly poolId: string
  readonly currency: string
  readonly amount: Minor
}

/** Jars that a household took. */
export interface Taken {
  readonly partyId: string
  readonly product: string
  readonly size: JarSize
  readonly jars: number
  /** Jars that it had asked for, once all are shared out: they carry a pool whose products gave nobody a jar. */
  readonly asked?: number
}

/** Everything that a day's reckoning is made from. */
export interface DayMoney {
  readonly currency: string
  readonly parties: readonly Party[]
  readonly pools: readonly Pool[]
  readonly outlays: readonly Outlay[]
  readonly taken: readonly Taken[]
  /** Party that surcharges go to; needed when any party pays one. */
  readonly fundId?: string
}

/** What one pool came to. */
export interface PoolSum {
  readonly poolId: string
  readonly paid: Minor
  readonly credited: Minor
  readonly total: Minor
  /** Nobody took a jar of its products, so it is carried by what was asked for. */
  readonly isByAsked: boolean
}

/** What one jar cost, every pool counted; to the nearest minor unit, for reading. Shares are reckoned exactly and not from it. */
export interface JarCost {
  readonly product: string
  readonly size: JarSize
  readonly cost: Minor
}

/** One line of the reckoning. `balance = paid + credited + surcharges received - share - surcharge`; above 0 the party is owed money. */
export interface PartySum {
  readonly householdId: string
  readonly householdName: string
  readonly jars: number
  /** Its part of the cost. All shares add up to all pools. */
  readonly share: Minor
  /** Its part to the nearest minor unit. Where that would make or lose a cent, `share` differs from it by one. */
  readonly nearest: Minor
  readonly surcharge: Minor
  readonly paid: Minor
  readonly credited: Minor
  readonly balance: Minor
}

/** The reckoning of a day. All balances add up to 0. */
export interface Reckoning {
  readonly currency: string
  readonly cashSpent: Minor
  readonly pools: readonly PoolSum[]
  readonly jarCosts: readonly JarCost[]
  readonly parties: readonly PartySum[]
}

/** Why a day was not reckoned. */
export type ReckonProblem =
  | { readonly kind: 'other-currency'; readonly item: string; readonly currency: string; readonly expected: string }
  | { readonly kind: 'amount-out-of-range'; readonly item: string; readonly amount: number }
  | { readonly kind: 'jars-not-whole'; readonly product: string; readonly jars: number }
  | { readonly kind: 'unknown-party'; readonly item: string; readonly partyId: string }
  | { readonly kind: 'unknown-pool'; readonly item: string; readonly poolId: string }
  | { readonly kind: 'pool-without-jars'; readonly poolId: string; readonly total: Minor }
  | { readonly kind: 'surcharge-without-fund'; readonly householdName: string }

/**
 * Reckons a day: pools of cost, what a jar cost, what each party carries, paid and is owed.
 *
 * Every pool is shared over the jars taken of its products, and where no jar came of them, over those that were asked for. A household's parts of all pools are added exactly, then rounded down, and the minor
 * units left over go one each to the largest fractions, ties by household name. So every cent lands on somebody and none is made.
 */
export function reckonDay(day: DayMoney): Result<Reckoning, ReckonProblem> {
  const problem = findProblem(day)
  if (problem) return refuse(problem)

  const parties = inHouseholdOrder(day.parties)
  const pools = day.pools.map((pool) => sumPool(pool, day))
  const shares = shareExactly(
    day.pools.map((pool, index) => ({ total: pools[index]?.total ?? 0, weights: weightsOf(pool, parties, day.taken) })),
  )
  return ok({
    currency: day.currency,
    cashSpent: pools.reduce((sum, pool) => sum + pool.paid, 0),
    pools,
    jarCosts: jarCosts(day, pools),
    parties: partySums(day, parties, shares),
  })
}

function findProblem(day: DayMoney): ReckonProblem | undefined {
  const parties = new Set(day.parties.map((party) => party.householdId))
  const pools = new Set(day.pools.map((pool) => pool.id))
  for (const { item, currency, amount, partyId, poolId } of day.outlays) {
    if (currency !== day.currency) return { kind: 'other-currency', item, currency, expected: day.currency }
    if (!Number.isInteger(amount) || amount < 0 || amount > MOST_MINOR) return { kind: 'amount-out-of-range', item, amount }
    if (!parties.has(partyId)) return { kind: 'unknown-party', item, partyId }
    if (!pools.has(poolId)) return { kind: 'unknown-pool', item, poolId }
  }
  for (const { product, jars, asked = 0, partyId } of day.taken) {
    for (const count of [jars, asked])
      if (!Number.isSafeInteger(count) || count < 0) return { kind: 'jars-not-whole', product, jars: count }
    if (!parties.has(partyId)) return { kind: 'unknown-party', item: product, partyId }
  }
  return findEmptyPool(day) ?? findStraySurcharge(day, parties)
}

function findEmptyPool(day: DayMoney): ReckonProblem | undefined {
  for (const pool of day.pools) {
    const { total } = sumPool(pool, day)
    if (total > 0 && !day.taken.some(hasPart(pool, 'jars')) && !day.taken.some(hasPart(pool, 'asked')))
      return { kind: 'pool-without-jars', poolId: pool.id, total }
  }
  return undefined
}

function findStraySurcharge(day: DayMoney, parties: ReadonlySet<string>): ReckonProblem | undefined {
  const paying = day.parties.find((party) => party.surchargePercent)
  const hasFund = day.fundId !== undefined && parties.has(day.fundId)
  return paying && !hasFund ? { kind: 'surcharge-without-fund', householdName: paying.householdName } : undefined
}

function sumPool(pool: Pool, { outlays, taken }: DayMoney): PoolSum {
  const sum = (kind: Outlay['kind']) =>
    outlays.filter((outlay) => outlay.poolId === pool.id && outlay.kind === kind).reduce((total, outlay) => total + outlay.amount, 0)
  const [paid, credited] = [sum('paid'), sum('credited')]
  const isByAsked = paid + credited > 0 && !taken.some(hasPart(pool, 'jars'))
  return { poolId: pool.id, paid, credited, total: paid + credited, isByAsked }
}

const hasPart =
  (pool: Pool, of: 'jars' | 'asked') =>
  (taken: Taken): boolean =>
    (taken[of] ?? 0) > 0 && pool.products.includes(taken.product)

const weightOf = (pool: Pool, taken: Taken, of: 'jars' | 'asked' = 'jars') =>
  pool.products.includes(taken.product) ? (taken[of] ?? 0) * (pool.by === 'volume' ? JAR_MILLILITRES[taken.size] : 1) : 0

function weightsOf(pool: Pool, parties: readonly Party[], taken: readonly Taken[]): number[] {
  const of = taken.some(hasPart(pool, 'jars')) ? 'jars' : 'asked'
  const weights = sumByParty(taken.map((line) => [line.partyId, weightOf(pool, line, of)]))
  return parties.map((party) => weights.get(party.householdId) ?? 0)
}

function jarCosts(day: DayMoney, pools: readonly PoolSum[]): JarCost[] {
  const kinds = new Map(
    day.taken.filter((taken) => taken.jars > 0).map((taken) => [`${taken.product}\n${taken.size}`, { ...taken, jars: 1 }]),
  )
  return [...kinds.values()]
    .map((one) => {
      const parts = day.pools.map((pool, index) => {
        const all = day.taken.reduce((sum, taken) => sum + weightOf(pool, taken), 0)
        return all === 0 ? 0 : ((pools[index]?.total ?? 0) * weightOf(pool, one)) / all
      })
      return { product: one.product, size: one.size, cost: Math.round(parts.reduce((sum, part) => sum + part, 0)) }
    })
    .sort((a, b) => (a.product < b.product ? -1 : a.product > b.product ? 1 : JAR_MILLILITRES[a.size] - JAR_MILLILITRES[b.size]))
}

function partySums(day: DayMoney, parties: readonly Party[], shares: readonly ExactShare[]): PartySum[] {
  const jars = sumByParty(day.taken.map((taken) => [taken.partyId, taken.jars]))
  const outlaid = (kind: Outlay['kind']) =>
    sumByParty(day.outlays.filter((outlay) => outlay.kind === kind).map((outlay) => [outlay.partyId, outlay.amount]))
  const [paid, credited] = [outlaid('paid'), outlaid('credited')]
  const lines = parties.map(({ householdId, householdName, surchargePercent = 0 }, index) => {
    const { share, nearest } = shares[index] ?? { share: 0, nearest: 0 }
    const surcharge = Math.round((share * surchargePercent) / 100)
    const of = (sums: ReadonlyMap<string, number>) => sums.get(householdId) ?? 0
    return { householdId, householdName, jars: of(jars), share, nearest, surcharge, paid: of(paid), credited: of(credited) }
  })
  const surcharges = lines.reduce((sum, line) => sum + line.surcharge, 0)
  return lines.map((line) => {
    const received = line.householdId === day.fundId ? surcharges : 0
    return { ...line, balance: line.paid + line.credited + received - line.share - line.surcharge }
  })
}

function sumByParty(entries: readonly (readonly [partyId: string, amount: number])[]): Map<string, number> {
  const sums = new Map<string, number>()
  for (const [partyId, amount] of entries) sums.set(partyId, (sums.get(partyId) ?? 0) + amount)
  return sums
}
