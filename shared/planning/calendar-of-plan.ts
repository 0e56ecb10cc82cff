import { emptyCalendar, type Occupation, takeEquipment, takePerson } from '@/shared/planning/day-calendar'
import type { DayPlan, PlannedTask } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { type CannerPlace, setUpKitchen } from '@/shared/planning/kitchen-set-up'
import { tableName } from '@/shared/planning/place-batch'
import { nothingBlocked, type PlacingContext } from '@/shared/planning/placing-context'

/** Everything that a plan holds, as a placement sees it: more work may be booked around it and nothing of it moves. */
export function calendarOfPlan(problem: DayProblem, plan: DayPlan): PlacingContext {
  const places = placesOf(problem, plan)
  const heated = new Set(places.map(({ burner }) => burner.id))
  const { hours, kettleBurners } = setUpKitchen(problem, [])
  const calendar = emptyCalendar()
  const washOf = new Map(problem.kettles.map(({ id, washMinutes }) => [id, washMinutes]))
  for (const task of plan.tasks) {
    const { kind, start, end, kettleId, burnerId, tableIndex, loadId } = task
    if (kettleId) takeEquipment(calendar, kettleId, start, end + (kind === 'fill' ? (washOf.get(kettleId) ?? 0) : 0))
    if (burnerId && !heated.has(burnerId)) takeEquipment(calendar, burnerId, start, end)
    if (tableIndex !== null) takeEquipment(calendar, tableName(tableIndex), start, end)
    const occupation = occupationOf(task)
    // Whoever minds a load is taken with the load, below.
    if (occupation && !(loadId && occupation === 'canner-watch'))
      for (const id of task.peopleIds) takePerson(calendar, id, occupation, start, end)
  }
  for (const load of plan.loads) {
    const minding = problem.minding.find(({ method }) => method === load.method) ?? null
    takePerson(calendar, load.operatorId, 'canner-watch', Math.min(load.jarBoilAt, load.loadAt), load.emptyAt, minding)
  }
  return {
    problem,
    setUp: { places, hours, kettleBurners: kettleBurners.filter(({ id }) => !heated.has(id)) },
    calendar,
    ...{ operatorRule: 'keep-a-canner', fillRule: 'ahead', fillRules: new Map(), lastOperator: new Map(), able: new Map() },
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

function occupationOf({ kind, attention, loadId }: PlannedTask): Occupation | null {
  if (kind === 'brief') return null // Working hours begin after it.
  if (kind === 'load' || kind === 'unload') return 'canner-hands'
  if (loadId !== null) return 'canner-watch'
  return attention === 'watch' ? 'kettle-watch' : 'hands'
}
