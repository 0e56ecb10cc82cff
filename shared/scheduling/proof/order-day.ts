import type { ModelBatch } from '@/shared/scheduling/day/day-model'
import type { Stage, Tray } from '@/shared/scheduling/proof/day-parts'
import type { DayProof } from '@/shared/scheduling/proof/prove-day'
import { atLeastAfter, type Solver, variable } from '@/shared/scheduling/proof/solver'

/**
 * What may be put in order without loss: if any plan ends by a slot, one that keeps all of this does.
 *
 * From a plan that ends by then, one is made that keeps the rules below, by three exchanges of which none undoes an earlier:
 *
 * 1. Batches that are alike but for their preparation ("alike after prep"). Where the one prepared first is cooked last, they change places
 *    from cooking on: each still begins after its own prep, and none waits longer than the one that was cooked last did. Where of two the
 *    one cooked first is filled last, they change places from filling on, for the same reason; both kettles are in use as long as before
 *    in sum, at each moment. In the end they are prepared, cooked and filled in one order.
 * 2. Batches alike in everything take each other's names, so that this order is that of their numbers.
 * 3. Trays of as many jars, of one family and with the same longest wait, from batches of which one is filled no later than the other:
 *    where its tray is loaded later, the two change loads. Both are filled by then and wait no longer than the longer of both did; every
 *    load holds as many jars as before.
 *
 * "Filled first" is by end of filling, then cooking, end of prep and number, so the order has no circles where minutes are the same.
 */
export function orderDay({ model, solver, stages, trays }: Pick<DayProof, 'model' | 'solver' | 'stages' | 'trays'>): void {
  const traysOf = new Map<Stage, Tray[]>()
  for (const tray of trays) traysOf.set(tray.stage, [...(traysOf.get(tray.stage) ?? []), tray])
  const isOneByOne = model.day.fillStations === 1
  stages.forEach((first, at) => {
    orderTrays(solver, traysOf.get(first) ?? [])
    for (const then of stages.slice(at + 1)) {
      const pairs = alikeTrays(traysOf.get(first) ?? [], traysOf.get(then) ?? [])
      const isAlike = afterPrep(first) === afterPrep(then)
      if (!isOneByOne && !isAlike && pairs.length === 0) continue
      const isSame = isAlike && prepOf(first) === prepOf(then)
      const order = isSame ? variable(solver, 1, 1) : variable(solver, 0, 1)
      inOrder(solver, first, then, isOneByOne, isAlike, [2 * order, 1])
      inOrder(solver, then, first, isOneByOne, isAlike, [2 * order + 1, 0])
      for (const [one, other] of pairs) {
        atLeastAfter(solver, one.start, other.start, 0, 2 * order, 1)
        atLeastAfter(solver, other.start, one.start, 0, 2 * order + 1, 0)
      }
    }
  })
}

/** Trays of one batch that hold as many jars are put into loads by number. */
function orderTrays(solver: Solver, trays: readonly Tray[]): void {
  trays.forEach((tray, at) => {
    const before = trays.slice(0, at).findLast((other) => other.jars === tray.jars)
    if (before) atLeastAfter(solver, before.start, tray.start, 0)
  })
}

function inOrder(
  solver: Solver,
  first: Stage,
  then: Stage,
  isOneByOne: boolean,
  isAlike: boolean,
  [side, value]: readonly [side: number, value: number],
): void {
  // what takes no time may be filled while another is
  const isAfter = isOneByOne && first.batch.fill > 0 && then.batch.fill > 0
  atLeastAfter(solver, first.fill, then.fill, first.batch.fill - (isAfter ? 0 : then.batch.fill), side, value)
  if (!isAlike) return
  atLeastAfter(solver, first.cook, then.cook, 0, side, value)
  atLeastAfter(solver, first.prepEnd, then.prepEnd, 0, side, value)
}

function alikeTrays(trays: readonly Tray[], others: readonly Tray[]): (readonly [Tray, Tray])[] {
  return trays.flatMap((one) =>
    others.flatMap((other) => {
      const [a, b] = [one.stage.batch, other.stage.batch]
      const isAlike = one.jars === other.jars && a.family === b.family && a.waitFillLoad === b.waitFillLoad
      return isAlike ? [[one, other] as const] : []
    }),
  )
}

const PREP = ['ready', 'work', 'prepSkill', 'prepLength', 'teams'] as const satisfies readonly (keyof ModelBatch)[]
const prepOf = ({ batch }: Stage): string => JSON.stringify(PREP.map((key) => batch[key]))

/** All that a batch is after its preparation, but for its number; the longest wait between the two is part of it. */
function afterPrep({ batch }: Stage): string {
  const keys = Object.keys(batch) as (keyof ModelBatch)[]
  return JSON.stringify(keys.filter((key) => key !== 'index' && !PREP.some((one) => one === key)).map((key) => [key, batch[key]]))
}
