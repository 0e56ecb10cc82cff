import type { NightBeforeStep } from '@/shared/planning/day-plan'
import type { DayProblem, KettleWork, LeadStep, PlanHousehold } from '@/shared/planning/day-problem'

/** Nobody starts a tub before this; a tub that would have to is started the evening before. 07:00 (common practice). */
const MORNING = 7 * 60

/** 20:00 of the day before (common practice). */
const EVENING_BEFORE = 20 * 60 - 24 * 60

/** A step of the evening before that no household can take. */
export type UnownedStep = { readonly preparationId: string; readonly label: string }

/**
 * Puts a named household on every tub that must start before the day.
 *
 * Households that offered take tubs in turn. Where nobody offered, the first household (by name) without an allergy to what is in the
 * tub is proposed. A household allergic to it is never named.
 *
 * @param batchIds - the kettle batches of the preparation, in order
 * @param neededAt - when the first of them is needed, for steps that name no time
 */
export function planNightBefore(
  problem: DayProblem,
  preparation: KettleWork,
  batchIds: readonly string[],
  neededAt: number,
): readonly (NightBeforeStep | UnownedStep)[] {
  return preparation.leadSteps.flatMap((step) =>
    tubs(step, batchIds).map((tub, index) => planTub(problem, preparation, step, tub, index, neededAt)),
  )
}

/** True for a step that found no household. */
export const isUnowned = (step: NightBeforeStep | UnownedStep): step is UnownedStep => !('householdId' in step)

function tubs(step: LeadStep, batchIds: readonly string[]): string[][] {
  const size = Math.max(1, step.batchesPerTub)
  return Array.from({ length: Math.ceil(batchIds.length / size) }, (_, index) => batchIds.slice(index * size, (index + 1) * size))
}

function planTub(
  problem: DayProblem,
  preparation: KettleWork,
  step: LeadStep,
  batchIds: readonly string[],
  index: number,
  neededAt: number,
): NightBeforeStep | UnownedStep {
  const may = (household: PlanHousehold) => !preparation.allergens.some((allergen) => household.allergies.includes(allergen))
  const offered = step.hostHouseholdIds.flatMap((id) => problem.households.filter((household) => household.id === id && may(household)))
  const able = [...problem.households].filter(may).sort((a, b) => a.name.localeCompare(b.name) || a.id.localeCompare(b.id))
  const household = offered.length > 0 ? offered[index % offered.length] : able[index % Math.max(1, able.length)]
  if (!household) return { preparationId: preparation.id, label: step.label }
  const doneBy = step.doneBy ?? neededAt
  const minutes = Math.round(step.hours * 60)
  const startBy = doneBy - minutes
  const startAt = startBy < MORNING ? Math.min(startBy, EVENING_BEFORE) : startBy
  const when = { startAt, endAt: startAt + minutes, startBy, doneBy, hours: step.hours }
  return { preparationId: preparation.id, label: step.label, ...when, householdId: household.id, batchIds, proposed: offered.length === 0 }
}
