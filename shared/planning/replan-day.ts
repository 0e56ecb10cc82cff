import { applySetbacks } from '@/shared/planning/apply-setbacks'
import { assembleReplan } from '@/shared/planning/assemble-replan'
import { chilledAgain, chilledHolds } from '@/shared/planning/chilled-again'
import type { DayPlan, PlannedBatch } from '@/shared/planning/day-plan'
import type { DayProblem, PlanLock } from '@/shared/planning/day-problem'
import type { DaySoFar } from '@/shared/planning/day-so-far'
import { type Dropped, type DropReason, type JobLeft, jobsLeft } from '@/shared/planning/jobs-left'
import { planChanges, type PlanChanges } from '@/shared/planning/plan-changes'
import { searchAgain } from '@/shared/planning/search-again'
import { type HandOver, standOfDay, type StandOfDay } from '@/shared/planning/stand-of-day'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Jars or food whose wait no timetable can meet: it is told, never stretched. */
export type BrokenWait = {
  readonly batchId: string
  readonly code: string
  readonly stage: 'cooking' | 'filled'
  /** Jars that wait, or that the kettle will typically give. */
  readonly jars: number
  /** In a canner by then, or not at all. */
  readonly loadBy: KitchenTime
  /** When a canner for it is free at the soonest; null when none comes free before the canners must be empty. */
  readonly cannerFreeAt: KitchenTime | null
}

export type Replan = {
  /** What the new plan was made for: people's real hours, canners that are left. */
  readonly problem: DayProblem
  readonly plan: DayPlan
  readonly changes: PlanChanges
  readonly dropped: readonly Dropped[]
  readonly brokenWaits: readonly BrokenWait[]
  readonly handOvers: readonly HandOver[]
}

/** A lock that no plan can keep; without it one was found, or every lock stands in the way of any. */
export type ReplanRefusal = { readonly kind: 'locked'; readonly locks: readonly PlanLock[] }

/** Loads planned, over all tries, to find which of several locks binds; where that would be more, all locks are named. */
const MOST_TRIED = 60

/**
 * Plans the rest of a running day anew, from the present minute.
 *
 * What has begun keeps its start, its people and its place. Jars that wait come first. Then in order: least finish, fewest people moved,
 * least shift of what starts within half an hour. What no longer fits is left out and named; a wait that can no longer be met is named too.
 * Pure and deterministic.
 *
 * @param problem - what the day was planned for, without setbacks
 * @param before - the plan that stands
 */
export function replanDay(problem: DayProblem, before: DayPlan, soFar: DaySoFar): Result<Replan, ReplanRefusal> {
  const replanned = replanKeepingLocks(problem, before, soFar)
  if (replanned) return ok(replanned)
  const locks = problem.locks ?? []
  const tried = locks.length * before.loads.length <= MOST_TRIED ? locks : []
  const binding = tried.filter(
    (lock) => replanKeepingLocks({ ...problem, locks: locks.filter((other) => other !== lock) }, before, soFar) !== null,
  )
  return refuse({ kind: 'locked', locks: binding.length > 0 ? binding : locks })
}

/** The same, and null where no plan keeps every lock: nobody asks which of them binds. */
export function replanKeepingLocks(problem: DayProblem, before: DayPlan, soFar: DaySoFar): Replan | null {
  const real = applySetbacks(problem, soFar)
  const stand = standOfDay(real, before, soFar)
  const left = jobsLeft(real, before, soFar)
  const gone = new Set(left.dropped.map(({ id }) => id))
  const searched = searchAround(stand, chilledHolds(real, before, soFar, gone), left.jobs, before.finishAt)
  if (!searched) return null
  const { timetable, cannotWait, noTime } = searched
  const { plan, noTime: unchilled } = chilledAgain(real, before, assembleReplan(before, stand, timetable, left.jobs), soFar, gone)
  const people = real.people.map(({ id }) => id)
  return {
    problem: real,
    plan,
    changes: planChanges(before, plan, people, soFar.now),
    dropped: [
      ...left.dropped,
      ...droppedOf(before, cannotWait, 'cannot-wait'),
      ...droppedOf(before, noTime, 'no-time'),
      ...unchilled.map(noTimeFor),
    ],
    brokenWaits: cannotWait.flatMap((each) => brokenWaits(stand, before, each, plan)),
    handOvers: stand.handOvers,
  }
}

