import type { DayProblem, PlanPreparation } from '@/shared/planning/day-problem'
import { CHANCES, type Chance, robustPlan } from '@/shared/planning/robust-plan'
import { jarsToPlan } from '@/shared/planning/split-demand'
import { ok, type Result, refuse } from '@/shared/result/result'

/** The seed of the replays by which surer plans are compared. */
const SURER_SEED = 1

/** A choice that the organiser may make while planning; it changes what is planned and nothing that is on record. */
export type PlanChange =
  | { readonly kind: 'fewer-batches'; readonly preparationId: string; readonly batches: number }
  | { readonly kind: 'drop-preparation'; readonly preparationId: string }
  | { readonly kind: 'without-canner'; readonly cannerId: string }
  /** Planned on slower stages, so that it ends soonest in so many of a hundred such days. */
  | { readonly kind: 'surer'; readonly chance: Chance }
  /** To look at only: what is planned with it would not be what the recipes say. */
  | { readonly kind: 'boiled-in-canners' }

/** The change as a form or an address sends it, "fewer-batches:ID:2". */
export function planChangeText(change: PlanChange): string {
  switch (change.kind) {
    case 'fewer-batches':
      return `fewer-batches:${change.preparationId}:${change.batches}`
    case 'drop-preparation':
      return `drop-preparation:${change.preparationId}`
    case 'without-canner':
      return `without-canner:${change.cannerId}`
    case 'surer':
      return `surer:${Math.round(change.chance * 100)}`
    case 'boiled-in-canners':
      return change.kind
    default:
      return change satisfies never
  }
}

/** Reads what `planChangeText` writes; null for anything else. */
export function readPlanChange(text: string): PlanChange | null {
  if (text === 'boiled-in-canners') return { kind: text }
  const [kind, id, count, ...rest] = text.split(':')
  if (!id || rest.length > 0) return null
  if (kind === 'fewer-batches' && /^[1-9]\d{0,3}$/.test(count ?? '')) return { kind, preparationId: id, batches: Number(count) }
  if (count !== undefined) return null
  if (kind === 'surer') {
    const chance = CHANCES.find((each) => String(Math.round(each * 100)) === id)
    return chance === undefined ? null : { kind, chance }
  }
  if (kind === 'drop-preparation') return { kind, preparationId: id }
  return kind === 'without-canner' ? { kind, cannerId: id } : null
}

/** The problem with that change made; refused when it names something that the day does not have. */
export function applyPlanChange(problem: DayProblem, change: PlanChange): Result<DayProblem, { readonly kind: 'no-such-thing' }> {
  if (change.kind === 'without-canner') {
    if (!problem.canners.some(({ id }) => id === change.cannerId)) return refuse({ kind: 'no-such-thing' })
    const canners = problem.canners.map((canner) =>
      canner.id === change.cannerId ? { ...canner, usable: false, whyNot: 'left out of this plan' } : canner,
    )
    return ok({ ...problem, canners })
  }
  if (change.kind === 'boiled-in-canners') return ok(withJarsBoiledInCanners(problem))
  if (change.kind === 'surer') return ok(robustPlan(problem, change.chance, SURER_SEED)?.problem ?? problem)
  const preparation = problem.preparations.find(({ id }) => id === change.preparationId)
  if (!preparation) return refuse({ kind: 'no-such-thing' })
  const jarsWanted = change.kind === 'drop-preparation' ? 0 : jarsOfFewer(preparation, change.batches)
  const spare = { kind: 'jars', jars: 0 } as const
  return ok({
    ...problem,
    preparations: problem.preparations.map((each) => (each === preparation ? { ...each, jarsWanted, spare } : each)),
  })
}

/** The day with every process at its published time and all empty jars boiled in the canners. */
export function withJarsBoiledInCanners(problem: DayProblem): DayProblem {
  const preparations = problem.preparations.map((each): PlanPreparation => {
    const { process } = each
    const sterilise = process.sterilise || process.minutes > process.publishedMinutes
    return {
      ...each,
      jarTreatment: 'boiled-in-canner',
      process: { ...process, minutes: process.publishedMinutes, sterilise, chosenBecause: null },
    }
  })
  return { ...problem, preparations }
}

/** Jars that the batches left would typically give; never below none. */
const jarsOfFewer = (preparation: PlanPreparation, batches: number): number => {
  const { typical } = preparation.batchYield
  return Math.max(0, Math.ceil(jarsToPlan(preparation) / typical) - batches) * typical
}
