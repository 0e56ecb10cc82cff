import type { DayPlan, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem, PlanLock } from '@/shared/planning/day-problem'
import type { SplitJob } from '@/shared/planning/split-demand'

/** The id of the batch that a lock names. */
export const lockedBatchId = ({ preparationId, batch }: PlanLock): string => `${preparationId}/${batch}`

/** The locks on one task of a batch; several may hold it, one its minute and another its people. */
export const locksOn = ({ locks = [] }: DayProblem, batchId: string, task: PlanTaskKind): readonly PlanLock[] =>
  locks.length === 0 ? [] : locks.filter((lock) => lock.task === task && lockedBatchId(lock) === batchId)

/** The locks on the loading of a job, whichever of its batches they name. */
export const locksOnLoad = (problem: DayProblem, job: SplitJob): readonly PlanLock[] =>
  problem.locks ? job.batches.flatMap((batch) => locksOn(problem, batch.id, 'load')) : []

/** True when a minute is fixed for the job, so that it is placed before loads that may give way. */
export const hasFixedMinute = (problem: DayProblem, job: SplitJob): boolean =>
  (problem.locks ?? []).some((lock) => lock.at !== null && job.batches.some((batch) => batch.id === lockedBatchId(lock)))

/** Whether a start is the one that every lock with a minute asks for. */
export const startsAsLocked = (locks: readonly PlanLock[], start: number): boolean =>
  locks.every((lock) => lock.at === null || lock.at === start)

/** Whether equipment is the one that every lock with equipment asks for. */
export const isLockedThing = (locks: readonly PlanLock[], id: string): boolean =>
  locks.every((lock) => lock.equipmentId === null || lock.equipmentId === id)

/** The people whom the locks put into a team. */
export const lockedPeople = (locks: readonly PlanLock[]): string[] => [...new Set(locks.flatMap((lock) => lock.personId ?? []))]

/** Codes of batches and loads on which work has begun. */
export type WorkBegun = { readonly batches: ReadonlySet<string>; readonly loads: ReadonlySet<string> }

/** The code of the work that a lock names where it has begun, so that it stays as it is by itself; null while it is still to come. */
export function begunUnder({ batches, loads }: Pick<DayPlan, 'batches' | 'loads'>, begun: WorkBegun, lock: PlanLock): string | null {
  const id = lockedBatchId(lock)
  if (lock.task !== 'load') {
    const code = batches.find((batch) => batch.id === id)?.code
    return code !== undefined && begun.batches.has(code) ? code : null
  }
  const own = loads.filter(({ batchParts }) => batchParts.some(({ batchId }) => batchId === id))
  return own.every(({ code }) => begun.loads.has(code)) ? (own[0]?.code ?? null) : null
}
