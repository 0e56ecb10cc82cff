import type { DayPlan } from '@/shared/planning/day-plan'
import type { BatchSoFar, DaySoFar, LoadSoFar } from '@/shared/planning/day-so-far'

/** A day that has gone exactly as planned up to `now`: what the plan begins before it has begun, and nothing else. */
export function asPlannedUntil(plan: DayPlan, now: number, more: Partial<DaySoFar> = {}): DaySoFar {
  const loads = plan.loads.flatMap((load): LoadSoFar[] => {
    if (load.loadAt >= now) return []
    const past = (at: number) => (at < now ? at : null)
    return [
      {
        loadId: load.id,
        state: load.emptyAt <= now ? 'done' : 'in-canner',
        cannerId: load.cannerId,
        operatorId: load.operatorId,
        loadedAt: load.loadAt,
        boilAt: past(load.boilAt),
        lostAt: null,
        processEndAt: past(load.processEndAt),
        emptyAt: load.emptyAt <= now ? load.emptyAt : null,
        processMinutes: load.processMinutes,
        jars: load.batchParts.map((part) => ({ batchId: part.batchId, jars: part.jars.typical })),
      },
    ]
  })
  const batches = plan.batches.flatMap((batch): BatchSoFar[] => {
    if (batch.cookStart >= now) return []
    const isFilled = batch.fillEnd <= now
    const loaded = loads.flatMap(({ jars }) => jars).filter((part) => part.batchId === batch.id)
    const waiting = isFilled ? batch.jars.typical - loaded.reduce((sum, part) => sum + part.jars, 0) : 0
    return [
      {
        batchId: batch.id,
        state: isFilled ? 'filled' : 'cooking',
        kettleId: batch.kettleId,
        startedAt: batch.cookStart,
        fillStartedAt: batch.fillStart < now ? batch.fillStart : null,
        filledAt: isFilled ? batch.fillEnd : null,
        jarsFilled: isFilled ? batch.jars.typical : null,
        waiting: waiting > 0 ? { jars: waiting, since: batch.fillEnd, loadBy: null } : null,
      },
    ]
  })
  return { now, batches, loads, setbacks: [], ...more }
}

/** The same day with one load changed. */
export const withLoad = (soFar: DaySoFar, loadId: string, change: Partial<LoadSoFar>): DaySoFar => ({
  ...soFar,
  loads: soFar.loads.map((load) => (load.loadId === loadId ? { ...load, ...change } : load)),
})
