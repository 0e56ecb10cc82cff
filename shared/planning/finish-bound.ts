import type { DayProblem, PlanCanner } from '@/shared/planning/day-problem'
import { METHODS, type Method } from '@/shared/kitchen/methods'
import { cannerMinutesOf } from '@/shared/planning/place-job'
import type { SplitJob } from '@/shared/planning/split-demand'
import type { CannerMinutes } from '@/shared/planning/day-plan'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Minutes of canner each load takes, for one method. */
export function loadMinutesOf(problem: DayProblem, jobs: readonly SplitJob[], method: Method): number[] {
  return jobs.flatMap((job) => {
    const preparation = problem.preparations.find((entry) => entry.id === job.preparationId)
    return preparation?.method === method ? job.loads.map(() => cannerMinutesOf(preparation)) : []
  })
}

/** When the canner's water can be hot: after the first-load time and after its pre-heating from the moment of access. */
export const cannerReadyAt = ({ window }: DayProblem, canner: PlanCanner): KitchenTime =>
  Math.max(window.firstLoadAt, window.accessAt + canner.preheatMinutes)

/** Needed against available canner minutes of one method, over its usable canners. */
export function cannerMinutesOfMethod(
  problem: DayProblem,
  jobs: readonly SplitJob[],
  method: Method,
): CannerMinutes & { readonly method: Method } {
  const needed = loadMinutesOf(problem, jobs, method).reduce((sum, minutes) => sum + minutes, 0)
  const canners = problem.canners.filter((canner) => canner.usable && canner.method === method)
  const available = canners.reduce((sum, canner) => sum + Math.max(0, problem.window.cannersEmptyBy - cannerReadyAt(problem, canner)), 0)
  return { method, needed, available, slack: available - needed }
}

/**
 * The earliest minute at which the last canner can be empty, whatever the order: for each method, the loads shared as evenly over its
 * canners as whole loads allow.
 *
 * Some canner holds at least the mean; its sum is made of whole loads, so it is at least the smallest sum of loads that reaches the mean.
 * For one method with all canners ready together this is the classic bound for equal machines in parallel, made stronger by subset sums.
 */
export function earliestFinish(problem: DayProblem, jobs: readonly SplitJob[]): KitchenTime {
  return Math.max(problem.window.firstLoadAt, ...METHODS.map((method) => finishOfMethod(problem, jobs, method)))
}

function finishOfMethod(problem: DayProblem, jobs: readonly SplitJob[], method: Method): KitchenTime {
  const loads = loadMinutesOf(problem, jobs, method)
  const canners = problem.canners.filter((canner) => canner.usable && canner.method === method)
  if (loads.length === 0 || canners.length === 0) return Number.NEGATIVE_INFINITY
  const mean = loads.reduce((sum, minutes) => sum + minutes, 0) / canners.length
  return Math.min(...canners.map((canner) => cannerReadyAt(problem, canner))) + smallestSumFrom(loads, mean)
}

function smallestSumFrom(loads: readonly number[], atLeast: number): number {
  let sums = new Set([0])
  for (const minutes of loads) sums = new Set([...sums, ...[...sums].map((sum) => sum + minutes)])
  return Math.min(...[...sums].filter((sum) => sum >= atLeast - 1e-9))
}
