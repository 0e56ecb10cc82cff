import { takeEquipment, takePerson } from '@/shared/planning/day-calendar'
import type { DayProblem } from '@/shared/planning/day-problem'
import { hasFixedMinute } from '@/shared/planning/locks'
import type { PlacingContext } from '@/shared/planning/placing-context'
import type { SplitJob } from '@/shared/planning/split-demand'
import type { UnderWay } from '@/shared/planning/under-way'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** What decides which jobs come first: the locks and the work under way. */
type Deciding = { readonly problem: DayProblem; readonly underWay?: UnderWay | null }

/** Jars that are filled, food in the kettle or empty jars in a canner wait for this job: their time runs. */
export const isUrgent = ({ underWay }: Deciding, job: SplitJob): boolean =>
  job.batches.some(({ id }) => {
    const begun = underWay?.batches.get(id)
    return begun !== undefined && (begun.stage !== 'prepared' || begun.boiling !== null)
  })

/**
 * The same jobs, those first that may not give way: jars that wait, the first to run out of time before the others; then jobs with a
 * minute fixed by hand. The rest keeps its order.
 */
export function firstThings(deciding: Deciding, order: readonly SplitJob[]): readonly SplitJob[] {
  const hasLocks = (deciding.problem.locks ?? []).length > 0
  if (!deciding.underWay && !hasLocks) return order
  const urgent = order.filter((job) => isUrgent(deciding, job)).sort((a, b) => timeLeft(deciding, a) - timeLeft(deciding, b))
  const fixed = order.filter((job) => !urgent.includes(job) && hasFixedMinute(deciding.problem, job))
  return [...urgent, ...fixed, ...order.filter((job) => !urgent.includes(job) && !fixed.includes(job))]
}

/** The minute by which the job must be in a canner, or, for what is in the kettle, be out of it. */
function timeLeft({ problem, underWay }: Deciding, job: SplitJob): KitchenTime {
  const limits = job.batches.flatMap(({ id, preparationId }) => {
    const begun = underWay?.batches.get(id)
    if (!begun || begun.stage === 'prepared') return []
    if (begun.stage === 'filled') return begun.loadBy
    const preparation = problem.preparations.find((entry) => entry.id === preparationId)
    return begun.placed.cookEnd + (preparation?.cookedToFillingLimitMinutes ?? 0) + (preparation?.filledToLoadedLimitMinutes ?? 0)
  })
  return Math.min(...limits)
}

/** Books what work under way holds into an empty calendar. */
export function takeUnderWay({ calendar, reserved }: PlacingContext, { things, people, outages }: UnderWay): void {
  for (const { id, start, end } of things) takeEquipment(calendar, id, start, end)
  for (const { id, start, end } of outages) {
    takeEquipment(calendar, id, start, end)
    reserved.set(id, [...(reserved.get(id) ?? []), ...(calendar.equipment.get(id) ?? []).slice(-1)])
  }
  for (const { personId, occupation, start, end, minding } of people) takePerson(calendar, personId, occupation, start, end, minding)
}
