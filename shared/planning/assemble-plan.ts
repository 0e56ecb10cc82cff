import { METHODS } from '@/shared/kitchen/methods'
import { bindingReasonOf, criticalLoads } from '@/shared/planning/binding-reason'
import type { DayPlan, NightBeforeStep, PlannedBatch, PlannedLoad, PlannedTask } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { cannerMinutesOfMethod } from '@/shared/planning/finish-bound'
import { languageCover } from '@/shared/planning/language-cover'
import { nextLimitOf } from '@/shared/planning/next-limit'
import { isUnowned, planNightBefore } from '@/shared/planning/night-before'
import type { PlacedBatch } from '@/shared/planning/place-batch'
import type { PlacedJob, PlacedLoad } from '@/shared/planning/place-job'
import type { Timetable } from '@/shared/planning/time-in-order'
import { shareWork } from '@/shared/planning/share-work'
import { batchTasks, briefings, loadTasks, preheatings } from '@/shared/planning/plan-tasks'
import { tailWork } from '@/shared/planning/tail-work'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Writes a timetable out as a plan: codes in order of time, one task for everything anybody or anything does. */
export function assemblePlan(problem: DayProblem, timetable: Timetable, lowerBound: KitchenTime): DayPlan {
  const codes = codesOf(timetable.jobs)
  const loads = plannedLoads(timetable.jobs)
  const placed = timetable.jobs.flatMap((job) => job.batches.map((batch) => ({ job, batch })))
  const { tasks: tail, shortages, cleanUpEndAt } = tailWork(problem, timetable)
  const first = [
    ...briefings(problem),
    ...preheatings(timetable),
    ...placed.flatMap(({ job, batch }) => batchTasks(job.preparation, batch)),
    ...loads.flatMap((load) => loadTasks(load, burnerOf(timetable, load.cannerId))),
    ...tail,
  ].sort((a, b) => a.start - b.start || a.end - b.end || a.id.localeCompare(b.id))
  const tasks = sharedOut(problem, timetable, loads, first)
  const batches = placed
    .map(({ job, batch }) => plannedBatch(job, batch, codes, tasks))
    .sort((a, b) => a.cookStart - b.cookStart || a.code.localeCompare(b.code))
  const byMethod = METHODS.map((method) => cannerMinutesOfMethod(problem, splitOf(timetable), method)).filter(({ needed }) => needed > 0)
  const total = (pick: 'needed' | 'available' | 'slack') => byMethod.reduce((sum, entry) => sum + entry[pick], 0)
  const bindingReason = bindingReasonOf(problem, timetable, loads)
  const cover = languageCover(problem, { tasks, batches, loads })
  return {
    dayId: problem.dayId,
    batches,
    loads,
    tasks,
    nightBefore: nightBeforeOf(problem, timetable.jobs),
    finishAt: timetable.finishAt,
    cleanUpEndAt,
    cannerMinutes: { needed: total('needed'), available: total('available'), slack: total('slack') },
    cannerMinutesByMethod: byMethod,
    lowerBound,
    bindingReason,
    nextLimit: nextLimitOf(problem, timetable, tasks, bindingReason),
    criticalLoadIds: criticalLoads(loads).map((load) => load.id),
    shortages: [...shortages, ...cover.gaps],
    languageHelp: cover.help,
    rule: timetable.rule,
  }
}

/** A plan made beforehand shares its work out evenly; one made while the day runs moves nobody who need not be moved. */
function sharedOut(
  problem: DayProblem,
  { context, jobs }: Timetable,
  loads: readonly PlannedLoad[],
  tasks: readonly PlannedTask[],
): PlannedTask[] {
  if (context.underWay !== null) return [...tasks]
  const preparations = new Map(jobs.flatMap((job) => job.batches.map(({ batch }) => [batch.id, job.preparation] as const)))
  const preparationOf = ({ batchId }: PlannedTask) => (batchId === null ? null : (preparations.get(batchId) ?? null))
  return shareWork(problem, context.setUp.hours, loads, tasks, preparationOf, (task) => !isLocked(problem, task))
}

const isLocked = ({ locks = [] }: DayProblem, { batchId, kind }: PlannedTask): boolean =>
  locks.some((lock) => lock.task === kind && `${lock.preparationId}/${lock.batch}` === batchId)

