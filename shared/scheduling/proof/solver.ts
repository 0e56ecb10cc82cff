import {
  type Activity,
  activityOf,
  age,
  bump,
  mostActive,
  openActivity,
  returnActivity,
  want,
  wantedLiteral,
} from '@/shared/scheduling/proof/activity'
import { addClause, forgetHalf, passToClauses, type Watches } from '@/shared/scheduling/proof/clauses'
import { addDifference, type Differences, keep, noDifferences, passToDifferences } from '@/shared/scheduling/proof/differences'
import { conflictLevel, emptyLesson, type Lesson, learn } from '@/shared/scheduling/proof/learn'
import {
  addVariable,
  DECIDED,
  emptyStore,
  forgetRoot,
  isExcluded,
  openLevel,
  raise,
  returnTo,
  type Store,
} from '@/shared/scheduling/proof/store'

/** Something that draws conclusions from bounds: raises what follows and says false when it noted a conflict. */
export type Rule = (store: Store) => boolean

/** Which literal to decide next, as side and value; null when everything is decided. */
export type Branch = (store: Store) => readonly [side: number, value: number] | null

/** Slow rules run when nothing else has more to say, and seldom while they have had nothing to say themselves. */
type SolverRule = { readonly run: Rule; readonly isSlow: boolean; isDue: boolean; worth: number; rest: number }

/**
 * An exact search: it decides, draws conclusions, and from every conflict learns a clause that holds for good.
 *
 * Everything proved at the root holds for every solution: bounds only rise. Deterministic.
 *
 * Source: Schutt, Feydy, Stuckey, Wallace 2011, Explaining the cumulative propagator, Constraints 16:250-282.
 */
export type Solver = {
  readonly store: Store
  readonly differences: Differences
  readonly watches: Watches
  readonly rules: SolverRule[]
  /** By side: the rules to run again when it rises. */
  readonly listeners: number[][]
  readonly due: number[]
  readonly dueSlowly: number[]
  readonly lesson: Lesson
  activity: Activity | null
  conflicts: number
  restarts: number
  /** True when no solution is left at all. */
  isImpossible: boolean
}

export function newSolver(): Solver {
  const used = (side: number, value: number) => {
    if (solver.activity) bump(solver.activity, side, value)
  }
  const solver: Solver = {
    ...{ store: emptyStore(), differences: noDifferences(), watches: [], rules: [], listeners: [], due: [], dueSlowly: [] },
    ...{ lesson: emptyLesson(used), activity: null, conflicts: 0, restarts: 0, isImpossible: false },
  }
  return solver
}

/** A variable between two bounds; its number. A yes-or-no is one from 0 to 1. */
export function variable(solver: Solver, least: number, most: number): number {
  const number = addVariable(solver.store, least, most)
  solver.watches.push([], [])
  solver.listeners.push([], [])
  if (most < least) solver.isImpossible = true
  return number
}

/** Variable `to` is at least variable `from` and `lag`, while the literal holds if one is given. */
export function atLeastAfter({ differences }: Solver, from: number, to: number, lag: number, condition = -1, value = 0): void {
  addDifference(differences, from, to, lag, condition, value)
}

/** At least one of these literals holds; sides and values in turn. */
export function atLeastOne(solver: Solver, literals: readonly number[]): void {
  if (literals.length > 2) addClause(solver.store, solver.watches, { literals: [...literals], isLearned: false, activity: 0 })
  else if (!raise(solver.store, literals[0] ?? 0, literals[1] ?? 1, DECIDED)) solver.isImpossible = true
}

/** A rule that is run again whenever one of these variables changes. */
export function addRule(solver: Solver, run: Rule, variables: readonly number[], isSlow = false): void {
  const number = solver.rules.push({ run, isSlow, isDue: true, worth: 1, rest: 0 }) - 1
  if (isSlow) solver.dueSlowly.push(number)
  else solver.due.push(number)
  for (const one of new Set(variables)) {
    solver.listeners[2 * one]?.push(number)
    solver.listeners[2 * one + 1]?.push(number)
  }
}

/** `refuted`: what was assumed cannot be; `solved`: the store's bounds meet in a solution; `open`: the conflicts were spent. */
export type Outcome = 'refuted' | 'solved' | 'open'

/**
 * Searches for a solution with one literal assumed, for so many conflicts at most. What is learned stays for the next call.
 *
 * @param branch - decides when no literal was active of late; on every other restart it decides alone
 */
export function searchFor(solver: Solver, assumed: readonly [side: number, value: number], branch: Branch, conflicts: number): Outcome {
  if (!toRoot(solver)) return 'refuted'
  solver.activity ??= activityOf(solver.store)
  const { store } = solver
  let left = conflicts
  let untilRestart = restartAfter(solver.restarts)
  for (;;) {
    if (!conclude(solver)) {
      solver.conflicts++
      left--
      untilRestart--
      goBack(solver, conflictLevel(store))
      if (store.levels.trail.length === 0) {
        solver.isImpossible = true
        return 'refuted'
      }
      if (!takeLesson(solver)) return 'refuted'
      continue
    }
    if (left <= 0) return 'open'
    if (untilRestart <= 0) {
      solver.restarts++
      untilRestart = restartAfter(solver.restarts)
      if (!toRoot(solver)) return 'refuted'
    }
    if (store.levels.trail.length === 0) {
      forgetRoot(store)
      if (isExcluded(store, assumed[0], assumed[1])) return 'refuted'
      decide(solver, assumed, -1)
      continue
    }
    if (!decideNext(solver, branch)) return 'solved'
  }
}

