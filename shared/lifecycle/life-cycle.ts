import { ok, type Result, refuse } from '@/shared/result/result'

/** For each state, the states that may follow it. A state with no followers is final. */
export type MoveTable<State extends string> = Readonly<Record<State, readonly State[]>>

/**
 * Why a state was not changed.
 *
 * `already-there`: somebody else was first, nothing is wrong. `no-such-move`: the table has no arrow; `possible` says which ones it has.
 */
export type MoveProblem<State extends string> =
  | { readonly kind: 'already-there'; readonly of: string; readonly state: State }
  | { readonly kind: 'no-such-move'; readonly of: string; readonly from: State; readonly to: State; readonly possible: readonly State[] }

/** One life cycle: what there is, what may follow what, and the one function that says yes or no to a move. */
export interface LifeCycle<State extends string> {
  /** What lives this life, as it is called on screens: "canning day", "jar". */
  readonly of: string
  /** All states in the order of the table. */
  readonly states: readonly State[]
  /** Whether the table has an arrow from one state to the other. */
  readonly mayMove: (from: State, to: State) => boolean
  /** The new state, or why not. */
  readonly moveTo: (from: State, to: State) => Result<State, MoveProblem<State>>
  /** Whether nothing can follow. */
  readonly isFinal: (state: State) => boolean
  /** Whether a text from outside (a row, a form) is one of the states. */
  readonly isState: (text: string) => text is State
}

/** Makes a life cycle out of its table. */
export function lifeCycle<State extends string>(of: string, table: MoveTable<State>): LifeCycle<State> {
  const states = Object.keys(table) as State[]
  const mayMove = (from: State, to: State) => table[from].includes(to)

  return {
    of,
    states,
    mayMove,
    moveTo: (from, to) => {
      if (mayMove(from, to)) return ok(to)
      if (from === to) return refuse({ kind: 'already-there', of, state: to })
      return refuse({ kind: 'no-such-move', of, from, to, possible: table[from] })
    },
    isFinal: (state) => table[state].length === 0,
    isState: (text): text is State => Object.hasOwn(table, text),
  }
}
