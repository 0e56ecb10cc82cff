import { parentPort, workerData } from 'node:worker_threads'
import { type FoundPlan, type NoSearch, searchFile } from './plan-search'

/** What the worker is started with: a file's name and text, the seed, and the milliseconds it may take. */
export type PlanOrder = { readonly name: string; readonly text: string; readonly seed: number; readonly milliseconds: number }

/** What the worker tells while it searches and when it ends. */
export type PlanNews =
  | { readonly kind: 'better'; readonly found: FoundPlan; readonly afterMs: number }
  | { readonly kind: 'refused'; readonly why: NoSearch }
  | { readonly kind: 'ended'; readonly reasons: readonly string[] }

const order: PlanOrder = workerData
const started = performance.now()
const tell = (news: PlanNews) => parentPort?.postMessage(news)

search()

/** Without any plan the search goes on as long again: a first plan is worth more than the minute. */
function allowed(finish: number | null): number {
  return finish === null ? order.milliseconds * 2 : order.milliseconds
}

/** Searches until the time is spent or the plan is proved best, and tells of every better plan. */
function search(): void {
  const answer = searchFile(order.name, order.text, order.seed)
  if (!answer.ok) {
    tell({ kind: 'refused', why: answer.problem })
    return
  }
  let told = Number.POSITIVE_INFINITY
  const tellIfBetter = () => {
    const finish = answer.value.finish()
    const found = finish !== null && finish < told ? answer.value.best() : null
    if (!found) return
    told = found.makespan
    tell({ kind: 'better', found, afterMs: performance.now() - started })
  }
  do tellIfBetter()
  while (performance.now() - started < allowed(answer.value.finish()) && answer.value.goOn())
  tellIfBetter()
  tell({ kind: 'ended', reasons: answer.value.finish() === null ? answer.value.reasons() : [] })
}