/** What is chilled keeps its place, unless a load or a batch would be left out for it: then it is what gives way. */
function searchAround(
  stand: StandOfDay,
  { things, people }: ReturnType<typeof chilledHolds>,
  jobs: readonly JobLeft[],
  finish: KitchenTime,
) {
  const { underWay } = stand
  if (things.length === 0) return searchAgain(stand, jobs, finish)
  const held = { ...underWay, things: [...underWay.things, ...things], people: [...underWay.people, ...people] }
  const around = searchAgain({ ...stand, underWay: held }, jobs, finish)
  return around && around.cannotWait.length + around.noTime.length === 0 ? around : searchAgain(stand, jobs, finish)
}

const noTimeFor = ({ id, code, jars }: PlannedBatch): Dropped => ({ of: 'batch', id, code, jars: jars.typical, why: 'no-time' })

function droppedOf(before: DayPlan, jobs: readonly JobLeft[], why: DropReason): Dropped[] {
  return jobs.flatMap(({ job, loadCodes }) => {
    const code = (id: string) => before.batches.find((batch) => batch.id === id)?.code ?? id
    const jars = (parts: (typeof job.loads)[number]['parts']) => parts.reduce((sum, part) => sum + part.jars.typical, 0)
    return [
      ...job.batches.map((batch): Dropped => ({ of: 'batch', id: batch.id, code: code(batch.id), jars: batch.jars.typical, why })),
      ...loadCodes.map((load, index): Dropped => ({ of: 'load', id: load, code: load, jars: jars(job.loads[index]?.parts ?? []), why })),
    ]
  })
}

function brokenWaits(stand: StandOfDay, before: DayPlan, { job }: JobLeft, plan: DayPlan): BrokenWait[] {
  const preparation = stand.problem.preparations.find(({ id }) => id === job.preparationId)
  if (!preparation) return []
  return job.batches.flatMap((batch): BrokenWait[] => {
    const begun = stand.underWay.batches.get(batch.id)
    if (!begun || begun.stage === 'prepared') return []
    const hotUntil = begun.placed.cookEnd + preparation.cookedToFillingLimitMinutes
    return [
      {
        batchId: batch.id,
        code: before.batches.find(({ id }) => id === batch.id)?.code ?? batch.id,
        stage: begun.stage,
        jars: job.loads
          .flatMap(({ parts }) => parts.filter((part) => part.batchId === batch.id))
          .reduce((sum, part) => sum + part.jars.typical, 0),
        loadBy: begun.stage === 'filled' ? begun.loadBy : hotUntil + preparation.filledToLoadedLimitMinutes,
        cannerFreeAt: soonestCanner(stand, job.preparationId, plan),
      },
    ]
  })
}

/** When a canner that fits is next empty in the new plan, with time for the whole cycle; null when none is. */
function soonestCanner({ problem, underWay }: StandOfDay, preparationId: string, plan: DayPlan): KitchenTime | null {
  const preparation = problem.preparations.find(({ id }) => id === preparationId)
  const ends = underWay.setUp.places
    .filter(({ canner }) => canner.method === preparation?.method && (canner.capacity[preparation.jarSize] ?? 0) > 0)
    .filter(({ canner }) => !underWay.outages.some(({ id, end }) => id === canner.id && !Number.isFinite(end)))
    .map(({ canner, readyAt }) => Math.max(readyAt, underWay.now, ...nextEmpty(plan, canner.id, underWay.now)))
  const soonest = Math.min(...ends)
  return Number.isFinite(soonest) && soonest < problem.window.cannersEmptyBy ? soonest : null
}

const nextEmpty = (plan: DayPlan, cannerId: string, now: KitchenTime): KitchenTime[] =>
  plan.loads
    .filter((load) => load.cannerId === cannerId && load.emptyAt > now)
    .map(({ emptyAt }) => emptyAt)
    .sort((a, b) => a - b)
    .slice(0, 1)
