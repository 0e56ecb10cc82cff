import type { FloorMoment, FloorProblem } from '@/shared/floor/floor-problem'
import { loadLife, type LoadState } from '@/shared/lifecycle/load-states'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** A canner load as its clock sees it. Times are kitchen minutes, null while they have not come. */
export interface LoadClock {
  /** "L04", for the words. */
  readonly code: string
  readonly state: LoadState
  /** Minutes of the scheduled process this load must meet; null until it is loaded. */
  readonly processMinutes: number | null
  readonly loadedAt: KitchenTime | null
  /** Last full boil, or last time at pressure. */
  readonly atTemperatureAt: KitchenTime | null
  /** When the boil or the pressure was last lost. */
  readonly temperatureLostAt: KitchenTime | null
  readonly processedAt: KitchenTime | null
  readonly emptiedAt: KitchenTime | null
  /** How often the whole time was begun again. */
  readonly restarts: number
}

type Clocked = Result<LoadClock, FloorProblem>

/** Everything that has happened to the load, in the order it must have. */
export const momentsOf = (clock: LoadClock): FloorMoment[] => [
  { what: 'loading', at: clock.loadedAt },
  { what: 'the boil or the pressure lost', at: clock.temperatureLostAt },
  { what: 'the full boil or pressure', at: clock.atTemperatureAt },
  { what: 'the end of the process', at: clock.processedAt },
]

/**
 * The jars are in and the heat is on. No process clock runs: it starts at the full boil or at pressure, never here.
 *
 * @param processMinutes - published minutes this load must meet
 */
export function startLoad(clock: LoadClock, at: KitchenTime, processMinutes: number): Clocked {
  const loading = move(clock, 'loading')
  if (!loading.ok) return loading
  return move({ ...loading.value, loadedAt: at, processMinutes }, 'coming-up')
}

/**
 * A full rolling boil with the lid on, or the published pressure: the process clock starts now, from zero.
 *
 * Source: USDA Complete Guide to Home Canning, AIB No. 539, Using boiling-water canners; Using pressure canners.
 */
export function reachTemperature(clock: LoadClock, at: KitchenTime): Clocked {
  const order = inOrder(clock, at)
  return order.ok ? move({ ...clock, atTemperatureAt: at }, 'processing') : order
}

/**
 * The boil stopped or the pressure fell below its target: the clock goes away, and the whole time starts again at the next full boil or pressure.
 *
 * There is nothing that goes on with a part of the time. Restarting from zero is the cautious act and our own rule; it is what AIB No. 539 asks for.
 */
export function loseTemperature(clock: LoadClock, at: KitchenTime): Clocked {
  const order = inOrder(clock, at)
  if (!order.ok) return order
  return move({ ...clock, atTemperatureAt: null, temperatureLostAt: at, restarts: clock.restarts + 1 }, 'coming-up')
}

/** When the process may end at the earliest; null while no clock runs. */
export const earliestEnd = ({ atTemperatureAt, processMinutes }: LoadClock): KitchenTime | null =>
  atTemperatureAt === null || processMinutes === null ? null : atTemperatureAt + processMinutes

/** The heat goes off. Refused before the whole published time has passed since the last full boil or pressure. */
export function finishProcess(clock: LoadClock, at: KitchenTime): Clocked {
  const order = inOrder(clock, at)
  if (!order.ok) return order
  const moved = move({ ...clock, processedAt: at }, 'cooling-down')
  if (!moved.ok) return moved
  const notBefore = earliestEnd(clock)
  if (notBefore === null || clock.atTemperatureAt === null || clock.processMinutes === null) return wrongState(clock, 'cooling-down')
  if (at < notBefore) {
    return refuse({ kind: 'process-too-short', at, notBefore, minutes: clock.processMinutes, since: clock.atTemperatureAt })
  }
  return moved
}

/** The jars are out of the canner and on the rack. */
export function emptyCanner(clock: LoadClock, at: KitchenTime): Clocked {
  const order = inOrder(clock, at)
  return order.ok ? move({ ...clock, emptiedAt: at }, 'done') : order
}

/** The load is given up: its jars never had their scheduled process. */
export function failLoad(clock: LoadClock, at: KitchenTime): Clocked {
  const order = inOrder(clock, at)
  return order.ok ? move({ ...clock, emptiedAt: at }, 'failed') : order
}

function inOrder(clock: LoadClock, at: KitchenTime): Clocked {
  for (const moment of momentsOf(clock)) {
    if (moment.at !== null && at < moment.at) return refuse({ kind: 'out-of-order', at, after: moment.what, afterAt: moment.at })
  }
  return ok(clock)
}

function move(clock: LoadClock, to: LoadState): Clocked {
  return loadLife.mayMove(clock.state, to) ? ok({ ...clock, state: to }) : wrongState(clock, to)
}

const wrongState = (clock: LoadClock, to: LoadState) =>
  refuse<FloorProblem>({ kind: 'wrong-state', of: loadLife.of, name: clock.code, state: clock.state, to })
