import { METHODS } from '@/shared/kitchen/methods'
import type { DayProblem, PlanPreparation } from '@/shared/planning/day-problem'
import { cannerMinutesOfMethod, cannerReadyAt } from '@/shared/planning/finish-bound'
import { burnerServes, kettleHeat } from '@/shared/planning/kitchen-set-up'
import { minutesFor } from '@/shared/planning/place-batch'
import { cycleMinutes } from '@/shared/planning/place-job'
import type { Stop } from '@/shared/planning/refuse-day'
import type { SplitJob } from '@/shared/planning/split-demand'

/**
 * Refuses a day whose kettles ask for more burner minutes than the canners leave, by counting alone; null when it may fit.
 *
 * A canner keeps its burner all day. So many canners as the loads need at least take a burner each; the kettles have what is left, from the
 * end of the first briefing until the last jars must be in a canner. A kettle holds its burner while it cooks and while the largest team fills.
 */
export function kettleHeatStop(problem: DayProblem, jobs: readonly SplitJob[], wanted: readonly PlanPreparation[]): Stop | null {
  const canners = METHODS.reduce((sum, method) => sum + fewestCanners(problem, jobs, method), 0)
  const forKettles = problem.burners.filter((burner) => wanted.some((entry) => burnerServes(burner, kettleHeat(entry))))
  const forEither = problem.burners.filter((burner) => forKettles.includes(burner) || burnerServes(burner, 'canner'))
  const left = Math.max(0, Math.min(forKettles.length, forEither.length - canners))
  const minutes = kettleMinutes(problem, jobs)
  const { peopleArriveAt, briefingMinutes, cannersEmptyBy } = problem.window
  const long = cannersEmptyBy - Math.min(...wanted.map(cycleMinutes)) - peopleArriveAt - briefingMinutes
  if (minutes <= left * Math.max(0, long)) return null
  return {
    limit: { kind: 'burners' },
    needed: long > 0 ? canners + Math.ceil(minutes / long) : canners + 1,
    available: problem.burners.length,
  }
}

function fewestCanners(problem: DayProblem, jobs: readonly SplitJob[], method: (typeof METHODS)[number]): number {
  const { needed } = cannerMinutesOfMethod(problem, jobs, method)
  const open = problem.canners
    .filter((canner) => canner.usable && canner.method === method)
    .map((canner) => Math.max(0, problem.window.cannersEmptyBy - cannerReadyAt(problem, canner)))
    .sort((a, b) => b - a)
  let sum = 0
  let count = 0
  while (sum < needed && count < open.length) sum += open[count++] ?? 0
  return count
}

function kettleMinutes({ preparations }: DayProblem, jobs: readonly SplitJob[]): number {
  const of = (id: string) => preparations.find((entry) => entry.id === id)
  return jobs
    .flatMap((job) => job.batches)
    .reduce((sum, { preparationId, multiple }) => {
      const preparation = of(preparationId)
      return preparation ? sum + preparation.kettleMinutes + minutesFor(preparation.fill, multiple, preparation.fill.peopleMax) : sum
    }, 0)
}
