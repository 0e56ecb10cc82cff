import type { DayPlan } from '@/shared/planning/day-plan'
import type { DaySoFar } from '@/shared/planning/day-so-far'

/** Why an earlier plan cannot be the day's plan again. */
export type Untrue = {
  readonly kind: 'load' | 'batch' | 'task'
  readonly code: string
  readonly what: 'begun-otherwise' | 'not-begun' | 'out' | 'left' | 'no-produce'
}

/**
 * What of an earlier plan is no longer true: work that began otherwise than it says, work that it has begin before now and that has not, and
 * work to come that something which is out, late or short stands in the way of. Empty when it can be worked by.
 */
export function whatMakesUntrue(plan: DayPlan, soFar: DaySoFar): Untrue[] {
  return [...untrueLoads(plan, soFar), ...untrueBatches(plan, soFar), ...untrueTasks(plan, soFar)]
}

function untrueLoads(plan: DayPlan, { now, loads, setbacks }: DaySoFar): Untrue[] {
  const unknown = loads.filter(({ loadId }) => !plan.loads.some(({ id }) => id === loadId))
  const untrue = plan.loads.flatMap((load): Untrue[] => {
    const fact = loads.find(({ loadId }) => loadId === load.id)
    const say = (what: Untrue['what']): Untrue[] => [{ kind: 'load', code: load.code, what }]
    if (fact && fact.state !== 'planned') return fact.cannerId === load.cannerId && fact.state !== 'failed' ? [] : say('begun-otherwise')
    if (load.loadAt < now) return say('not-begun')
    const isOut = setbacks.some(
      (each) =>
        each.kind === 'canner-out' &&
        each.cannerId === load.cannerId &&
        load.emptyAt > each.from &&
        (each.until === null || load.loadAt < each.until),
    )
    return isOut ? say('out') : []
  })
  return [...unknown.map(({ loadId }): Untrue => ({ kind: 'load', code: loadId, what: 'begun-otherwise' })), ...untrue]
}

function untrueBatches(plan: DayPlan, { now, batches, setbacks }: DaySoFar): Untrue[] {
  return plan.batches.flatMap((batch): Untrue[] => {
    const fact = batches.find(({ batchId }) => batchId === batch.id)
    const say = (what: Untrue['what']): Untrue[] => [{ kind: 'batch', code: batch.code, what }]
    if (fact?.state === 'abandoned') return say('begun-otherwise')
    if (fact && fact.state !== 'planned') return fact.kettleId === batch.kettleId ? [] : say('begun-otherwise')
    if (batch.cookStart < now) return say('not-begun')
    const isShort = setbacks.some(
      (each) =>
        each.kind === 'produce-short' &&
        each.preparationId === batch.preparationId &&
        plan.batches.filter(({ preparationId }) => preparationId === batch.preparationId).length > each.batches,
    )
    return isShort ? say('no-produce') : []
  })
}

function untrueTasks(plan: DayPlan, { now, setbacks }: DaySoFar): Untrue[] {
  return plan.tasks.flatMap((task): Untrue[] => {
    if (task.end <= now || task.kind === 'clean-up' || task.kind === 'brief') return []
    const code =
      plan.batches.find(({ id }) => id === task.batchId)?.code ?? plan.loads.find(({ id }) => id === task.loadId)?.code ?? task.kind
    const isLeft = setbacks.some(
      (each) =>
        (each.kind === 'person-away' && task.peopleIds.includes(each.personId) && task.end > each.from) ||
        (each.kind === 'person-late' && task.peopleIds.includes(each.personId) && task.start < each.at && task.start >= now),
    )
    const batch = plan.batches.find(({ id }) => id === task.batchId)
    const isLate = setbacks.some(
      (each) =>
        each.kind === 'produce-late' &&
        task.kind === 'prep' &&
        each.preparationId === batch?.preparationId &&
        task.start < each.at &&
        task.start >= now,
    )
    return isLeft || isLate ? [{ kind: 'task', code, what: isLeft ? 'left' : 'no-produce' }] : []
  })
}
