import type { BegunBatch } from '@/shared/planning/begun-batches'
import { isPersonFree, type WorkingHours } from '@/shared/planning/day-calendar'
import type { DayPlan, PlannedTask, PlanShortage } from '@/shared/planning/day-plan'
import { minutesFor, type PlacedBatch } from '@/shared/planning/place-batch'
import { pickTeam } from '@/shared/planning/pick-team'
import { makeTask } from '@/shared/planning/plan-tasks'
import type { Timetable } from '@/shared/planning/time-in-order'
import type { StandOfDay } from '@/shared/planning/stand-of-day'
import { breakTasks } from '@/shared/planning/tail-work'
import type { KitchenTime } from '@/shared/time/kitchen-time'

type InPlan = { readonly each: BegunBatch; readonly placed: PlacedBatch }

/** Labels that are not begun, the clean-up, and breaks that were not had, once everything else has its people; what finds none is a shortage. */
export function tailAgain(before: DayPlan, stand: StandOfDay, timetable: Timetable, inPlan: readonly InPlan[]) {
  const { problem, underWay } = stand
  const tasks: PlannedTask[] = []
  const shortages: PlanShortage[] = []
  for (const { each, placed } of inPlan) {
    const planned = before.tasks.find(({ id }) => id === `label/${each.batch.id}`)
    if (planned && planned.start < underWay.now) {
      tasks.push(planned)
      continue
    }
    const label = labelAgain(stand, timetable, each, placed, planned ?? null)
    if (label) tasks.push(label)
    else
      shortages.push({
        kind: 'hands',
        stage: 'label',
        batchId: each.batch.id,
        minutes: minutesFor(each.preparation.label, each.batch.multiple, 1),
      })
  }
  const begun = before.tasks.find(({ kind, start }) => kind === 'clean-up' && start < underWay.now)
  const start = Math.max(timetable.finishAt, Math.min(underWay.now, begun?.start ?? underWay.now))
  const end = start + problem.window.cleanUpMinutes
  if (end > start) {
    const { context } = timetable
    const isFree = (hours: WorkingHours) => isPersonFree(context.calendar, hours, 'hands', Math.max(start, underWay.now), end)
    const staying = context.setUp.hours.filter((hours) => !hours.person.limits.includes('seated') && isFree(hours))
    tasks.push(makeTask('clean-up', 'day', start, end, { peopleIds: staying.map(({ person }) => person.id) }))
    if (staying.length === 0) shortages.push({ kind: 'hands', stage: 'clean-up', batchId: null, minutes: problem.window.cleanUpMinutes })
  }
  const had = before.tasks.filter(({ kind, start, peopleIds }) => kind === 'break' && start < underWay.now && isHere(stand, peopleIds))
  const breaks = breakTasks(timetable)
  tasks.push(...had, ...breaks.tasks.filter(({ id }) => !had.some((each) => each.id === id)))
  shortages.push(
    ...breaks.shortages.filter((gap) => gap.kind !== 'break' || !had.some(({ peopleIds }) => peopleIds.includes(gap.personId))),
  )
  return { tasks, shortages, cleanUpEndAt: end }
}

const isHere = ({ problem, underWay }: StandOfDay, peopleIds: readonly string[]): boolean =>
  problem.people.some(({ id, from, until }) => peopleIds.includes(id) && from < underWay.now && until > from)

/** In the planned minutes where they still fit, else from now on as soon as somebody is free. */
function labelAgain(
  { underWay }: StandOfDay,
  { context, finishAt }: Timetable,
  { batch, preparation }: BegunBatch,
  placed: PlacedBatch,
  planned: PlannedTask | null,
): PlannedTask | null {
  const work = preparation.label
  const batchId = batch.id
  if (work.workMinutes === 0) return makeTask('label', batchId, placed.cookStart, placed.cookStart, { batchId })
  const length = minutesFor(work, batch.multiple, work.peopleMin)
  const at = (start: KitchenTime) => {
    const peopleIds = pickTeam(context, 'label', work, preparation, 'hands', start, start + length, work.peopleMin, batchId)
    return peopleIds && makeTask('label', batchId, start, start + length, { batchId, peopleIds })
  }
  if (planned && planned.end <= finishAt) {
    const kept = at(planned.start)
    if (kept) return kept
  }
  const from = Math.max(underWay.now, Math.min(placed.cookStart, finishAt - length))
  for (let start = from; start <= finishAt - length; start++) {
    const found = at(start)
    if (found) return found
  }
  for (let start = underWay.now; start < from; start++) {
    const found = at(start)
    if (found) return found
  }
  return null
}
