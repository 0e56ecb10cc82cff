import { mayProveMore, proveOn, startProjectProof } from '@/shared/scheduling/proof/prove-project'
import type { WaitProject } from '@/shared/scheduling/waits/wait-project'

export type WaitAnswer = {
  /** Starts of the best schedule found; null when none was. */
  readonly starts: readonly number[] | null
  /** Start of the last task; infinite when none was found. */
  readonly makespan: number
  /** No schedule ends before this; infinite when it is proved that there is none. */
  readonly bound: number
  /** True when the search came to its end: the schedule is the best there is, or there is none. */
  readonly isProved: boolean
  readonly conflicts: number
}

/**
 * Searches for the earliest end under least and longest waits, by learning from conflicts (`proof/`).
 *
 * @param mostConflicts - gives up after so many; the answer is then the best so far and not proved
 */
export function scheduleWithWaits({ tasks, lags, capacities }: WaitProject, mostConflicts: number): WaitAnswer {
  const project = { tasks: tasks.map(({ duration, needs }) => ({ modes: [{ duration, needs }] })), arcs: [], capacities }
  const proof = startProjectProof(project, 0, horizonOf({ tasks, lags, capacities }) + 1, lags)
  while (mayProveMore(proof) && proof.solver.conflicts < mostConflicts)
    proveOn(proof, Math.min(100, mostConflicts - proof.solver.conflicts))
  const isProved = !mayProveMore(proof)
  const makespan = proof.found?.makespan ?? Number.POSITIVE_INFINITY
  const bound = isProved ? makespan : proof.bound
  return { starts: proof.found?.starts ?? null, makespan, bound, isProved, conflicts: proof.solver.conflicts }
}

/** If there is a schedule at all, one ends by then: each task waits for the longest of its own that another can ask. */
function horizonOf({ tasks, lags }: WaitProject): number {
  const longest = tasks.map(({ duration }) => duration)
  for (const { from, lag } of lags) longest[from] = Math.max(longest[from] ?? 0, lag)
  return longest.reduce((sum, one) => sum + one, 0)
}