const restartAfter = (restarts: number): number => 60 * luby(restarts + 1)

/** 1 1 2 1 1 2 4 1 1 2 1 1 2 4 8 … Source: Luby, Sinclair, Zuckerman 1993, Information Processing Letters 47:173-180. */
function luby(place: number): number {
  let power = 1
  while (2 ** power - 1 < place) power++
  return 2 ** power - 1 === place ? 2 ** (power - 1) : luby(place - 2 ** (power - 1) + 1)
}

/** Back to the root, where what is least useful is forgotten now and then; false when nothing is left. */
function toRoot(solver: Solver): boolean {
  const { store } = solver
  goBack(solver, 0)
  if (solver.isImpossible || !conclude(solver)) {
    store.conflict.length = 0
    solver.isImpossible = true
    return false
  }
  forgetRoot(store)
  if (store.clauses.filter((clause) => clause.isLearned).length > 4_000 + 2 * solver.restarts) forgetHalf(store, solver.watches)
  return true
}

function goBack(solver: Solver, level: number): void {
  if (solver.store.levels.trail.length <= level) return
  returnTo(solver.store, level)
  if (solver.activity) returnActivity(solver.activity, level)
  for (const list of [solver.due, solver.dueSlowly]) {
    for (const rule of list) {
      const one = solver.rules[rule]
      if (one) one.isDue = false
    }
    list.length = 0
  }
}

function decide({ store, activity }: Solver, [side, value]: readonly [number, number], entry: number): void {
  openLevel(store)
  if (activity) openActivity(activity, entry)
  raise(store, side, value, DECIDED)
}

function decideNext(solver: Solver, branch: Branch): boolean {
  const { store, activity } = solver
  const entry = activity ? mostActive(activity, store) : -1
  if (activity && entry >= 0) {
    decide(solver, wantedLiteral(activity, entry), entry)
    return true
  }
  const next = branch(store)
  if (next) decide(solver, next, -1)
  return next !== null
}

/** Learns from the conflict and goes back to where the lesson leads on; false when it says that what was assumed cannot be. */
function takeLesson(solver: Solver): boolean {
  const { store, lesson, activity } = solver
  learn(store, lesson, solver.conflicts)
  goBack(solver, lesson.level)
  const literals = [...lesson.learned]
  const [side = 0, value = 0] = literals
  if (activity) {
    for (let at = 0; at < literals.length; at += 2) want(activity, literals[at] ?? 0, literals[at + 1] ?? 0)
    age(activity)
  }
  if (literals.length === 2) {
    if (raise(store, side, value, DECIDED)) return true
    solver.isImpossible = true
    return false
  }
  const number = addClause(store, solver.watches, { literals, isLearned: true, activity: solver.conflicts })
  return raise(store, side, value, -2 - number)
}

/** Draws every conclusion there is; false when it noted a conflict. */
function conclude(solver: Solver): boolean {
  const { store, watches, differences, listeners, rules, due, dueSlowly } = solver
  for (;;) {
    while (store.passedOn < store.trail.side.length) {
      const at = store.passedOn++
      const side = store.trail.side[at] ?? 0
      for (const number of listeners[side] ?? []) {
        const rule = rules[number]
        if (rule && !rule.isDue) {
          rule.isDue = true
          if (rule.isSlow) dueSlowly.push(number)
          else due.push(number)
        }
      }
      if (!passToClauses(store, watches, side, store.trail.before[at] ?? 0)) return false
      if (!passToDifferences(store, differences, side)) return false
    }
    const number = due.pop() ?? dueSlowly.pop()
    const rule = number === undefined ? undefined : rules[number]
    if (!rule) return true
    rule.isDue = false
    if (rule.isSlow && rule.worth < SELDOM && rule.rest++ % 32 !== 0) continue
    const before = store.trail.side.length
    const isSound = rule.run(store)
    if (rule.isSlow) rule.worth += ((isSound && store.trail.side.length === before ? 0 : 1) - rule.worth) / 256
    if (!isSound) return false
  }
}

/** A slow rule that says something less often than this is run seldom. */
const SELDOM = 0.05

/** Keeps every difference once, before the first search. */
export function settleRoot(solver: Solver): void {
  const { store, differences } = solver
  for (let number = 0; number < differences.from.length && !solver.isImpossible; number++)
    if (!keep(store, differences, number)) solver.isImpossible = true
  store.conflict.length = 0
  if (!solver.isImpossible) toRoot(solver)
}

/** The least value that every solution gives a variable. */
export const provedLeast = ({ store }: Solver, number: number): number => store.rootBound[2 * number] ?? 0
