import { type Random, randomFrom, shuffle, wholeBelow } from '@/shared/scheduling/random'

/** A search for the order in which jobs pass all stages, one after another, in the same order at every stage. */
export type FlowSearch = {
  /** Minutes by job and stage. */
  readonly times: readonly (readonly number[])[]
  readonly random: Random
  current: number[]
  currentEnd: number
  best: { readonly order: readonly number[]; readonly makespan: number }
  steps: number
}

/**
 * Starts from the order that inserting the longest jobs first gives.
 *
 * Source: Nawaz, Enscore, Ham 1983, A heuristic algorithm for the m-machine, n-job flow-shop sequencing problem, Omega 11:91-95.
 */
export function startFlowSearch(times: readonly (readonly number[])[], seed: number): FlowSearch {
  const total = (job: number) => (times[job] ?? []).reduce((sum, minutes) => sum + minutes, 0)
  const jobs = times.map((_, job) => job).sort((a, b) => total(b) - total(a) || a - b)
  const order: number[] = []
  for (const job of jobs) insertBest(times, order, job)
  const makespan = endOfFlow(times, order)
  return { times, random: randomFrom(seed), current: order, currentEnd: makespan, best: { order: [...order], makespan }, steps: 0 }
}

/**
 * Takes a few jobs out, puts each back where it costs least, and betters the order by moving single jobs; a worse order is kept now and then.
 *
 * Source: Ruiz, Stützle 2007, A simple and effective iterated greedy algorithm for the permutation flowshop scheduling problem, EJOR
 * 177:2033-2049, with four jobs out and their constant temperature at 0.4.
 */
export function improveFlow(search: FlowSearch, steps: number): void {
  const { times, random } = search
  const operations = times.length * (times[0]?.length ?? 1)
  const heat = (0.4 * times.reduce((sum, row) => sum + row.reduce((total, minutes) => total + minutes, 0), 0)) / (operations * 10)
  for (let step = 0; step < steps; step++) {
    search.steps++
    const order = [...search.current]
    const out = Array.from({ length: Math.min(4, order.length - 1) }, () => order.splice(wholeBelow(random, order.length), 1)[0] ?? 0)
    for (const job of out) insertBest(times, order, job)
    const end = moveSingles(search, order)
    if (end < search.best.makespan) search.best = { order: [...order], makespan: end }
    if (end <= search.currentEnd || random() < Math.exp(-(end - search.currentEnd) / heat)) {
      search.current = order
      search.currentEnd = end
    }
  }
}

function moveSingles({ times, random }: FlowSearch, order: number[]): number {
  let end = endOfFlow(times, order)
  for (let better = true; better; ) {
    better = false
    for (const job of shuffle(random, [...order])) {
      const at = order.indexOf(job)
      order.splice(at, 1)
      const moved = insertBest(times, order, job)
      if (moved < end) {
        end = moved
        better = true
      }
    }
  }
  return end
}

/** When the last job leaves the last stage, if the jobs go in this order. */
export function endOfFlow(times: readonly (readonly number[])[], order: readonly number[]): number {
  const ends = new Array<number>(times[0]?.length ?? 0).fill(0)
  for (const job of order) {
    let before = 0
    for (let stage = 0; stage < ends.length; stage++) {
      before = Math.max(before, ends[stage] ?? 0) + (times[job]?.[stage] ?? 0)
      ends[stage] = before
    }
  }
  return ends.at(-1) ?? 0
}

/**
 * Puts a job where the whole ends first (of equals the earliest place) and says when that is.
 *
 * All places are priced in one pass. Source: Taillard 1990, Some efficient heuristic methods for the flow shop sequencing problem, EJOR 47:65-74.
 */
function insertBest(times: readonly (readonly number[])[], order: number[], job: number): number {
  const stages = times[0]?.length ?? 0
  const count = order.length
  const heads = new Float64Array((count + 1) * (stages + 1))
  const tails = new Float64Array((count + 2) * (stages + 1))
  const width = stages + 1
  for (let at = 1; at <= count; at++) {
    const row = times[order[at - 1] ?? 0] ?? []
    for (let stage = 1; stage <= stages; stage++)
      heads[at * width + stage] = Math.max(heads[at * width + stage - 1] ?? 0, heads[(at - 1) * width + stage] ?? 0) + (row[stage - 1] ?? 0)
  }
  for (let at = count; at >= 1; at--) {
    const row = times[order[at - 1] ?? 0] ?? []
    for (let stage = stages - 1; stage >= 0; stage--)
      tails[at * width + stage] = Math.max(tails[at * width + stage + 1] ?? 0, tails[(at + 1) * width + stage] ?? 0) + (row[stage] ?? 0)
  }
  const mine = times[job] ?? []
  let place = 0
  let least = Number.POSITIVE_INFINITY
  for (let at = 0; at <= count; at++) {
    let end = 0
    let whole = 0
    for (let stage = 0; stage < stages; stage++) {
      end = Math.max(end, heads[at * width + stage + 1] ?? 0) + (mine[stage] ?? 0)
      whole = Math.max(whole, end + (tails[(at + 1) * width + stage] ?? 0))
    }
    if (whole < least) {
      least = whole
      place = at
    }
  }
  order.splice(place, 0, job)
  return least
}
