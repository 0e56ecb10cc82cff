import { METHODS } from '@/shared/kitchen/methods'
import type { BegunBatch } from '@/shared/planning/begun-batches'
import { bindingReasonOf, criticalLoads } from '@/shared/planning/binding-reason'
import type { DayPlan, PlannedBatch, PlannedLoad, PlannedTask } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { cannerMinutesOfMethod } from '@/shared/planning/finish-bound'
import type { JobLeft } from '@/shared/planning/jobs-left'
import { languageCover } from '@/shared/planning/language-cover'
import { nextLimitOf } from '@/shared/planning/next-limit'
import type { PlacedBatch } from '@/shared/planning/place-batch'
import type { PlacedJob } from '@/shared/planning/place-job'
import { batchTasks, briefings, loadTasks, makeTask } from '@/shared/planning/plan-tasks'
import { earliestFinishFrom } from '@/shared/planning/search-again'
import type { Timetable } from '@/shared/planning/time-in-order'
import type { SplitJob } from '@/shared/planning/split-demand'
import type { HandOver, StandOfDay } from '@/shared/planning/stand-of-day'
import { tailAgain } from '@/shared/planning/tail-again'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Writes the new plan out: what has begun as it really is, the rest as it was placed; batches and loads keep their codes. */
export function assembleReplan(before: DayPlan, stand: StandOfDay, timetable: Timetable, left: readonly JobLeft[]): DayPlan {
  const { problem, underWay } = stand
  const codesOf = new Map(left.map(({ job, loadCodes }) => [job, loadCodes]))
  const placedBatches = new Map(timetable.jobs.flatMap((job) => job.batches.map((placed) => [placed.batch.id, placed] as const)))
  const toCome = timetable.jobs.flatMap((job) => loadsOf(stand, job, codesOf.get(job.job) ?? []))
  const loads = [...stand.loads, ...toCome].sort((a, b) => a.loadAt - b.loadAt || a.code.localeCompare(b.code))
  const inPlan = stand.batches.flatMap((each) => {
    const placed = placedBatches.get(each.batch.id) ?? begunPlaced(each)
    return placed ? [{ each, placed }] : []
  })
  const batchWork = inPlan.flatMap(({ each, placed }) => workOf(before, each, placed))
  const loadWork = loads.flatMap((load) => handedOver(loadTasks(load, burnerOf(before, timetable, load.cannerId)), stand.handOvers))
  const tail = tailAgain(before, stand, timetable, inPlan)
  const tasks = [...briefsAgain(before, stand), ...heatings(before, stand, toCome), ...batchWork, ...loadWork, ...tail.tasks].sort(
    (a, b) => a.start - b.start || a.end - b.end || a.id.localeCompare(b.id),
  )
  const batches = inPlan
    .map(({ each, placed }) => plannedBatch(each.batch, placed, tasks))
    .sort((a, b) => a.cookStart - b.cookStart || a.code.localeCompare(b.code))
  const kept = new Set(batches.map(({ id }) => id))
  const bindingReason = bindingReasonOf(problem, timetable, loads)
  const cover = languageCover(problem, { tasks, batches, loads })
  const byMethod = METHODS.map((method) => cannerMinutesOfMethod(problem, asJobs(loads), method)).filter(({ needed }) => needed > 0)
  const total = (pick: 'needed' | 'available' | 'slack') => byMethod.reduce((sum, entry) => sum + entry[pick], 0)
  return {
    ...{ dayId: before.dayId, batches, loads, tasks },
    nightBefore: before.nightBefore.flatMap((step) => {
      const batchIds = step.batchIds.filter((id) => kept.has(id))
      return batchIds.length > 0 ? [{ ...step, batchIds }] : []
    }),
    finishAt: timetable.finishAt,
    cleanUpEndAt: tail.cleanUpEndAt,
    cannerMinutes: { needed: total('needed'), available: total('available'), slack: total('slack') },
    cannerMinutesByMethod: byMethod,
    lowerBound: Math.min(
      timetable.finishAt,
      earliestFinishFrom(
        { ...stand, underWay },
        timetable.jobs.map(({ job }) => job),
      ),
    ),
    bindingReason,
    nextLimit: nextLimitOf(problem, timetable, tasks, bindingReason),
    criticalLoadIds: criticalLoads(loads).map((load) => load.id),
    shortages: [...tail.shortages, ...jarShortages(problem, batches, loads), ...cover.gaps],
    languageHelp: cover.help,
    rule: timetable.rule,
  }
}

