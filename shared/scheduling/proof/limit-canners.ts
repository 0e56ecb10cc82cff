import { batchesAtOnce, cannerCount, inSmall, isOrdered, kindsOf } from '@/shared/scheduling/day/canner-kinds-bound'
import type { DayModel, ModelBatch } from '@/shared/scheduling/day/day-model'
import { dualFeasible, trayShares, worth } from '@/shared/scheduling/day/load-shares'
import { fixed, type Level, type Limit, loading, type Tray } from '@/shared/scheduling/proof/day-parts'
import type { DayProof } from '@/shared/scheduling/proof/prove-day'
import { atLeastAfter, variable } from '@/shared/scheduling/proof/solver'

/** A whole canner, where parts of one are counted in whole numbers. */
const WHOLE = 5_040

/** Canners and their operators, for boiling water or for pressure. */
export function limitCanners(proof: DayProof, isPressure: boolean, limit: Limit, level: Level): void {
  const { model, trays, most } = proof
  const own = trays.filter(({ stage }) => model.families[stage.batch.family]?.isPressure === isPressure)
  if (own.length === 0) return
  const loads = own.map((tray) => loading(tray, 0, tray.stage.batch.tail, 1))
  const kinds = new Set(own.flatMap((tray) => tray.kinds.map(({ kind }) => kind)))
  limit(loads, level([...kinds].reduce((sum, kind) => sum + (model.cannerKinds[kind]?.ids.length ?? 0), 0)), true)
  limitShares(proof, own, isPressure, limit, level)
  limitLarge(proof, own, isPressure, limit, level)
  if (!isPressure) return
  const operators = level(0)
  for (const { from, to, most: canners } of model.operators)
    for (let slot = from; slot < Math.min(to, most); slot++) operators[slot] = (operators[slot] ?? 0) + canners
  limit(loads, operators)
}

/** Each tray takes its part of a canner, whichever load it is in: that counts before any load is decided. */
function limitShares({ model }: DayProof, own: readonly Tray[], isPressure: boolean, limit: Limit, level: Level): void {
  const shares = trayShares(model)
  const parts = own.map((tray) => {
    const part = shares(tray.stage.batch.family, tray.jars)
    return fixed(tray.start, 0, tray.stage.batch.tail, Math.floor(WHOLE * part + 1e-6), null)
  })
  limit(parts, level(Math.ceil(WHOLE * worth(model, isPressure) - 1e-6)), true)
}

/**
 * A batch that does not go whole into small canners has some load in a large one, which it takes up in part; a load is never taken up more
 * than once. Of the measures of that part (`partsOfLarge`) each family is given the one that says most.
 */
function limitLarge({ model, solver, most }: DayProof, own: readonly Tray[], isPressure: boolean, limit: Limit, level: Level): void {
  const kinds = kindsOf(model, isPressure)
  const stages = [...new Set(own.map(({ stage }) => stage))]
  for (let first = 1; first <= kinds.length; first++) {
    const [large, small] = [kinds.slice(0, first), kinds.slice(first)]
    if (!isOrdered(model, isPressure, large, small)) continue
    const parts = [...model.families.keys()].flatMap((family) => {
      const left = stages.filter(({ batch }) => batch.family === family && batch.jars > inSmall(model, batch, small))
      const shares = partsOfLarge(
        model,
        left.map(({ batch }) => batch),
        large,
        small,
      )
      return left.map((stage, at) => {
        const { batch } = stage
        const start = variable(solver, 0, most - batch.tail)
        atLeastAfter(solver, stage.fill, start, batch.fill)
        atLeastAfter(solver, start, stage.fill, -batch.fill - batch.waitFillLoad)
        return fixed(start, 0, batch.tail, Math.floor(WHOLE * (shares[at] ?? 0) + 1e-6), null)
      })
    })
    limit(parts, level(WHOLE * cannerCount(model, large)), true)
  }
}

/**
 * The part of a large load that each of these batches of one family takes up in the one of its large loads that holds most of it: its jars that
 * are not in small canners, spread over all large canners that it can be in at once; those through the dual feasible function where that
 * is one; or one over the batches that can be in a load together. The parts of batches in one load sum to 1 at most, by each measure.
 */
function partsOfLarge(model: DayModel, batches: readonly ModelBatch[], large: readonly number[], small: readonly number[]): number[] {
  const count = cannerCount(model, large)
  const jars = batches.map((batch) => {
    const holds = Math.max(1, ...large.map((kind) => model.families[batch.family]?.capacity[kind] ?? 0))
    const among = batch.waitFillLoad < batch.tail ? Math.min(count, batch.trays.length) : batch.trays.length
    return (batch.jars - inSmall(model, batch, small)) / holds / among
  })
  const atOnce = 1 / batchesAtOnce(model, batches)
  const measures = [jars, batches.map(() => atOnce), ...(count === 1 ? [jars.map(dualFeasible)] : [])]
  const sum = (parts: readonly number[]) => parts.reduce((total, part) => total + part, 0)
  return measures.reduce((best, parts) => (sum(parts) > sum(best) ? parts : best))
}
