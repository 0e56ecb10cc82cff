/**
 * Whole-numbered variables that are known to lie between two bounds, with what made each bound what it is.
 *
 * A variable x has two *sides*: side 2x speaks of x, side 2x + 1 of −x; `bound[side]` is the least value that the side is known to have. A
 * *literal* is a side and a value: "the side is at least so much". Its opposite is the other side with 1 − value, so one rule serves both
 * directions, and a yes-or-no is a variable of 0 or 1.
 *
 * Source of the way: Ohrimenko, Stuckey, Codish 2009, Propagation via lazy clause generation, Constraints 14:357-391.
 */
export type Store = {
  readonly bound: number[]
  /** The bounds that hold whatever is decided. */
  readonly rootBound: number[]
  /** Last change of each side, as an index into the trail; −1 for none. */
  readonly head: number[]
  /** Changes in order: the side, its bound before and after, the change of the same side before it, the level, and why. */
  readonly trail: {
    readonly side: number[]
    readonly before: number[]
    readonly after: number[]
    readonly previous: number[]
    readonly level: number[]
    readonly reason: number[]
  }
  /** Where the changes and the explanations of each level begin. */
  readonly levels: { readonly trail: number[]; readonly explained: number[] }
  /** Explanations, one after another: how many literals, whether the first gives way with what is needed, then side and value of each. */
  readonly explained: number[]
  /** True literals that cannot all be true, side and value in turn; empty while all is well. */
  readonly conflict: number[]
  /** Clauses as sides and values in turn: at least one literal of each holds. */
  readonly clauses: Clause[]
  /** Changes up to here have been passed on. */
  passedOn: number
}

export type Clause = { readonly literals: number[]; readonly isLearned: boolean; activity: number }

/** Reasons of a change: decided, or (from 0 on) an index into `explained`, or (from −2 down) clause −2 − reason. */
export const DECIDED = -1

export const emptyStore = (): Store => ({
  bound: [],
  rootBound: [],
  head: [],
  trail: { side: [], before: [], after: [], previous: [], level: [], reason: [] },
  levels: { trail: [], explained: [] },
  explained: [],
  conflict: [],
  clauses: [],
  passedOn: 0,
})

/** Adds a variable between two bounds and gives its number. */
export function addVariable(store: Store, least: number, most: number): number {
  store.bound.push(least, -most)
  store.rootBound.push(least, -most)
  store.head.push(-1, -1)
  return store.bound.length / 2 - 1
}

export const leastOf = ({ bound }: Store, variable: number): number => bound[2 * variable] ?? 0
export const mostOf = ({ bound }: Store, variable: number): number => -(bound[2 * variable + 1] ?? 0)
export const holds = ({ bound }: Store, side: number, value: number): boolean => (bound[side] ?? 0) >= value
export const isExcluded = ({ bound }: Store, side: number, value: number): boolean => (bound[side ^ 1] ?? 0) >= 1 - value

/** Begins an explanation; its literals follow by `because`. */
export function explain({ explained }: Store, givesWay = false): number {
  explained.push(0, givesWay ? 1 : 0)
  return explained.length - 2
}

export function because({ explained }: Store, reason: number, side: number, value: number): void {
  explained.push(side, value)
  explained[reason] = (explained[reason] ?? 0) + 1
}

/** Raises a side to a value, or notes the conflict and says false. */
export function raise(store: Store, side: number, value: number, reason: number): boolean {
  const { bound, head, trail } = store
  const before = bound[side] ?? 0
  if (before >= value) return true
  const opposite = bound[side ^ 1] ?? 0
  if (opposite >= 1 - value) {
    store.conflict.push(side ^ 1, opposite)
    forReasons(store, reason, side, value - (1 - opposite), (other, least) => void store.conflict.push(other, least))
    return false
  }
  trail.side.push(side)
  trail.before.push(before)
  trail.after.push(value)
  trail.previous.push(head[side] ?? -1)
  trail.level.push(store.levels.trail.length)
  trail.reason.push(reason)
  head[side] = trail.side.length - 1
  bound[side] = value
  if (store.levels.trail.length === 0) store.rootBound[side] = value
  return true
}

/**
 * Walks the literals that made a side reach a value.
 *
 * @param side - the side that was raised
 * @param spare - by how much less it need have been raised
 */
export function forReasons(
  { explained, clauses }: Store,
  reason: number,
  side: number,
  spare: number,
  each: (side: number, value: number) => void,
): void {
  if (reason <= -2) {
    const literals = clauses[-2 - reason]?.literals ?? []
    for (let at = 0; at < literals.length; at += 2) {
      const other = literals[at] ?? 0
      if (other !== side) each(other ^ 1, 1 - (literals[at + 1] ?? 0))
    }
  } else if (reason >= 0) {
    const end = reason + 2 + 2 * (explained[reason] ?? 0)
    const slack = explained[reason + 1] === 1 ? spare : 0
    for (let at = reason + 2; at < end; at += 2) each(explained[at] ?? 0, (explained[at + 1] ?? 0) - (at === reason + 2 ? slack : 0))
  }
}

/** Opens a level; what is raised from now on is taken back by `returnTo`. */
export function openLevel(store: Store): void {
  store.levels.trail.push(store.trail.side.length)
  store.levels.explained.push(store.explained.length)
}

/** Takes back every change above a level. */
export function returnTo(store: Store, level: number): void {
  const { trail, levels, bound, head } = store
  if (levels.trail.length <= level) return
  const length = levels.trail[level] ?? 0
  for (let at = trail.side.length - 1; at >= length; at--) {
    const side = trail.side[at] ?? 0
    bound[side] = trail.before[at] ?? 0
    head[side] = trail.previous[at] ?? -1
  }
  for (const column of Object.values(trail)) column.length = length
  store.explained.length = levels.explained[level] ?? 0
  levels.trail.length = level
  levels.explained.length = level
  store.passedOn = Math.min(store.passedOn, length)
}

/** Forgets why the bounds at the root are what they are: nothing asks for it. */
export function forgetRoot(store: Store): void {
  for (const column of Object.values(store.trail)) column.length = 0
  store.head.fill(-1)
  store.explained.length = 0
  store.passedOn = 0
}
