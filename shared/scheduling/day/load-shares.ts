import type { DayModel, ModelBatch } from '@/shared/scheduling/day/day-model'

/**
 * For each batch, loads that it must take up at least, as a share of whole loads of the largest canner that takes its family: jars over
 * capacity, or where that is more the sum of `shareOfTray` over its trays.
 *
 * The shares of the trays in any one load never sum to more than 1, so their sum over all batches never exceeds the number of loads.
 */
export function loadShares(model: DayModel): number[] {
  const firm = firmFamilies(model)
  return model.batches.map((batch) => batch.trays.reduce((sum, jars) => sum + shareOfTray(model, batch, jars, firm), 0))
}

/** A tray's share of a load of the family's largest canner, by the measure that asks for more loads of its family. */
function shareOfTray(model: DayModel, batch: ModelBatch, jars: number, firm: ReadonlySet<number>): number {
  const share = jars / largestLoad(model, batch.family)
  return firm.has(batch.family) ? dualFeasible(share) : share
}

export const largestLoad = (model: DayModel, family: number): number => Math.max(1, ...(model.families[family]?.capacity ?? []))

/**
 * A dual feasible function: sizes that fit one load together never sum to more than 1 after it. u(x) = x when 3x is whole, else ⌊3x⌋ ÷ 2.
 *
 * Source: Fekete, Schepers 2001, New classes of fast lower bounds for bin packing problems, Mathematical Programming 91:11-31, u⁽²⁾.
 */
export function dualFeasible(share: number): number {
  const thirds = 3 * share
  return Math.abs(thirds - Math.round(thirds)) < 1e-9 ? share : Math.floor(thirds) / 2
}

/** Families whose trays, seen through the dual feasible function, ask for more loads than their jars do. */
function firmFamilies(model: DayModel): Set<number> {
  const byJars = new Float64Array(model.families.length)
  const byDual = new Float64Array(model.families.length)
  for (const batch of model.batches) {
    for (const jars of batch.trays) {
      const share = jars / largestLoad(model, batch.family)
      byJars[batch.family] = (byJars[batch.family] ?? 0) + share
      byDual[batch.family] = (byDual[batch.family] ?? 0) + dualFeasible(share)
    }
  }
  return new Set(model.families.map((_, family) => family).filter((family) => (byDual[family] ?? 0) > (byJars[family] ?? 0)))
}
