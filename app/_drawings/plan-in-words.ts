import type { LoggedLoad } from '@/app/_drawings/wall-log'
import type { DayPlan, PlannedLoad } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'

/** Every load of a plan with its planned times, for the blank boxes on paper. */
export function loadsToLog(problem: DayProblem, plan: DayPlan): LoggedLoad[] {
  return plan.loads.map((load) => ({
    id: load.id,
    name: `${load.code}, ${codesOf(plan, load)}`,
    canner: labelOf(problem.canners, load.cannerId) ?? load.cannerId,
    loadAt: load.loadAt,
    boilAt: load.boilAt,
    endsAt: load.processEndAt,
    emptyAt: load.emptyAt,
    processMinutes: load.processMinutes,
    source: load.source,
  }))
}

const labelOf = (list: readonly { id: string; label: string }[], id: string | null) => list.find((one) => one.id === id)?.label

const codesOf = (plan: DayPlan, load: PlannedLoad): string =>
  load.batchParts.map((part) => plan.batches.find((batch) => batch.id === part.batchId)?.code ?? part.batchId).join(' ')
