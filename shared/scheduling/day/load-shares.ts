import type { DayModel, ModelBatch } from '@/shared/scheduling/day/day-model'

/**
 * For each batch, loads that it must take up at least, as a share of whole loads of the largest canner that takes its family: jars over
 * capacity, or where that is more the sum of `shareOfTray` over its trays.
 *
 * The shares of the trays in any one load never sum to more than 1, so their sum over all batches never exceeds the number of loads.
 */
export function loadShares(model: DayModel): number[] {
  const shareOf = trayShares(model)
  return model.batches.map((batch) => {
    const share = batch.trays.reduce((sum, jars) => sum + shareOf(batch.family, jars), 0)
    return mayShare(model, batch) ? share : Math.max(share, wholeLoads(model, batch.family, share))
  })
}

/**
 * May some other batch of the family be in a load with this one? With a single fill station the later one is filled a whole filling after
 * the earlier, whose jars must not wait longer than they may. With more stations always.
 */
function mayShare(model: DayModel, batch: ModelBatch): boolean {
  if (model.day.fillStations !== 1) return true
  const others = model.batches.filter((other) => other.family === batch.family && other.index !== batch.index)
  return others.some((other) => other.fill <= batch.waitFillLoad || batch.fill <= other.waitFillLoad)
}

/** The least that whole loads of this family can hold together when it is at least `share`, in loads of the largest canner. */
export function wholeLoads(model: DayModel, family: number, share: number): number {
  const capacity = model.families[family]?.capacity ?? []
  const parts = capacity.map((jars) => partOfLoad(model, family, jars)).filter((part) => part > 0)
  const step = Math.min(...parts)
  const isStep = parts.every((part) => Math.abs(part / step - Math.round(part / step)) < 1e-9)
  return isStep ? Math.ceil(share / step - 1e-6) * step : share
}

/** What a canner that holds so many jars counts for, in loads of the family's largest canner; 0 when it holds none. */
export function partOfLoad(model: DayModel, family: number, jars: number): number {
  const share = jars / largestLoad(model, family)
  // one tray over a third counts a half, one of two thirds a whole; so does what fits beside it
  return jars === 0 ? 0 : share >= 2 / 3 ? 1 : share > 1 / 3 ? Math.max(share, 1 / 2) : share
}

/**
 * Largest canners of the method that its canners are worth together: a smaller one counts for the largest part of a whole load that it can
 * hold of any family of the method, in jars and through the dual feasible function alike.
 */
export function worth(model: DayModel, isPressure: boolean): number {
  return model.cannerKinds.reduce((sum, kind, index) => {
    const parts = model.families.flatMap((family, at) =>
      family.isPressure === isPressure ? [partOfLoad(model, at, family.capacity[index] ?? 0)] : [],
    )
    return sum + kind.ids.length * Math.max(0, ...parts)
  }, 0)
}

/** Gives a tray's share of a load of the family's largest canner, by the measure that asks for more loads of its family. */
export function trayShares(model: DayModel): (family: number, jars: number) => number {
  const firm = firmFamilies(model)
  return (family, jars) => {
    const share = jars / largestLoad(model, family)
    return firm.has(family) ? dualFeasible(share) : share
  }
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
