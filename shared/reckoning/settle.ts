import { ok, type Result, refuse } from '@/shared/result/result'
import type { Minor } from '@/shared/reckoning/money'

/** What one party is owed (above 0) or owes (below 0). */
export interface Balance {
  readonly id: string
  readonly name: string
  readonly balance: Minor
}

/** One payment outside the app. `amount > 0`. */
export interface Transfer {
  readonly fromId: string
  readonly toId: string
  readonly amount: Minor
}

/** Payments after which everybody is even. */
export interface Settlement {
  readonly transfers: readonly Transfer[]
  /** Whether it is proved that fewer transfers cannot do. */
  readonly isFewest: boolean
  /** No settlement can have fewer: every party that is owed or owes takes part in one. */
  readonly lowerBound: number
}

/** Why there is nothing to settle: the balances do not add up to 0, so a cent was made or lost before. */
export interface SettleProblem {
  readonly kind: 'not-balanced'
  readonly sum: Minor
}

/** Parties with unlike balances up to which the fewest transfers are searched for; the search takes 2^n steps. */
const SEARCHED_PARTIES = 18

/**
 * Finds few transfers that settle all balances; debtors only pay and creditors only receive, so no more money moves than must.
 *
 * The fewest transfers are the number of parties less the number of groups that are even among themselves. Two parties with opposite balances
 * are such a group in some best answer; the rest is searched exactly up to 18 parties. Beyond that the largest debtor pays the largest creditor, which
 * never takes more than one transfer fewer than there are parties.
 *
 * The same balances give the same transfers in whatever order they come.
 */
export function settle(balances: readonly Balance[]): Result<Settlement, SettleProblem> {
  const sum = balances.reduce((total, party) => total + party.balance, 0)
  if (sum !== 0) return refuse({ kind: 'not-balanced', sum })

  const open = balances.filter((party) => party.balance !== 0).sort(byName)
  const { pairs, rest } = takeOpposites(open)
  const isSearched = rest.length <= SEARCHED_PARTIES
  const groups = [...pairs, ...(isSearched ? evenGroups(rest) : [rest])]
  const transfers = groups.flatMap(settleGroup)
  const creditors = open.filter((party) => party.balance > 0).length
  const lowerBound = Math.max(creditors, open.length - creditors)
  return ok({ transfers, isFewest: isSearched || transfers.length === lowerBound, lowerBound })
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
const byName = (a: Balance, b: Balance) => compare(a.name, b.name) || compare(a.id, b.id)

function takeOpposites(open: readonly Balance[]): { pairs: Balance[][]; rest: Balance[] } {
  const waiting = new Map<Minor, Balance[]>()
  const pairs: Balance[][] = []
  for (const party of open) {
    const other = waiting.get(-party.balance)?.shift()
    if (other) pairs.push([other, party])
    else waiting.set(party.balance, [...(waiting.get(party.balance) ?? []), party])
  }
  const paired = new Set(pairs.flat())
  return { pairs, rest: open.filter((party) => !paired.has(party)) }
}

/**
 * Splits parties into as many groups as possible that are even among themselves.
 *
 * For every set of parties, `most` is how many times a sum of 0 is met when its members are added one by one in the best order.
 */
function evenGroups(parties: readonly Balance[]): Balance[][] {
  const sets = 1 << parties.length
  const sums = new Float64Array(sets)
  const most = new Int8Array(sets)
  for (let set = 1; set < sets; set += 1) {
    const low = lowestMember(set)
    sums[set] = (sums[set & (set - 1)] ?? 0) + (parties[low]?.balance ?? 0)
    let best = 0
    for (let left = set; left !== 0; left &= left - 1) best = Math.max(best, most[set & ~(1 << lowestMember(left))] ?? 0)
    most[set] = best + (sums[set] === 0 ? 1 : 0)
  }
  return readGroups(parties, sums, most)
}

function readGroups(parties: readonly Balance[], sums: Float64Array, most: Int8Array): Balance[][] {
  const groups: Balance[][] = []
  for (let set = sums.length - 1; set !== 0; ) {
    if (sums[set] === 0) groups.push([])
    const target = (most[set] ?? 0) - (sums[set] === 0 ? 1 : 0)
    const member = parties.findIndex((_, index) => (set & (1 << index)) !== 0 && most[set & ~(1 << index)] === target)
    const party = parties[member]
    if (!party) throw new Error('No member leads to the best number of groups')
    groups.at(-1)?.push(party)
    set &= ~(1 << member)
  }
  return groups
}

const lowestMember = (set: number) => 31 - Math.clz32(set & -set)

/** Largest debtor to largest creditor, until all are even: one transfer fewer than there are parties, or less. */
function settleGroup(group: readonly Balance[]): Transfer[] {
  const bySize = (parties: readonly Balance[]) =>
    parties.map((party) => ({ ...party, left: Math.abs(party.balance) })).sort((a, b) => b.left - a.left || byName(a, b))
  const debtors = bySize(group.filter((party) => party.balance < 0))
  const creditors = bySize(group.filter((party) => party.balance > 0))
  const transfers: Transfer[] = []
  for (let [d, c] = [0, 0]; d < debtors.length && c < creditors.length; ) {
    const [debtor, creditor] = [debtors[d], creditors[c]]
    if (!debtor || !creditor) break
    const amount = Math.min(debtor.left, creditor.left)
    transfers.push({ fromId: debtor.id, toId: creditor.id, amount })
    debtor.left -= amount
    creditor.left -= amount
    if (debtor.left === 0) d += 1
    if (creditor.left === 0) c += 1
  }
  return transfers
}
