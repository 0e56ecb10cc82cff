import type { DayPlan, PlannedLoad, TaskActual } from '@/shared/planning/day-plan'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** A load as the day now stands: real times where they are known, the plan's minutes from the last known time on. */
export type LoadForecast = {
  readonly load: PlannedLoad
  readonly state: 'done' | 'running' | 'to-come'
  /** The full boil or full pressure was logged: only then does a process clock run. */
  readonly clockRuns: boolean
  /** The canner it really went into, or is meant to. */
  readonly cannerId: string
  readonly loadAt: KitchenTime
  readonly heatAt: KitchenTime
  readonly boilAt: KitchenTime
  readonly processEndAt: KitchenTime
  readonly restEndAt: KitchenTime
  readonly emptyAt: KitchenTime
  /** Minutes after its planned loading; negative when early. */
  readonly lateMinutes: number
  /** Jars in the load: counted when it was logged, typical before. */
  readonly jars: number
}

/**
 * Carries what has really happened through the rest of the plan, in order of time, and shortens nothing.
 *
 * A load that has begun keeps its logged times. What is overdue is expected now at the earliest; a process that has begun runs its full
 * minutes from the logged boil. A load to come waits for its planned minute and for its canner, whichever is later.
 *
 * @param actuals - by load code; a code the plan does not know is passed over
 * @returns in the order of the plan's loads
 */
export function forecastLoads(plan: DayPlan, actuals: readonly TaskActual[], now: KitchenTime | null): LoadForecast[] {
  const actualOf = new Map(actuals.map((actual) => [actual.loadCode, actual]))
  const freeAt = new Map<string, KitchenTime>()
  const began = (load: PlannedLoad) => actualOf.get(load.code)?.loadedAt ?? null
  const inOrder = [...plan.loads].sort(
    (a, b) => Number(began(a) === null) - Number(began(b) === null) || (began(a) ?? a.loadAt) - (began(b) ?? b.loadAt),
  )
  const found = new Map<string, LoadForecast>()
  for (const load of inOrder) {
    const actual = actualOf.get(load.code) ?? null
    const cannerId = actual?.cannerId ?? load.cannerId
    const forecast =
      actual?.loadedAt != null ? runningLoad(load, actual, now) : loadToCome(load, cannerId, freeAt.get(cannerId) ?? null, now)
    freeAt.set(cannerId, Math.max(freeAt.get(cannerId) ?? forecast.emptyAt, forecast.emptyAt))
    found.set(load.id, forecast)
  }
  return plan.loads.flatMap((load) => found.get(load.id) ?? [])
}

function runningLoad(load: PlannedLoad, actual: TaskActual, now: KitchenTime | null): LoadForecast {
  const loadAt = actual.loadedAt ?? load.loadAt
  const expected = (known: KitchenTime | null, planned: KitchenTime) => known ?? Math.max(planned, now ?? planned)
  const boilAt = expected(actual.boilAt, loadAt + load.boilAt - load.loadAt)
  const heatAt = Math.min(loadAt + load.heatAt - load.loadAt, boilAt)
  const processEndAt = expected(actual.processEndAt, boilAt + load.processEndAt - load.boilAt)
  const emptyAt = expected(actual.emptyAt, processEndAt + load.emptyAt - load.processEndAt)
  const restEndAt = Math.max(processEndAt, Math.min(processEndAt + load.restEndAt - load.processEndAt, emptyAt))
  const jars = actual.jarsIn ?? typicalJars(load)
  const times = {
    loadAt,
    heatAt,
    boilAt,
    processEndAt,
    restEndAt,
    emptyAt,
    clockRuns: actual.boilAt !== null && actual.processEndAt === null,
  }
  return {
    load,
    state: actual.emptyAt === null ? 'running' : 'done',
    cannerId: actual.cannerId,
    ...times,
    lateMinutes: loadAt - load.loadAt,
    jars,
  }
}

function loadToCome(load: PlannedLoad, cannerId: string, cannerFreeAt: KitchenTime | null, now: KitchenTime | null): LoadForecast {
  const taken = load.loadAt - load.jarBoilAt
  const loadAt = Math.max(load.loadAt, now ?? load.loadAt, (cannerFreeAt ?? load.jarBoilAt) + taken)
  const shift = loadAt - load.loadAt
  const times = {
    clockRuns: false,
    loadAt,
    heatAt: load.heatAt + shift,
    boilAt: load.boilAt + shift,
    processEndAt: load.processEndAt + shift,
  }
  return {
    load,
    state: 'to-come',
    cannerId,
    ...times,
    restEndAt: load.restEndAt + shift,
    emptyAt: load.emptyAt + shift,
    lateMinutes: shift,
    jars: typicalJars(load),
  }
}

const typicalJars = (load: PlannedLoad): number => load.batchParts.reduce((sum, part) => sum + part.jars.typical, 0)

/** When the last canner is now expected to be empty. */
export const forecastFinish = (plan: DayPlan, loads: readonly LoadForecast[]): KitchenTime =>
  Math.max(loads.length === 0 ? plan.finishAt : Number.NEGATIVE_INFINITY, ...loads.map((load) => load.emptyAt))
