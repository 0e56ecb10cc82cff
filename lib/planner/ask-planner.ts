import 'server-only'
import { canonicalJson, sha256 } from '@/lib/commands/canonical-json'
import type { Answered, Asked, PlanQuestion } from '@/shared/day/plan-questions'
import { PlanningThread } from './planning-thread'

/** Questions whose last answers are kept, in this process alone. */
const MOST_KEPT = 64

/** What takes many plans is answered in a thread of its own, so that a plan somebody waits for is never behind it, and may take longer. */
const LONGEST_OF_MANY_MS = 180_000
const MANY_PLANS: ReadonlySet<PlanQuestion> = new Set(['with-ways-out', 'absence', 'change', 'slips'])

/** Shared by all bundles that a build makes of this module: a process has two threads, not two for each page. */
const PLANNER = Symbol.for('lidsong.planner')

interface Planner {
  readonly kept: Map<string, Promise<unknown>>
  readonly threads: { readonly soon: PlanningThread; readonly long: PlanningThread }
}

function planner(): Planner {
  const known = Reflect.get(globalThis, PLANNER) as Planner | undefined
  if (known) return known
  const made: Planner = {
    kept: new Map(),
    threads: { soon: new PlanningThread(), long: new PlanningThread({ longestMs: LONGEST_OF_MANY_MS }) },
  }
  Reflect.set(globalThis, PLANNER, made)
  return made
}

/**
 * Answers a question of planning beside the server's own thread, once for what was asked: whoever asks the same meanwhile or later shares the
 * answer. Fails with `PlanningBrokeOff`, and that is not kept.
 */
export function askPlanner<Kind extends PlanQuestion>(kind: Kind, asked: Asked<Kind>): Promise<Answered<Kind>> {
  const { kept, threads } = planner()
  const key = keyOf(kind, asked)
  const known = kept.get(key) as Promise<Answered<Kind>> | undefined
  const answer = known ?? threads[MANY_PLANS.has(kind) ? 'long' : 'soon'].ask(kind, asked)
  kept.delete(key)
  kept.set(key, answer)
  if (!known) answer.catch(() => kept.get(key) === answer && kept.delete(key))
  const [oldest] = kept.keys()
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest)
  return answer
}

/** Was this asked before, so that the answer is there or on its way? */
export const isAsked = <Kind extends PlanQuestion>(kind: Kind, asked: Asked<Kind>): boolean => planner().kept.has(keyOf(kind, asked))

const keyOf = (kind: PlanQuestion, asked: object): string => `${kind} ${sha256(canonicalJson(asked))}`