const splitOf = (timetable: Timetable) =>
  timetable.jobs.map((job) => ({ preparationId: job.preparation.id, batches: job.batches.map(({ batch }) => batch), loads: job.loads }))

function burnerOf(timetable: Timetable, cannerId: string): string | null {
  return timetable.context.setUp.places.find((place) => place.canner.id === cannerId)?.burner.id ?? null
}

/** 'J1', 'J2', … by start of cooking within a preparation. */
function codesOf(jobs: readonly PlacedJob[]): Map<string, string> {
  const codes = new Map<string, string>()
  const counts = new Map<string, number>()
  const placed = jobs.flatMap((job) => job.batches.map((batch) => ({ letter: job.preparation.code, batch })))
  placed.sort((a, b) => a.batch.cookStart - b.batch.cookStart || a.batch.batch.id.localeCompare(b.batch.batch.id))
  for (const { letter, batch } of placed) {
    const next = (counts.get(letter) ?? 0) + 1
    counts.set(letter, next)
    codes.set(batch.batch.id, `${letter}${next}`)
  }
  return codes
}

function plannedBatch(
  job: PlacedJob,
  placed: PlacedBatch,
  codes: ReadonlyMap<string, string>,
  tasks: readonly PlannedTask[],
): PlannedBatch {
  const { batch, cookStart, cookEnd, fillStart, fillEnd } = placed
  const taskIds = tasks.filter((task) => task.batchId === batch.id).map((task) => task.id)
  const times = { cookStart, cookEnd, fillStart, fillEnd }
  return {
    id: batch.id,
    code: codes.get(batch.id) ?? batch.id,
    preparationId: job.preparation.id,
    multiple: batch.multiple,
    jars: batch.jars,
    kettleId: placed.kettle.id,
    ...times,
    taskIds,
  }
}

function plannedLoads(jobs: readonly PlacedJob[]): PlannedLoad[] {
  const all = jobs.flatMap((job) => job.loads.map((load) => ({ job, load })))
  all.sort((a, b) => a.load.loadAt - b.load.loadAt || a.load.place.canner.id.localeCompare(b.load.place.canner.id))
  return all.map(({ job, load }, index) => plannedLoad(job, load, `L${String(index + 1).padStart(2, '0')}`))
}

function plannedLoad({ preparation, batches }: PlacedJob, load: PlacedLoad, code: string): PlannedLoad {
  const { place, parts, jarBoilAt, loadAt, heatAt, boilAt, processEndAt, restEndAt, emptyAt, operatorId, loaderId, unloaderId } = load
  const { cycle, process, method, jarSize } = preparation
  const inLoad = batches.filter(({ batch }) => parts.some((part) => part.batchId === batch.id))
  const firstFilled = Math.min(...inLoad.map((batch) => batch.fillEnd))
  const ventAt = method === 'pressure' ? heatAt + cycle.comeUpMinutes : null
  return {
    id: code,
    code,
    cannerId: place.canner.id,
    preparationId: preparation.id,
    method,
    jarSize,
    batchParts: parts,
    ...{ jarBoilAt, loadAt, heatAt, boilAt, processEndAt, restEndAt, emptyAt, operatorId, loaderId, unloaderId },
    ventAt,
    ventEndAt: ventAt === null ? null : ventAt + cycle.ventMinutes,
    processMinutes: process.minutes,
    psi: process.psi,
    source: process.source,
    latestLoadAt: firstFilled + preparation.filledToLoadedLimitMinutes,
  }
}

function nightBeforeOf(problem: DayProblem, jobs: readonly PlacedJob[]): NightBeforeStep[] {
  return problem.preparations.flatMap((preparation) => {
    const batches = jobs.filter((job) => job.preparation.id === preparation.id).flatMap((job) => job.batches)
    if (batches.length === 0) return []
    const ordered = [...batches].sort((a, b) => a.cookStart - b.cookStart)
    const needed = Math.min(...batches.map((batch) => Math.min(batch.prep.start, batch.cookStart)))
    const steps = planNightBefore(
      problem,
      preparation,
      ordered.map(({ batch }) => batch.id),
      needed,
    )
    return steps.filter((step): step is NightBeforeStep => !isUnowned(step))
  })
}
