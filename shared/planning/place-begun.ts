import { isEquipmentFree, isPersonFree, rewind, takeEquipment, takePerson } from '@/shared/planning/day-calendar'
import type { PlanPreparation } from '@/shared/planning/day-problem'
import {
  cookOccupation,
  fillingsToTry,
  minutesFor,
  type PlacedBatch,
  prepare,
  takeTableAndFillers,
  washJars,
} from '@/shared/planning/place-batch'
import { count, type PlacingContext } from '@/shared/planning/placing-context'
import type { SplitBatch, SplitJob } from '@/shared/planning/split-demand'
import type { BatchUnderWay, BoilingJars } from '@/shared/planning/under-way'
import type { KitchenTime } from '@/shared/time/kitchen-time'

type Begun = Exclude<BatchUnderWay, { stage: 'prepared' }>
type Cooking = Extract<BatchUnderWay, { stage: 'cooking' }>

/** The empty jars of this job that boil in a canner already; null when none do. */
export function jarsBoilingFor({ underWay }: PlacingContext, job: SplitJob): BoilingJars | null {
  if (!underWay) return null
  for (const { id } of job.batches) {
    const begun = underWay.batches.get(id)
    if (begun && begun.stage !== 'filled' && begun.boiling) return begun.boiling
  }
  return null
}

/**
 * Takes a begun batch to its load: jars that are filled keep their minute and must be in time for it; what is in the kettle gets its filling.
 *
 * @param ends - minutes at which the filling may end, the preferred first
 * @param firstLoadAt - the first of the loads it goes into; no jar may be filled after it
 * @param lastLoadAt - the last of them; the wait is counted up to it
 */
export function placeBegun(
  context: PlacingContext,
  batch: SplitBatch,
  preparation: PlanPreparation,
  begun: Begun,
  ends: readonly KitchenTime[],
  firstLoadAt: KitchenTime,
  lastLoadAt: KitchenTime,
): PlacedBatch | null {
  if (begun.stage === 'filled') {
    const isInTime = begun.placed.fillEnd <= firstLoadAt && lastLoadAt <= begun.loadBy
    return isInTime ? begun.placed : count(context.blocked, 'canner')
  }
  const mark = context.calendar.trail.length
  for (const [fillEnd, team] of fillingsToTry(context, batch, preparation, ends)) {
    if (context.effort.left <= 0) return null
    const placed = fillFromKettle(context, batch, preparation, begun, fillEnd, team)
    if (placed) return placed
    rewind(context.calendar, mark)
    context.hopeless?.add(`${fillEnd} ${team}`)
  }
  return null
}

function fillFromKettle(
  context: PlacingContext,
  batch: SplitBatch,
  preparation: PlanPreparation,
  { placed, prep: prepared }: Cooking,
  fillEnd: KitchenTime,
  team: number,
): PlacedBatch | null {
  context.effort.left--
  const { calendar, setUp, underWay } = context
  const { kettle, burner, cookEnd, cook, jarPot } = placed
  const fillStart = fillEnd - minutesFor(preparation.fill, batch.multiple, team)
  if (fillStart < Math.max(cookEnd, underWay?.now ?? cookEnd)) return count(context.blocked, 'kettle')
  if (fillStart > cookEnd + preparation.cookedToFillingLimitMinutes) return count(context.blocked, 'kettle')
  if (!isEquipmentFree(calendar, kettle.id, cookEnd, fillEnd + kettle.washMinutes)) return count(context.blocked, 'kettle')
  if (!isEquipmentFree(calendar, burner.id, cookEnd, fillEnd)) return count(context.blocked, 'burner')
  takeEquipment(calendar, kettle.id, cookEnd, fillEnd + kettle.washMinutes)
  takeEquipment(calendar, burner.id, cookEnd, fillEnd)
  if (jarPot) {
    takeEquipment(calendar, jarPot.kettle.id, cookEnd, fillEnd)
    takeEquipment(calendar, jarPot.burner.id, cookEnd, fillEnd)
  }
  for (const personId of cook.peopleIds) {
    const hours = setUp.hours.find(({ person }) => person.id === personId)
    if (!hours || !isPersonFree(calendar, hours, cookOccupation(preparation), cookEnd, fillStart)) return count(context.blocked, 'cook')
    takePerson(calendar, personId, cookOccupation(preparation), cookEnd, fillStart)
  }
  const filling = takeTableAndFillers(context, batch, preparation, fillStart, fillEnd, team)
  if (!filling) return null
  const wash = washJars(context, batch, preparation, jarPot ? Math.min(jarPot.start, fillStart) : fillStart)
  if (!wash) return count(context.blocked, 'wash')
  // What goes into the kettle was prepared before it; what is packed raw beside it may still be to come.
  const isPrepared = prepared === null && preparation.prepBefore === 'cook'
  const { cookStart } = placed
  const prep = isPrepared ? { start: cookStart, end: cookStart, peopleIds: [] } : prepare(context, batch, preparation, fillStart)
  if (!prep) return count(context.blocked, 'prep')
  return { ...placed, ...filling, batch, fillStart, fillEnd, wash, prep, cook: { ...cook, end: fillStart } }
}
