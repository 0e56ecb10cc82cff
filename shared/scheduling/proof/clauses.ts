import { type Clause, raise, type Store } from '@/shared/scheduling/proof/store'

/**
 * By side: clauses that lose a watched literal when the side reaches a value, as clause number and that value in turn.
 *
 * Source: Moskewicz, Madigan, Zhao, Zhang, Malik 2001, Chaff: engineering an efficient SAT solver, DAC 38:530-535 (two watched literals).
 */
export type Watches = number[][]

/** Adds a clause of at least two literals and watches its first two; gives its number. */
export function addClause(store: Store, watches: Watches, clause: Clause): number {
  store.clauses.push(clause)
  const number = store.clauses.length - 1
  watch(watches, number, clause.literals, 0)
  watch(watches, number, clause.literals, 2)
  return number
}

function watch(watches: Watches, number: number, literals: readonly number[], at: number): void {
  watches[(literals[at] ?? 0) ^ 1]?.push(number, 1 - (literals[at + 1] ?? 0))
}

/** Passes on that a side rose from `before`: every clause that lost a watched literal watches another, or its last literal must hold. */
export function passToClauses(store: Store, watches: Watches, side: number, before: number): boolean {
  const list = watches[side]
  if (!list) return true
  const { bound, clauses } = store
  const now = bound[side] ?? 0
  let kept = 0
  let isSound = true
  for (let at = 0; at < list.length; at += 2) {
    const lostAt = list[at + 1] ?? 0
    const isLost = isSound && lostAt <= now && lostAt > before
    if (isLost) {
      const number = list[at] ?? 0
      const literals = clauses[number]?.literals ?? []
      if (literals[0] === (side ^ 1)) swap(literals, 0, 2)
      if ((bound[literals[0] ?? 0] ?? 0) < (literals[1] ?? 0)) {
        if (watchAnother(store, watches, number, literals)) continue
        isSound = raise(store, literals[0] ?? 0, literals[1] ?? 0, -2 - number)
      }
    }
    if (kept !== at) {
      list[kept] = list[at] ?? 0
      list[kept + 1] = lostAt
    }
    kept += 2
  }
  list.length = kept
  return isSound
}

function watchAnother({ bound }: Store, watches: Watches, number: number, literals: number[]): boolean {
  for (let at = 4; at < literals.length; at += 2) {
    if ((bound[(literals[at] ?? 0) ^ 1] ?? 0) >= 1 - (literals[at + 1] ?? 0)) continue
    swap(literals, 2, at)
    watch(watches, number, literals, 2)
    return true
  }
  return false
}

function swap(literals: number[], one: number, two: number): void {
  const [side = 0, value = 0] = [literals[one], literals[one + 1]]
  literals[one] = literals[two] ?? 0
  literals[one + 1] = literals[two + 1] ?? 0
  literals[two] = side
  literals[two + 1] = value
}

/** At the root: forgets the less useful half of what was learned, and clauses that hold anyway; watches anew. */
export function forgetHalf(store: Store, watches: Watches): void {
  const learned = store.clauses.filter((clause) => clause.isLearned && clause.literals.length > 4).map((clause) => clause.activity)
  const middle = learned.sort((a, b) => a - b)[Math.floor(learned.length / 2)] ?? 0
  const kept = store.clauses.filter((clause) => {
    const { literals, isLearned, activity } = clause
    for (let at = 0; at < literals.length; at += 2) if ((store.rootBound[literals[at] ?? 0] ?? 0) >= (literals[at + 1] ?? 0)) return false
    return !isLearned || literals.length <= 4 || activity > middle
  })
  store.clauses.length = 0
  for (const list of watches) list.length = 0
  for (const clause of kept) {
    freeFirst(store, clause.literals)
    addClause(store, watches, clause)
  }
}

/** Brings two literals that are not excluded at the root to the front, where they are watched. */
function freeFirst({ rootBound }: Store, literals: number[]): void {
  let front = 0
  for (let at = 0; at < literals.length && front < 4; at += 2) {
    if ((rootBound[(literals[at] ?? 0) ^ 1] ?? 0) >= 1 - (literals[at + 1] ?? 0)) continue
    if (at !== front) swap(literals, front, at)
    front += 2
  }
}
