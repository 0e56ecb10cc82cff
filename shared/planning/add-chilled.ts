import { calendarOfPlan } from '@/shared/planning/calendar-of-plan'
import { isPersonFree } from '@/shared/planning/day-calendar'
import type { DayPlan, NightBeforeStep, PlannedBatch, PlannedTask, PlanRefusal, PlanShortage } from '@/shared/planning/day-plan'
import type { DayProblem, KettleWork } from '@/shared/planning/day-problem'
import { languageCover } from '@/shared/planning/language-cover'
import { isUnowned, planNightBefore } from '@/shared/planning/night-before'
import { fillEnds, minutesFor, type PlacedBatch, placeBatch } from '@/shared/planning/place-batch'
import { pickTeam } from '@/shared/planning/pick-team'
import type { PlacingContext } from '@/shared/planning/placing-context'
import { batchTasks, makeTask } from '@/shared/planning/plan-tasks'
import { blockedRefusal } from '@/shared/planning/refuse-day'
import { jarsToPlan, splitIntoBatches } from '@/shared/planning/split-demand'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { KitchenTime } from '@/shared/time/kitchen-time'

type Refusal = Omit<PlanRefusal, 'waysOut'>

/** A chilled batch with its place in the day. */
export type PlacedChilled = { readonly work: KettleWork; readonly batch: PlacedBatch }

/** Fillings tried for each chilled batch before the day is called not fitting. */
const FILLINGS_TRIED = 2_000

/**
 * Adds the batches of products without a process to a plan: prep, cooking and filling around what stands in it, and no canner.
 *
 * Loads come first, because canner time is what an evening has least of. The day ends when the last canner is empty and the last jar is filled.
 *
 * @returns the plan as it is when there is nothing to chill; refused with the limit that most often stopped a batch
 */
export function addChilled(problem: DayProblem, plan: DayPlan): Result<DayPlan, Refusal> {
  const wanted = (problem.chilled ?? []).filter((work) => jarsToPlan(work) > 0)
  if (wanted.length === 0) return ok(plan)
  const tasks = plan.tasks.filter(({ kind }) => kind !== 'clean-up')
  const context = calendarOfPlan(problem, { ...plan, tasks })
  const placed: PlacedChilled[] = []
  for (const work of wanted) {
    const split = splitIntoBatches(problem, work)
    if (!split.ok) return refuse({ kind: 'does-not-fit', ...split.problem, at: null, loadCount: 0 })
    for (const batch of split.value) {
      const { peopleArriveAt, briefingMinutes, cannersEmptyBy } = problem.window
      const ends = fillEnds('ahead', peopleArriveAt + briefingMinutes, cannersEmptyBy)
      const fits = placeBatch({ ...context, effort: { left: FILLINGS_TRIED } }, batch, work, ends)
      if (!fits) return refuse(blockedRefusal(problem, { jobs: [] }, context.blocked))
      placed.push({ work, batch: fits })
    }
  }
  const nightBefore = stepsBefore(problem, placed)
  return nightBefore.ok ? ok(writeOut(problem, { ...plan, tasks }, context, placed, nightBefore.value)) : nightBefore
}

/** What must be soaked or salted at home; a step that no household can take stops the plan, as it does for every other product. */
function stepsBefore(problem: DayProblem, placed: readonly PlacedChilled[]): Result<NightBeforeStep[], Refusal> {
  const steps: NightBeforeStep[] = []
  for (const work of new Set(placed.map((each) => each.work))) {
    const own = placed.filter((each) => each.work === work).map(({ batch }) => batch)
    const needed = Math.min(...own.map((batch) => Math.min(batch.prep.start, batch.cookStart)))
    const ids = own.map(({ batch }) => batch.id)
    for (const step of planNightBefore(problem, work, ids, needed)) {
      if (!isUnowned(step)) steps.push(step)
      else {
        const limit = { kind: 'lead-step', preparationId: work.id, label: step.label } as const
        return refuse({ kind: 'does-not-fit', limit, needed: 1, available: 0, at: null, loadCount: 0 })
      }
    }
  }
  return ok(steps)
}

