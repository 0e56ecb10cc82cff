import { freeIn } from '@/shared/planning/breaks'
import { isPersonFree, takePerson } from '@/shared/planning/day-calendar'
import type { PlannedTask, PlanShortage } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { minutesFor, type PlacedBatch } from '@/shared/planning/place-batch'
import { pickTeam } from '@/shared/planning/pick-team'
import type { PlacedJob } from '@/shared/planning/place-job'
import { earliestStart } from '@/shared/planning/placing-context'
import type { Timetable } from '@/shared/planning/time-in-order'
import { makeTask } from '@/shared/planning/plan-tasks'
import type { KitchenTime } from '@/shared/time/kitchen-time'

export type TailWork = {
  readonly tasks: readonly PlannedTask[]
  readonly shortages: readonly PlanShortage[]
  readonly cleanUpEndAt: KitchenTime
}

/** Work that waits for free hands: labels while the batch runs, clean-up once the last canner is empty; and the breaks. What finds none is a shortage. */
export function tailWork(problem: DayProblem, timetable: Timetable): TailWork {
  const shortages: PlanShortage[] = []
  const tasks: PlannedTask[] = []
  const labelling = timetable.jobs.flatMap((job) => job.batches.map((batch) => ({ job, batch })))
  for (const { job, batch } of labelling.sort((a, b) => a.batch.cookStart - b.batch.cookStart)) {
    const task = labelTask(problem, timetable, job, batch)
    if (task) tasks.push(task)
    else
      shortages.push({
        kind: 'hands',
        stage: 'label',
        batchId: batch.batch.id,
        minutes: minutesFor(job.preparation.label, batch.batch.multiple, 1),
      })
  }
  const cleanUp = cleanUpTask(problem, timetable)
  if (cleanUp) tasks.push(cleanUp)
  if (cleanUp && cleanUp.peopleIds.length === 0)
    shortages.push({ kind: 'hands', stage: 'clean-up', batchId: null, minutes: problem.window.cleanUpMinutes })
  const breaks = breakTasks(timetable)
  return {
    tasks: [...tasks, ...breaks.tasks],
    shortages: [...shortages, ...breaks.shortages, ...jarShortages(problem, timetable)],
    cleanUpEndAt: timetable.finishAt + problem.window.cleanUpMinutes,
  }
}

/** Each break at the free time nearest the middle of its window; placing work has left one wherever it could. */
export function breakTasks({ context }: Timetable): { tasks: PlannedTask[]; shortages: PlanShortage[] } {
  const tasks: PlannedTask[] = []
  const shortages: PlanShortage[] = []
  for (const { person, rest, from, until } of context.setUp.hours) {
    for (const [index, window] of (rest?.windows ?? []).entries()) {
      const inside = { ...window, from: Math.max(window.from, from, earliestStart(context)), to: Math.min(window.to, until) }
      // While the day runs: a break whose time is over was had, or is not made good by a plan.
      if (context.underWay !== null && inside.to - inside.from < window.minutes) continue
      const start = freeIn(inside, context.calendar.people.get(person.id) ?? [])
      if (start === null) shortages.push({ kind: 'break', personId: person.id, minutes: window.minutes })
      else tasks.push(makeTask('break', `${person.id}/${index + 1}`, start, start + window.minutes, { peopleIds: [person.id] }))
    }
  }
  return { tasks, shortages }
}

function labelTask(
  problem: DayProblem,
  timetable: Timetable,
  { preparation }: PlacedJob,
  { batch, cookStart }: PlacedBatch,
): PlannedTask | null {
  const work = preparation.label
  if (work.workMinutes === 0) return makeTask('label', batch.id, cookStart, cookStart, { batchId: batch.id })
  const length = minutesFor(work, batch.multiple, work.peopleMin)
  const earliest = problem.window.peopleArriveAt + problem.window.briefingMinutes
  for (const [from, to] of [
    [cookStart, timetable.finishAt - length],
    [earliest, cookStart - 1],
  ] as const) {
    for (let start = from; start <= to; start++) {
      const peopleIds = pickTeam(timetable.context, 'label', work, preparation, 'hands', start, start + length, work.peopleMin)
      if (peopleIds) return makeTask('label', batch.id, start, start + length, { batchId: batch.id, peopleIds })
    }
  }
  return null
}

function cleanUpTask(problem: DayProblem, { context, finishAt }: Timetable): PlannedTask | null {
  const end = finishAt + problem.window.cleanUpMinutes
  if (end === finishAt) return null
  const staying = context.setUp.hours.filter(
    (hours) => !hours.person.limits.includes('seated') && isPersonFree(context.calendar, hours, 'hands', finishAt, end),
  )
  for (const { person } of staying) takePerson(context.calendar, person.id, 'hands', finishAt, end)
  return makeTask('clean-up', 'day', finishAt, end, { peopleIds: staying.map(({ person }) => person.id) })
}

function jarShortages(problem: DayProblem, { jobs }: Timetable): PlanShortage[] {
  return problem.preparations.flatMap((preparation) => {
    const batches = jobs.filter((job) => job.preparation.id === preparation.id).flatMap((job) => job.batches.map(({ batch }) => batch))
    const sum = (part: 'low' | 'typical' | 'high') => batches.reduce((total, batch) => total + batch.jars[part], 0)
    const planned = { low: sum('low'), typical: sum('typical'), high: sum('high') }
    return planned.typical < preparation.jarsWanted
      ? [{ kind: 'jars' as const, preparationId: preparation.id, wanted: preparation.jarsWanted, planned }]
      : []
  })
}
