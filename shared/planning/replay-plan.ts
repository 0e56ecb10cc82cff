import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { type ReplayNetwork, replayNetwork, type WatchedWait } from '@/shared/planning/replay-network'
import { drawerOf } from '@/shared/planning/stage-ranges'
import { type Random, randomFrom } from '@/shared/scheduling/random'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** A wait that some replays stretched past its limit. */
export type BrokenWait = {
  readonly batchId: string
  readonly kind: WatchedWait['kind']
  readonly limitMinutes: number
  /** The share of replays in which it was broken, over 0 to 1. */
  readonly chance: number
  /** The longest wait of all replays, whole minutes. */
  readonly longestMinutes: number
}

/** Somebody whom some replays kept past the end of their hours. */
export type KeptLonger = { readonly personId: string; readonly chance: number; readonly longestMinutes: number }

/** How a plan ends when its stages take as long as they like, over many tries. */
export type PlanReplay = {
  readonly runs: number
  readonly seed: number
  /** When the last canner was empty in each replay, earliest first. */
  readonly finishes: readonly KitchenTime[]
  /** The share of replays in which the canners are empty by the time that the day gives them, 0 to 1. */
  readonly chanceInTime: number
  /** Likeliest first; waits that no replay broke are not listed. */
  readonly brokenWaits: readonly BrokenWait[]
  readonly keptLonger: readonly KeptLonger[]
}

/** A minute of the clock is the least that anybody sees: waits longer by less are not called broken. */
const LEAST_SEEN_MINUTES = 1

/**
 * Plays a plan many times with stage lengths drawn from their ranges, and says when it ends and which waits it breaks.
 *
 * Each batch draws its prep and its cooking, each load its come-up, from a triangular spread. The floor works by the plan: nothing begins
 * before its planned minute (but a canner is loaded as soon as it is free), nobody changes places, canners, kettles and tables take what the
 * plan gives them in its order, and a kettle is put on later when its canner is seen to run late. Where a wait gets too long all the same it
 * is reported with its chance; it is never left out and the food is never hurried.
 *
 * @param seed - the same seed gives the same answer on every machine
 * @param runs - how many times to play it, at least 1
 */
export function replayPlan(problem: DayProblem, plan: DayPlan, seed: number, runs = 1000): PlanReplay {
  const network = replayNetwork(problem, plan)
  const play = playerOf(network)
  const random = randomFrom(seed)
  const unloads = network.steps.flatMap((step, index) => (step.kind === 'unload' ? [index] : []))
  const waits = network.waits.map((wait) => ({ ...wait, broken: 0, longest: 0 }))
  const people = network.people.map((person) => ({ ...person, broken: 0, longest: 0 }))
  const finishes: KitchenTime[] = []
  for (let run = 0; run < runs; run++) {
    const { starts, ends } = play(random)
    finishes.push(Math.ceil(lastOf(ends, unloads, problem.window.firstLoadAt) - 1e-9))
    for (const wait of waits) tally(wait, (starts[wait.to] ?? 0) - (ends[wait.from] ?? 0), wait.limit)
    for (const person of people) tally(person, lastOf(ends, person.steps, 0), person.until)
  }
  finishes.sort((a, b) => a - b)
  const inTime = finishes.filter((finish) => finish <= problem.window.cannersEmptyBy).length
  return {
    ...{ runs, seed, finishes, chanceInTime: inTime / runs },
    brokenWaits: seldomLast(waits).map(({ batchId, kind, limit, broken, longest }) => {
      return { batchId, kind, limitMinutes: limit, chance: broken / runs, longestMinutes: Math.ceil(longest) }
    }),
    keptLonger: seldomLast(people).map(({ personId, until, broken, longest }) => {
      return { personId, chance: broken / runs, longestMinutes: Math.ceil(longest - until) }
    }),
  }
}

const seldomLast = <Counted extends Count>(counts: readonly Counted[]): Counted[] =>
  counts.filter(({ broken }) => broken > 0).sort((a, b) => b.broken - a.broken)

const lastOf = (ends: Float64Array, steps: readonly number[], otherwise: number): number => {
  let last = otherwise
  for (const step of steps) last = Math.max(last, ends[step] ?? 0)
  return last
}

/** The minute by which so large a share of the replays has ended: 0.8 of 100 replays is the 80th finish in order. */
export function finishAtChance({ finishes }: Pick<PlanReplay, 'finishes'>, chance: number): KitchenTime {
  const place = Math.min(finishes.length, Math.max(1, Math.ceil(chance * finishes.length - 1e-9)))
  return finishes[place - 1] ?? Number.NaN
}

/** The share of replays that have ended by this minute, 0 to 1. */
export const chanceEndedBy = ({ finishes }: Pick<PlanReplay, 'finishes'>, by: KitchenTime): number =>
  finishes.filter((finish) => finish <= by).length / Math.max(1, finishes.length)

type Count = { broken: number; longest: number }

function tally(count: Count, reached: number, limit: number): void {
  if (reached - limit < LEAST_SEEN_MINUTES) return
  count.broken++
  if (reached > count.longest) count.longest = reached
}

type Played = { readonly starts: Float64Array; readonly ends: Float64Array }

/** One replay; its arrays are used again by the next. */
function playerOf({ steps, waits }: ReplayNetwork): (random: Random) => Played {
  const moments = { start: new Float64Array(steps.length), boil: new Float64Array(steps.length), end: new Float64Array(steps.length) }
  const { start: starts, boil: boils, end: ends } = moments
  const heldFrom = new Map(waits.flatMap((wait) => (wait.kind === 'cooked-to-filling' ? [[wait.to, wait] as const] : [])))
  const ready = steps.map((step, index) => ({
    step,
    after: step.after.map((arc) => ({ of: moments[arc.moment], step: arc.step, lag: arc.lag })),
    draw: step.drawn ? drawerOf(step.drawn.range) : null,
    hold: heldFrom.get(index) ?? null,
  }))
  return (random) => {
    for (let index = 0; index < ready.length; index++) {
      const { step, after, draw, hold } = ready[index] as (typeof ready)[number]
      let start = step.release
      for (let place = 0; place < after.length; place++) {
        const arc = after[place] as (typeof after)[number]
        const at = (arc.of[arc.step] as number) + arc.lag
        if (at > start) start = at
      }
      if (step.pull) {
        const { arc, plannedAt, slack } = step.pull
        const late = (moments[arc.moment][arc.step] as number) - plannedAt - slack
        // What is cooked keeps hot for its limit and no longer: then it is filled, whether the canner is near or not.
        const latest = hold ? (ends[hold.from] as number) + hold.limit : Number.POSITIVE_INFINITY
        start = Math.max(start, Math.min(step.plannedStart + late, latest))
      }
      const drawn = draw && step.drawn ? draw(random()) * step.drawn.times : 0
      starts[index] = start
      boils[index] = start + step.beforeBoil + drawn
      ends[index] = start + step.fixedMinutes + drawn
    }
    return { starts, ends }
  }
}