/** A begun batch that is in no job: filled and gone into canners, or with no canner to go to. */
function begunPlaced({ begun }: BegunBatch): PlacedBatch | null {
  if (!begun || begun.stage === 'prepared') return null
  if (begun.stage === 'filled') return begun.placed
  const { cookStart, cookEnd } = begun.placed
  const nothing = { start: cookStart, end: cookStart, peopleIds: [] }
  return {
    ...begun.placed,
    prep: begun.prep ?? nothing,
    wash: begun.wash ?? nothing,
    fillStart: cookEnd,
    fillEnd: cookEnd,
    tableIndex: 0,
    fill: { start: cookEnd, end: cookEnd, peopleIds: [] },
  }
}

function loadsOf({ problem, underWay }: StandOfDay, placed: PlacedJob, codes: readonly string[]): PlannedLoad[] {
  const { preparation, batches } = placed
  const { cycle, process, method, jarSize } = preparation
  return placed.loads.map((load, index) => {
    const { place, parts, jarBoilAt, loadAt, heatAt, boilAt, processEndAt, restEndAt, emptyAt, operatorId, loaderId, unloaderId } = load
    const inLoad = batches.filter(({ batch }) => parts.some((part) => part.batchId === batch.id))
    const loadBy = inLoad.map(({ batch, fillEnd }) => {
      const begun = underWay.batches.get(batch.id)
      return begun?.stage === 'filled' ? begun.loadBy : fillEnd + preparation.filledToLoadedLimitMinutes
    })
    const ventAt = method === 'pressure' ? heatAt + cycle.comeUpMinutes : null
    const code = codes[index] ?? `L${problem.dayId}`
    return {
      ...{ id: code, code, cannerId: place.canner.id, preparationId: preparation.id, method, jarSize, batchParts: parts },
      ...{ jarBoilAt, loadAt, heatAt, boilAt, processEndAt, restEndAt, emptyAt, operatorId, loaderId, unloaderId, ventAt },
      ventEndAt: ventAt === null ? null : ventAt + cycle.ventMinutes,
      ...{ processMinutes: process.minutes, psi: process.psi, source: process.source },
      latestLoadAt: Math.min(...loadBy),
    }
  })
}

function burnerOf(before: DayPlan, timetable: Timetable, cannerId: string): string | null {
  const place = timetable.context.setUp.places.find(({ canner }) => canner.id === cannerId)
  return place?.burner.id ?? before.tasks.find((task) => task.cannerId === cannerId && task.burnerId !== null)?.burnerId ?? null
}

/** The tasks of one batch, with the washing that has to be done again kept beside the new one. */
function workOf(before: DayPlan, { batch, preparation, begun }: BegunBatch, placed: PlacedBatch): PlannedTask[] {
  const isFilled = placed.fillEnd > placed.fillStart
  const tasks = batchTasks(preparation, placed).filter(({ kind }) => isFilled || kind !== 'fill')
  const washed = before.tasks.find(({ id }) => id === `wash/${batch.id}`)
  const isAgain = begun !== null && washed !== undefined && washed.start < placed.wash.start && tasks.some(({ id }) => id === washed.id)
  return isAgain && begun.stage !== 'filled' && begun.wash ? [...tasks, { ...washed, id: `${washed.id}/before` }] : tasks
}

