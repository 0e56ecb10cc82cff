import {
  type DayCalendar,
  emptyCalendar,
  isEquipmentFree,
  type Occupation,
  takeEquipment,
  takePerson,
} from '@/shared/planning/day-calendar'
import type { DayPlan, PlannedTask } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { type CannerPlace, setUpKitchen } from '@/shared/planning/kitchen-set-up'
import { nothingBlocked, type PlacingContext } from '@/shared/planning/placing-context'
import { isTableReady, tableHolds, workOfTask } from '@/shared/planning/table-wash'
import type { TakenThing } from '@/shared/planning/under-way'

/** Everything that a plan holds, as a placement sees it: more work may be booked around it and nothing of it moves. */
export function calendarOfPlan(problem: DayProblem, plan: DayPlan): PlacingContext {
  const places = placesOf(problem, plan)
  const heated = new Set(places.map(({ burner }) => burner.id))
  const { hours, kettleBurners } = setUpKitchen(problem, [])
  const calendar = emptyCalendar()
  for (const task of plan.tasks) {
    for (const { id, start, end } of thingsOf(problem, task)) if (!heated.has(id)) takeEquipment(calendar, id, start, end)
    const occupation = occupationOf(task)
    // Whoever minds a load is taken with the load, below.
    if (occupation && !(task.loadId && occupation === 'canner-watch'))
      for (const id of task.peopleIds) takePerson(calendar, id, occupation, task.start, task.end)
  }
  for (const load of plan.loads) {
    const minding = problem.minding.find(({ method }) => method === load.method) ?? null
    takePerson(calendar, load.operatorId, 'canner-watch', Math.min(load.jarBoilAt, load.loadAt), load.emptyAt, minding)
  }
  return {
    problem,
    setUp: { places, hours, kettleBurners: kettleBurners.filter(({ id }) => !heated.has(id)) },
    calendar,
    ...{
      operatorRule: 'keep-a-canner',
      fillRule: 'ahead',
      fillRules: new Map(),
      lastOperator: new Map(),
      able: new Map(),
      scarcity: new Map(),
      crowd: null,
    },
    ...{ blocked: nothingBlocked(), effort: { left: Number.POSITIVE_INFINITY }, reserved: new Map(), underWay: null, keepsMinutes: false },
  }
}

/** Canners that are used, each on the burner that it keeps all day. */
function placesOf(problem: DayProblem, plan: DayPlan): CannerPlace[] {
  return problem.canners.flatMap((canner) => {
    const burnerId = plan.tasks.find((task) => task.cannerId === canner.id && task.burnerId)?.burnerId
    const burner = problem.burners.find(({ id }) => id === burnerId)
    return burner ? [{ canner, burner, readyAt: problem.window.firstLoadAt }] : []
  })
}

/** Kettle with its washing up, burner and table that a task holds. */
export function thingsOf(problem: DayProblem, task: PlannedTask): TakenThing[] {
  const { start, end, tableIndex } = task
  return [...onHeat(problem, task), ...(tableIndex === null ? [] : tableHolds(problem, workOfTask(problem, task), tableIndex, start, end))]
}

/** True when nothing else holds what this task needs. */
export function areThingsFree(calendar: DayCalendar, problem: DayProblem, task: PlannedTask): boolean {
  const { start, end, tableIndex } = task
  return (
    onHeat(problem, task).every((thing) => isEquipmentFree(calendar, thing.id, thing.start, thing.end)) &&
    (tableIndex === null || isTableReady(calendar, problem, workOfTask(problem, task), tableIndex, start, end))
  )
}

function onHeat({ kettles }: DayProblem, { kind, start, end, kettleId, burnerId }: PlannedTask): TakenThing[] {
  const wash = kind === 'fill' ? (kettles.find(({ id }) => id === kettleId)?.washMinutes ?? 0) : 0
  return [
    ...(kettleId === null ? [] : [{ id: kettleId, start, end: end + wash }]),
    ...(burnerId === null ? [] : [{ id: burnerId, start, end }]),
  ]
}

/** How a task occupies its people; null when it takes none of their working hours. */
export function occupationOf({ kind, attention, loadId }: PlannedTask): Occupation | null {
  if (kind === 'brief') return null // Working hours begin after it.
  if (kind === 'load' || kind === 'unload') return 'canner-hands'
  if (loadId !== null) return 'canner-watch'
  return attention === 'watch' ? 'kettle-watch' : 'hands'
}
