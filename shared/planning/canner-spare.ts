import type { Method } from '@/shared/kitchen/methods'
import type { DayProblem } from '@/shared/planning/day-problem'
import { cannerReadyAt } from '@/shared/planning/finish-bound'
import { cannerMinutesOf } from '@/shared/planning/place-job'
import { cannersFor, splitDemand } from '@/shared/planning/split-demand'

/**
 * Minutes that each usable canner of a method has left once the day's own loads are shared out over the canners that hold them.
 *
 * The longest loads first, each to the canner with most minutes left; of equals to the smaller one, so that the larger stays free. Below 0
 * where the loads do not fit. Empty where the demand cannot be split.
 */
export function spareByCanner(problem: DayProblem, method: Method): ReadonlyMap<string, number> {
  const split = splitDemand(problem)
  const usable = problem.canners.filter((canner) => canner.usable && canner.method === method)
  const left = new Map(usable.map((canner) => [canner.id, Math.max(0, problem.window.cannersEmptyBy - cannerReadyAt(problem, canner))]))
  if (!split.ok) return left
  const loads = split.value.jobs.flatMap((job) => {
    const preparation = problem.preparations.find((entry) => entry.id === job.preparationId && entry.method === method)
    if (!preparation) return []
    return job.loads.map(({ parts }) => {
      const jars = parts.reduce((sum, part) => sum + part.jars.high, 0)
      return { jars, minutes: cannerMinutesOf(preparation), canners: cannersFor(problem, preparation, jars), size: preparation.jarSize }
    })
  })
  for (const { minutes, canners, size } of loads.sort((a, b) => a.canners.length - b.canners.length || b.minutes - a.minutes)) {
    const [taken] = [...canners].sort(
      (a, b) => (left.get(b.id) ?? 0) - (left.get(a.id) ?? 0) || (a.capacity[size] ?? 0) - (b.capacity[size] ?? 0),
    )
    if (taken) left.set(taken.id, (left.get(taken.id) ?? 0) - minutes)
  }
  return left
}
