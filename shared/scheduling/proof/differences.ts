import { because, explain, raise, type Store } from '@/shared/scheduling/proof/store'

/**
 * "Side `to` is at least side `from` and `lag`", always or while a literal holds. Columns of equal length; `condition` −1 is always.
 *
 * An excluded way round is noticed too: when the lag cannot be kept, the condition cannot hold.
 */
export type Differences = {
  readonly from: number[]
  readonly to: number[]
  readonly lag: number[]
  readonly condition: number[]
  readonly conditionValue: number[]
  /** By side: the differences that begin there, and those that hold on it. */
  readonly leaving: number[][]
  readonly waiting: number[][]
}

export const noDifferences = (): Differences => ({
  from: [],
  to: [],
  lag: [],
  condition: [],
  conditionValue: [],
  leaving: [],
  waiting: [],
})

/** Variable `to` is at least variable `from` and `lag`, while the literal (side, value) holds if one is given. */
export function addDifference(all: Differences, from: number, to: number, lag: number, condition = -1, conditionValue = 0): void {
  add(all, 2 * from, 2 * to, lag, condition, conditionValue)
  add(all, 2 * to + 1, 2 * from + 1, lag, condition, conditionValue)
}

function add(all: Differences, from: number, to: number, lag: number, condition: number, value: number): void {
  const number = all.from.push(from) - 1
  all.to.push(to)
  all.lag.push(lag)
  all.condition.push(condition)
  all.conditionValue.push(value)
  listAt(all.leaving, from).push(number)
  if (condition >= 0) listAt(all.waiting, condition).push(number)
}

function listAt(lists: number[][], at: number): number[] {
  while (lists.length <= at) lists.push([])
  return lists[at] ?? []
}

/** Passes on that a side rose: what must lie so much later rises too. */
export function passToDifferences(store: Store, all: Differences, side: number): boolean {
  for (const number of all.leaving[side] ?? []) if (!keep(store, all, number)) return false
  for (const number of all.waiting[side] ?? []) if (!keep(store, all, number)) return false
  return true
}

/** Keeps one difference as far as it is known to hold. */
export function keep(store: Store, all: Differences, number: number): boolean {
  const { bound } = store
  const from = all.from[number] ?? 0
  const to = all.to[number] ?? 0
  const value = (bound[from] ?? 0) + (all.lag[number] ?? 0)
  const condition = all.condition[number] ?? -1
  const conditionValue = all.conditionValue[number] ?? 0
  if (condition < 0 || (bound[condition] ?? 0) >= conditionValue) {
    if ((bound[to] ?? 0) >= value) return true
    const reason = explain(store, true)
    because(store, reason, from, bound[from] ?? 0)
    if (condition >= 0) because(store, reason, condition, conditionValue)
    return raise(store, to, value, reason)
  }
  const opposite = bound[to ^ 1] ?? 0
  const over = value + opposite - 1
  if (over < 0 || (bound[condition ^ 1] ?? 0) >= 1 - conditionValue) return true
  const reason = explain(store)
  because(store, reason, from, (bound[from] ?? 0) - over)
  because(store, reason, to ^ 1, opposite)
  return raise(store, condition ^ 1, 1 - conditionValue, reason)
}