function writeOut(
  problem: DayProblem,
  plan: DayPlan,
  context: PlacingContext,
  placed: readonly PlacedChilled[],
  nightBefore: readonly NightBeforeStep[],
): DayPlan {
  const finishAt = Math.max(plan.finishAt, ...placed.map(({ batch }) => batch.fillEnd))
  const own = placed.flatMap(({ work, batch }) => batchTasks(work, batch))
  const labels = placed.map((each) => ({ ...each, task: labelTask(problem, context, each, finishAt) }))
  const added = [...own, ...labels.flatMap(({ task }) => task ?? []), ...cleanUpTask(problem, context, finishAt)]
  const tasks = inOrderOfTime([...plan.tasks, ...added])
  const batches = [...plan.batches, ...plannedBatches(placed, tasks)].sort(
    (a, b) => a.cookStart - b.cookStart || a.code.localeCompare(b.code),
  )
  const noHands: PlanShortage[] = labels
    .filter(({ task }) => task === null)
    .map(({ work, batch }) => {
      const minutes = minutesFor(work.label, batch.batch.multiple, 1)
      return { kind: 'hands', stage: 'label', batchId: batch.batch.id, minutes }
    })
  return {
    ...plan,
    ...{ batches, tasks, finishAt, cleanUpEndAt: finishAt + problem.window.cleanUpMinutes },
    nightBefore: [...plan.nightBefore, ...nightBefore],
    ...languagesAgain(problem, { ...plan, tasks, batches }, [...plan.shortages, ...noHands]),
  }
}

/** Who stands by whom where languages differ, once there is more work in the plan. */
export function languagesAgain(
  problem: DayProblem,
  plan: DayPlan,
  shortages: readonly PlanShortage[],
): Pick<DayPlan, 'languageHelp' | 'shortages'> {
  const { help, gaps } = languageCover(problem, plan)
  return { languageHelp: help, shortages: [...shortages.filter(({ kind }) => kind !== 'language'), ...gaps] }
}

/** Tasks as a plan lists them. */
export const inOrderOfTime = (tasks: readonly PlannedTask[]): PlannedTask[] =>
  [...tasks].sort((a, b) => a.start - b.start || a.end - b.end || a.id.localeCompare(b.id))

/** 'R1', 'R2', … by start of cooking within a product. */
function plannedBatches(placed: readonly PlacedChilled[], tasks: readonly PlannedTask[]): PlannedBatch[] {
  return placed.map((each) => {
    const { work, batch } = each
    const before = placed.filter((other) => other.work === work && isEarlier(other.batch, batch)).length
    const { cookStart, cookEnd, fillStart, fillEnd } = batch
    return {
      ...{ id: batch.batch.id, code: `${work.code}${before + 1}`, preparationId: work.id },
      ...{ multiple: batch.batch.multiple, jars: batch.batch.jars, kettleId: batch.kettle.id },
      ...{ cookStart, cookEnd, fillStart, fillEnd },
      taskIds: tasks.filter((task) => task.batchId === batch.batch.id).map((task) => task.id),
    }
  })
}

const isEarlier = (a: PlacedBatch, b: PlacedBatch): boolean =>
  a.cookStart < b.cookStart || (a.cookStart === b.cookStart && a.batch.id < b.batch.id)

/** Labels are made out any time of the day's work, once the batch is on rather than before. */
export function labelTask(
  problem: DayProblem,
  context: PlacingContext,
  { work, batch }: PlacedChilled,
  finishAt: KitchenTime,
): PlannedTask | null {
  const { id, multiple } = batch.batch
  const { label } = work
  if (label.workMinutes === 0) return makeTask('label', id, batch.cookStart, batch.cookStart, { batchId: id })
  const length = minutesFor(label, multiple, label.peopleMin)
  const earliest = problem.window.peopleArriveAt + problem.window.briefingMinutes
  const starts = [...minutesOf(batch.cookStart, finishAt - length), ...minutesOf(earliest, batch.cookStart - 1)]
  for (const start of starts) {
    const peopleIds = pickTeam(context, 'label', label, work, 'hands', start, start + length, label.peopleMin, id)
    if (peopleIds) return makeTask('label', id, start, start + length, { batchId: id, peopleIds })
  }
  return null
}

const minutesOf = (from: KitchenTime, to: KitchenTime): KitchenTime[] =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, index) => from + index)

/** One clean-up from the finish on, by whoever is still there and has free hands; none where the day has none. */
export function cleanUpTask(problem: DayProblem, { setUp, calendar }: PlacingContext, finishAt: KitchenTime): PlannedTask[] {
  const end = finishAt + problem.window.cleanUpMinutes
  if (end === finishAt) return []
  const staying = setUp.hours.filter(
    (hours) => !hours.person.limits.includes('seated') && isPersonFree(calendar, hours, 'hands', finishAt, end),
  )
  return [makeTask('clean-up', 'day', finishAt, end, { peopleIds: staying.map(({ person }) => person.id) })]
}
