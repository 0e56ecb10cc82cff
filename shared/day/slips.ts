import { planOnceByNames } from '@/shared/day/plan-by-names'
import { withJarsBoiledInCanners } from '@/shared/day/apply-plan-change'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { CannerMinutes, DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPreparation } from '@/shared/planning/day-problem'
import { loadMinutesOf } from '@/shared/planning/finish-bound'
import { splitDemand } from '@/shared/planning/split-demand'
import { cannerMinutesOfDay } from '@/shared/planning/ways-out'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Something that may go otherwise than planned, planned again to see what it does. */
export type Slip = {
  readonly change:
    | { readonly kind: 'as-planned'; readonly longerFor: readonly string[]; readonly minutes: number }
    | {
        readonly kind: 'fewer-batches'
        readonly preparationId: string
        readonly title: string
        readonly jars: number
        readonly jarSize: JarSize
      }
    | { readonly kind: 'jars-boiled-in-canners'; readonly titles: readonly string[]; readonly minutes: number }
    | { readonly kind: 'canner-breaks'; readonly cannerId: string; readonly label: string }
  readonly cannerMinutes: CannerMinutes
  /** When the last canner is empty; null when it does not fit. */
  readonly finishAt: KitchenTime | null
  /** Loads that find no canner minutes, shortest left out first; 0 when it fits. */
  readonly loadsUndone: number
  readonly loads: number
}

/**
 * The plan and what would happen if something slipped: one batch fewer, jars boiled in the canners instead of a longer process, a canner broken.
 * Each is planned to the last canner; nothing is estimated.
 */
export function planSlips(problem: DayProblem, plan: DayPlan): Slip[] {
  const longer = problem.preparations.filter(({ process, jarsWanted }) => jarsWanted > 0 && process.minutes > process.publishedMinutes)
  const now: Slip = {
    change: { kind: 'as-planned', longerFor: longer.map(({ title }) => title), minutes: longer[0]?.process.minutes ?? 0 },
    ...{ cannerMinutes: plan.cannerMinutes, finishAt: plan.finishAt, loadsUndone: 0, loads: plan.loads.length },
  }
  return [now, ...oneBatchFewer(problem, plan), ...boiledInCanners(problem, longer), ...cannerBreaks(problem, plan)]
}

function oneBatchFewer(problem: DayProblem, plan: DayPlan): Slip[] {
  const count = (preparation: PlanPreparation) => plan.batches.filter((batch) => batch.preparationId === preparation.id).length
  const [most] = [...problem.preparations].sort((a, b) => count(b) - count(a) || a.code.localeCompare(b.code))
  if (!most || count(most) < 2) return []
  const { typical } = most.batchYield
  const jarsWanted = (count(most) - 1) * typical
  const changed = withPreparations(problem, (each) => (each === most ? { ...each, jarsWanted, spare: { kind: 'jars', jars: 0 } } : each))
  const jars = Math.max(0, most.jarsWanted - jarsWanted)
  return [measured(changed, { kind: 'fewer-batches', preparationId: most.id, title: most.title, jars, jarSize: most.jarSize })]
}

function boiledInCanners(problem: DayProblem, longer: readonly PlanPreparation[]): Slip[] {
  const [first] = longer
  if (!first) return []
  const changed = withJarsBoiledInCanners(problem)
  const change = {
    kind: 'jars-boiled-in-canners',
    titles: longer.map(({ title }) => title),
    minutes: first.process.publishedMinutes,
  } as const
  return [measured(changed, change)]
}

function cannerBreaks(problem: DayProblem, plan: DayPlan): Slip[] {
  const used = problem.canners.filter(({ id }) => plan.loads.some((load) => load.cannerId === id))
  const broken = used.at(-1)
  if (!broken) return []
  const canners = problem.canners.map((canner) => (canner === broken ? { ...canner, usable: false, whyNot: 'broken' } : canner))
  return [measured({ ...problem, canners }, { kind: 'canner-breaks', cannerId: broken.id, label: broken.label })]
}

const withPreparations = (problem: DayProblem, change: (preparation: PlanPreparation) => PlanPreparation): DayProblem => ({
  ...problem,
  preparations: problem.preparations.map(change),
})

function measured(problem: DayProblem, change: Slip['change']): Slip {
  const planned = planOnceByNames(problem)
  if (planned.ok) {
    const { cannerMinutes, finishAt, loads } = planned.value
    return { change, cannerMinutes, finishAt, loadsUndone: 0, loads: loads.length }
  }
  const minutes = loadMinutes(problem)
  return {
    change,
    cannerMinutes: cannerMinutesOfDay(problem),
    finishAt: null,
    loadsUndone: undone(problem, minutes),
    loads: minutes.length,
  }
}

function loadMinutes(problem: DayProblem): number[] {
  const split = splitDemand(problem)
  if (!split.ok)
    return problem.preparations.flatMap(({ jarsWanted, batchYield }) => Array(Math.ceil(jarsWanted / batchYield.typical)).fill(0))
  const methods = [...new Set(problem.preparations.map(({ method }) => method))]
  return methods.flatMap((method) => loadMinutesOf(problem, split.value.jobs, method))
}

/** With the shortest loads run first, the fewest that are left over; at least one, because the day did not fit. */
function undone(problem: DayProblem, minutes: readonly number[]): number {
  const { available } = cannerMinutesOfDay(problem)
  let used = 0
  let done = 0
  for (const load of [...minutes].sort((a, b) => a - b)) {
    used += load
    if (used > available) break
    done += 1
  }
  return Math.max(1, minutes.length - done)
}
