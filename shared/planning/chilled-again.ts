import { cleanUpTask, inOrderOfTime, labelTask, languagesAgain } from '@/shared/planning/add-chilled'
import { areThingsFree, calendarOfPlan, occupationOf, thingsOf } from '@/shared/planning/calendar-of-plan'
import { isPersonFree, takeEquipment, takePerson } from '@/shared/planning/day-calendar'
import type { DayPlan, PlannedBatch, PlannedTask } from '@/shared/planning/day-plan'
import type { DayProblem, KettleWork } from '@/shared/planning/day-problem'
import type { DaySoFar } from '@/shared/planning/day-so-far'
import { fillEnds, minutesFor, placeBatch, WASHED_JARS_STAY_HOT_MINUTES } from '@/shared/planning/place-batch'
import type { PlacingContext } from '@/shared/planning/placing-context'
import { batchTasks } from '@/shared/planning/plan-tasks'
import type { TakenPerson, TakenThing } from '@/shared/planning/under-way'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Fillings tried for each batch that has to move. */
const FILLINGS_TRIED = 2_000

/** A new plan with its chilled batches, and those for which no time is left. */
export type ChilledAgain = { readonly plan: DayPlan; readonly noTime: readonly PlannedBatch[] }

/**
 * Takes the chilled batches of the plan that stood over into a new plan of the running day.
 *
 * What has begun stays. What is to come stays where kettle, burner, table and people are still free; otherwise it is booked anew from now on,
 * around the loads, or left out and named.
 *
 * @param gone - batches that were given up, or that have no produce
 */
export function chilledAgain(
  problem: DayProblem,
  before: DayPlan,
  plan: DayPlan,
  soFar: DaySoFar,
  gone: ReadonlySet<string>,
): ChilledAgain {
  const works = new Map((problem.chilled ?? []).map((work) => [work.id, work]))
  const own = before.batches.filter(({ id, preparationId }) => works.has(preparationId) && !gone.has(id))
  if (own.length === 0) return { plan, noTime: [] }
  const stateOf = new Map(soFar.batches.map(({ batchId, state }) => [batchId, state]))
  const isBegun = ({ id }: PlannedBatch) => (stateOf.get(id) ?? 'planned') !== 'planned'
  const tasksOf = ({ id }: PlannedBatch) => before.tasks.filter(({ batchId }) => batchId === id)
  const rest = plan.tasks.filter(({ kind }) => kind !== 'clean-up')
  const added: PlannedTask[] = own.filter(isBegun).flatMap(tasksOf)
  const batches: PlannedBatch[] = own.filter(isBegun)
  const noTime: PlannedBatch[] = []
  const context = calendarOfPlan(problem, { ...plan, tasks: [...rest, ...added] })
  for (const batch of own.filter((each) => !isBegun(each))) {
    const work = works.get(batch.preparationId)
    const again = work && (stay(context, batch, tasksOf(batch), soFar.now) ?? move(context, batch, work, soFar.now))
    if (!again) noTime.push(batch)
    else {
      added.push(...again.tasks)
      batches.push(again.batch)
    }
  }
  const finishAt = Math.max(plan.finishAt, ...batches.map(({ fillEnd }) => fillEnd))
  const tasks = inOrderOfTime([...rest, ...added, ...cleanUpTask(problem, context, finishAt)])
  const kept = new Set(batches.map(({ id }) => id))
  const all = [...plan.batches.filter(({ id }) => !kept.has(id)), ...batches]
  return {
    plan: {
      ...plan,
      ...languagesAgain(problem, { ...plan, tasks, batches: all }, plan.shortages),
      ...{ tasks, finishAt, cleanUpEndAt: finishAt + problem.window.cleanUpMinutes },
      batches: all.sort((a, b) => a.cookStart - b.cookStart || a.code.localeCompare(b.code)),
      nightBefore: [...plan.nightBefore, ...before.nightBefore.filter((step) => step.batchIds.some((id) => kept.has(id)))],
    },
    noTime,
  }
}

/** Equipment and people that the chilled batches of the plan that stands hold from now on. */
export function chilledHolds(
  problem: DayProblem,
  before: DayPlan,
  { now }: DaySoFar,
  gone: ReadonlySet<string>,
): { readonly things: readonly TakenThing[]; readonly people: readonly TakenPerson[] } {
  const works = new Set((problem.chilled ?? []).map(({ id }) => id))
  const own = new Set(before.batches.filter(({ id, preparationId }) => works.has(preparationId) && !gone.has(id)).map(({ id }) => id))
  const tasks = before.tasks.filter(({ batchId, end }) => batchId !== null && own.has(batchId) && end > now)
  return {
    things: tasks.flatMap((task) => thingsOf(problem, task)),
    people: tasks.flatMap((task) => {
      const occupation = occupationOf(task)
      const span = { start: Math.max(now, task.start), end: task.end }
      return occupation ? task.peopleIds.map((personId) => ({ ...span, personId, occupation, minding: null })) : []
    }),
  }
}

type Again = { readonly batch: PlannedBatch; readonly tasks: readonly PlannedTask[] }

/** The batch as it was planned, when it has not been missed and nothing of it was given to others. */
function stay(context: PlacingContext, batch: PlannedBatch, tasks: readonly PlannedTask[], now: KitchenTime): Again | null {
  if (batch.cookStart < now) return null
  const { problem, calendar, setUp } = context
  const toCome = tasks.filter(({ end }) => end > now)
  const isFree = (task: PlannedTask) => {
    const occupation = occupationOf(task)
    const hours = task.peopleIds.map((id) => setUp.hours.find(({ person }) => person.id === id))
    return (
      areThingsFree(calendar, problem, task) &&
      hours.every((each) => each && (!occupation || isPersonFree(calendar, each, occupation, Math.max(now, task.start), task.end)))
    )
  }
  if (!toCome.every(isFree)) return null
  for (const task of toCome) {
    for (const { id, start, end } of thingsOf(problem, task)) takeEquipment(calendar, id, start, end)
    const occupation = occupationOf(task)
    if (occupation) for (const id of task.peopleIds) takePerson(calendar, id, occupation, task.start, task.end)
  }
  return { batch, tasks }
}

/** The batch at the first minute from now on that fits around everything else; null when none does. */
function move(context: PlacingContext, batch: PlannedBatch, work: KettleWork, now: KitchenTime): Again | null {
  const { window } = context.problem
  const soonest = now + WASHED_JARS_STAY_HOT_MINUTES + work.kettleMinutes + minutesFor(work.fill, batch.multiple, work.fill.peopleMin)
  const problem = { ...context.problem, window: { ...window, peopleArriveAt: Math.max(now, window.peopleArriveAt) } }
  const { id, preparationId, multiple, jars } = batch
  const fits = placeBatch(
    { ...context, problem, effort: { left: FILLINGS_TRIED } },
    { id, preparationId, multiple, jars },
    work,
    fillEnds('ahead', soonest, window.cannersEmptyBy),
  )
  if (!fits) return null
  const label = labelTask(context.problem, context, { work, batch: fits }, window.cannersEmptyBy)
  const tasks = [...batchTasks(work, fits), ...(label && label.start >= now ? [label] : [])]
  const { cookStart, cookEnd, fillStart, fillEnd } = fits
  const times = { cookStart, cookEnd, fillStart, fillEnd }
  return { batch: { ...batch, kettleId: fits.kettle.id, ...times, taskIds: tasks.map((task) => task.id) }, tasks }
}
