import { parentPort, workerData } from 'node:worker_threads'
import type { Leaning } from '@/shared/scheduling/project/plan-project'
import { type FoundPlan, type NoSearch, searchFile } from './plan-search'

/**
 * What a worker is started with: a file's name and text, the seed, what it leans to, and how long it may take: until a moment (milliseconds
 * since 1970) but half of `milliseconds` at least, or so many steps.
 */
export type PlanOrder = {
  readonly name: string
  readonly text: string
  readonly seed: number
  readonly leaning: Leaning
  readonly milliseconds: number
  readonly until: number
  readonly steps: number | null
  /** Earliest finish and highest bound that any worker knows; the finish is `none` while there is none. */
  readonly known: Int32Array
  readonly none: number
}

/** What a worker tells while it searches and when it ends. */
export type PlanNews =
  | { readonly kind: 'better'; readonly found: FoundPlan }
  | { readonly kind: 'refused'; readonly why: NoSearch }
  | { readonly kind: 'ended'; readonly reasons: readonly string[] }

/** Places in `known`. */
const [FINISH, BOUND] = [0, 1] as const

const order: PlanOrder = workerData
const { known } = order
const tell = (news: PlanNews) => parentPort?.postMessage(news)

search()

/** Searches until the time is spent or a plan is proved best, and tells of every plan that is better than all workers' before. */
function search(): void {
  const answer = searchFile(order.name, order.text, order.seed, order.leaning)
  if (!answer.ok) {
    tell({ kind: 'refused', why: answer.problem })
    return
  }
  const one = answer.value
  const until = Math.max(order.until, Date.now() + order.milliseconds / 2)
  let steps = 0
  const exchange = () => {
    const finish = one.finish()
    if (finish !== null && finish < Atomics.load(known, FINISH)) {
      Atomics.store(known, FINISH, finish)
      const found = one.best()
      if (found) tell({ kind: 'better', found })
    }
    if (one.bound() > Atomics.load(known, BOUND)) Atomics.store(known, BOUND, one.bound())
    if (order.steps === null) one.hear(Atomics.load(known, FINISH), Atomics.load(known, BOUND))
  }
  /** Without any plan the search goes on as long again: a first plan is worth more than the minute. */
  const mayGoOn = () =>
    order.steps === null
      ? Date.now() < until + (Atomics.load(known, FINISH) === order.none ? order.milliseconds : 0)
      : steps++ < order.steps
  exchange()
  while (mayGoOn() && one.goOn()) exchange()
  exchange()
  tell({ kind: 'ended', reasons: one.finish() === null ? one.reasons() : [] })
}