/** A task that changes hands is two: each person's own part. */
function handedOver(tasks: readonly PlannedTask[], handOvers: readonly HandOver[]): PlannedTask[] {
  return tasks.flatMap((task) => {
    const over = handOvers.find(
      ({ loadId, from }) => loadId !== null && loadId === task.loadId && task.peopleIds.includes(from) && task.attention === 'watch',
    )
    if (!over || over.to === null || task.end <= over.at) return [task]
    const changed = { ...task, peopleIds: task.peopleIds.map((id) => (id === over.from ? (over.to ?? id) : id)) }
    if (task.start >= over.at) return [changed]
    return [
      { ...task, end: over.at },
      { ...changed, id: `${task.id}/over`, start: over.at },
    ]
  })
}

/** Briefings that were held, and those still to come, each with the people who are there. */
function briefsAgain(before: DayPlan, { problem, underWay }: StandOfDay): PlannedTask[] {
  const begun = before.tasks.filter(({ kind, start }) => kind === 'brief' && start < underWay.now)
  const toCome = briefings(problem).filter(({ start }) => start >= underWay.now)
  const isThere = (id: string, task: PlannedTask) =>
    problem.people.some(
      (person) => person.id === id && person.from <= task.start && (task.start < underWay.now || person.until >= task.end),
    )
  return [...begun, ...toCome]
    .map((task) => ({ ...task, peopleIds: task.peopleIds.filter((id) => isThere(id, task)) }))
    .filter(({ peopleIds }) => peopleIds.length > 0)
}

/** Water that heats already, and canners that have to be heated before their first load from now. */
function heatings(before: DayPlan, { underWay }: StandOfDay, toCome: readonly PlannedLoad[]): PlannedTask[] {
  const begun = before.tasks.filter(({ kind, start }) => kind === 'preheat' && start < underWay.now)
  const again = underWay.setUp.places.flatMap(({ canner, burner }) => {
    const loads = toCome.filter(({ cannerId }) => cannerId === canner.id)
    if (loads.length === 0 || canner.preheatMinutes === 0) return []
    const heat = (of: string, hotAt: KitchenTime) =>
      makeTask('preheat', of, hotAt - canner.preheatMinutes, hotAt, { cannerId: canner.id, burnerId: burner.id })
    const afterOutage = underWay.outages
      .filter(({ id, end }) => id === canner.id && Number.isFinite(end) && loads.some(({ jarBoilAt }) => jarBoilAt >= end))
      .map(({ end }) => heat(`${canner.id}/${end}`, end))
    const isHot = begun.some(({ cannerId }) => cannerId === canner.id) || afterOutage.length > 0
    return isHot ? afterOutage : [heat(canner.id, Math.min(...loads.map(({ jarBoilAt, loadAt }) => Math.min(jarBoilAt, loadAt))))]
  })
  return [...begun, ...again]
}

function plannedBatch(batch: PlannedBatch, placed: PlacedBatch, tasks: readonly PlannedTask[]): PlannedBatch {
  const { cookStart, cookEnd, fillStart, fillEnd, kettle } = placed
  const taskIds = tasks.filter((task) => task.batchId === batch.id).map((task) => task.id)
  return { ...batch, jars: placed.batch.jars, kettleId: kettle.id, cookStart, cookEnd, fillStart, fillEnd, taskIds }
}

const asJobs = (loads: readonly PlannedLoad[]): SplitJob[] =>
  loads.map(({ preparationId, batchParts }) => ({ preparationId, batches: [], loads: [{ parts: batchParts }] }))

/** Jars that reach a canner, against those wanted. */
function jarShortages(problem: DayProblem, batches: readonly PlannedBatch[], loads: readonly PlannedLoad[]): DayPlan['shortages'] {
  return problem.preparations.flatMap((preparation) => {
    const own = batches.filter((batch) => batch.preparationId === preparation.id).map(({ id }) => id)
    const parts = loads.flatMap((load) => load.batchParts).filter((part) => own.includes(part.batchId))
    const sum = (pick: 'low' | 'typical' | 'high') => parts.reduce((total, part) => total + part.jars[pick], 0)
    const planned = { low: sum('low'), typical: sum('typical'), high: sum('high') }
    return planned.typical < preparation.jarsWanted
      ? [{ kind: 'jars' as const, preparationId: preparation.id, wanted: preparation.jarsWanted, planned }]
      : []
  })
}
