import type { PlannedLoad } from '@/shared/planning/day-plan'
import type { PlanPreparation } from '@/shared/planning/day-problem'
import type { LoadSoFar } from '@/shared/planning/day-so-far'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/**
 * A load that is in a canner or was in one, with its real times, and from the last known one on the least that is still to come.
 *
 * A process that was interrupted is whole again: its minutes count from the last full boil or pressure, and while that has not come they are
 * still all to come (USDA Complete Guide to Home Canning, AIB No. 539, Guide 1). What is overdue is expected now.
 *
 * @param planned - the load as the plan has it; null for a load that was not planned
 */
export function realLoad(planned: PlannedLoad | null, soFar: LoadSoFar, preparation: PlanPreparation, now: KitchenTime): PlannedLoad {
  const { cycle, process, method, jarSize } = preparation
  const loadAt = soFar.loadedAt ?? now
  const heatBy = loadAt + cycle.loadMinutes
  const boilAt = soFar.boilAt ?? Math.max(now, hotAgainAt(soFar, preparation, heatBy))
  const processMinutes = Math.max(soFar.processMinutes ?? process.minutes, process.publishedMinutes)
  const processEndAt = soFar.processEndAt ?? Math.max(now, boilAt + processMinutes)
  const restBy = processEndAt + cycle.restMinutes + cycle.waitMinutes
  const emptyAt = soFar.emptyAt ?? Math.max(now, restBy + cycle.unloadMinutes)
  const heatAt = Math.min(heatBy, boilAt)
  const ventAt = method === 'pressure' ? Math.max(heatAt, boilAt - cycle.pressuriseMinutes - cycle.ventMinutes) : null
  const operatorId = soFar.operatorId ?? planned?.operatorId ?? ''
  return {
    id: soFar.loadId,
    code: soFar.loadId,
    cannerId: soFar.cannerId,
    preparationId: preparation.id,
    method,
    jarSize,
    batchParts: soFar.jars.map(({ batchId, jars }) => ({ batchId, jars: { low: jars, typical: jars, high: jars } })),
    jarBoilAt: Math.min(planned?.jarBoilAt ?? loadAt, loadAt),
    ...{ loadAt, heatAt, ventAt, ventEndAt: ventAt === null ? null : Math.min(boilAt, ventAt + cycle.ventMinutes), boilAt, processEndAt },
    ...{ restEndAt: Math.min(restBy, emptyAt), emptyAt, processMinutes },
    psi: planned?.psi ?? process.psi,
    source: planned?.source ?? process.source,
    operatorId,
    loaderId: planned?.loaderId ?? operatorId,
    unloaderId: planned?.unloaderId ?? operatorId,
    latestLoadAt: Math.max(planned?.latestLoadAt ?? loadAt, loadAt),
  }
}

/** A boil or a pressure that was lost comes back within the time it first took: a planning figure, never a process time. */
function hotAgainAt({ lostAt }: LoadSoFar, { cycle, method }: PlanPreparation, heatBy: KitchenTime): KitchenTime {
  if (lostAt !== null) return lostAt + (method === 'pressure' ? cycle.pressuriseMinutes : cycle.comeUpMinutes)
  return heatBy + cycle.comeUpMinutes + cycle.ventMinutes + cycle.pressuriseMinutes
}
