import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPreparation } from '@/shared/planning/day-problem'
import { plannedAgain } from '@/shared/planning/plan-again'
import { planOnce } from '@/shared/planning/plan-once'
import { finishAtChance, type PlanReplay, replayPlan } from '@/shared/planning/replay-plan'
import { atShare, rangesOf } from '@/shared/planning/stage-ranges'

/** The chances that a group may ask for: in 80, 90 or 95 of 100 such evenings. */
export const CHANCES = [0.8, 0.9, 0.95] as const
export type Chance = (typeof CHANCES)[number]

/** A plan with the problem that it was made for, and how it ends when the stages take as long as they like. */
export type RobustPlan = { readonly problem: DayProblem; readonly plan: DayPlan; readonly replay: PlanReplay }

/** How slow the stages are taken to be, as shares of their ranges: the planning figures as they are, then slower and slower. */
const SLOWNESS = [null, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9] as const

/**
 * The plan that ends soonest in so large a share of evenings.
 *
 * The day is planned on its usual figures and again on slower prep, kettles and come-up; each plan is replayed with the true ranges, and the one
 * whose finish at that chance is earliest is taken; of equals the one that breaks fewer waits, then the one on the usual figures.
 *
 * @param chance - 0.9 means in 9 of 10 such evenings
 * @returns null when the day cannot be planned even on its usual figures
 */
export function robustPlan(problem: DayProblem, chance: number, seed: number): RobustPlan | null {
  let best: RobustPlan | null = null
  for (const share of SLOWNESS) {
    const slower = share === null ? problem : withSlowerStages(problem, share)
    const planned = share === null ? planOnce(slower) : plannedAgain(slower)
    if (!planned.ok) continue
    const plan = planned.value
    const candidate = { problem: slower, plan, replay: replayPlan(slower, plan, seed) }
    if (!best || isSurer(candidate.replay, best.replay, chance)) best = candidate
  }
  return best
}

function isSurer(a: PlanReplay, b: PlanReplay, chance: number): boolean {
  const difference = finishAtChance(a, chance) - finishAtChance(b, chance)
  const broken = ({ brokenWaits }: PlanReplay) => brokenWaits.reduce((sum, wait) => sum + wait.chance, 0)
  return difference < 0 || (difference === 0 && broken(a) < broken(b) - 1e-9)
}

/** The same day with prep, kettles and come-up as slow as this share of their ranges; never quicker than planned before. */
export function withSlowerStages(problem: DayProblem, share: number): DayProblem {
  return { ...problem, preparations: problem.preparations.map((preparation) => slower(preparation, share)) }
}

/** Prep, kettle and come-up minutes that a preparation is planned on when nobody asked for slower ones. */
export const usualMinutesOf = ({ prep, kettleMinutes, cycle }: Pick<PlanPreparation, 'prep' | 'kettleMinutes' | 'cycle'>) => ({
  prep: prep.workMinutes,
  kettle: kettleMinutes,
  comeUp: cycle.comeUpMinutes,
})

function slower(preparation: PlanPreparation, share: number): PlanPreparation {
  const { prep, kettleMinutes, cycle } = preparation
  const known = rangesOf(preparation)
  const least = (minutes: number, range: (typeof known)['prep']) => Math.max(minutes, Math.ceil(atShare(range, share) - 1e-9))
  return {
    ...preparation,
    prep: { ...prep, workMinutes: prep.workMinutes === 0 ? 0 : least(prep.workMinutes, known.prep) },
    kettleMinutes: kettleMinutes === 0 ? 0 : least(kettleMinutes, known.kettle),
    cycle: { ...cycle, comeUpMinutes: least(cycle.comeUpMinutes, known.comeUp) },
    // The ranges stay those of the usual figures.
    ranges: known,
    usualMinutes: preparation.usualMinutes ?? usualMinutesOf(preparation),
  }
}
