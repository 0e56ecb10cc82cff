import { type DayCalendar, isEquipmentFree } from '@/shared/planning/day-calendar'
import type { DayPlan, PlannedTask } from '@/shared/planning/day-plan'
import type { DayProblem, KettleWork } from '@/shared/planning/day-problem'
import { kettleWorkOf, kettleWorks } from '@/shared/planning/kettle-works'
import type { TakenThing } from '@/shared/planning/under-way'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Name of a fill table in calendars; `index` counts from 0. */
export const tableName = (index: number) => `fill-table-${index}`

type Filled = Pick<KettleWork, 'allergens'>

/** Minutes of washing that this day asks for between food with an allergen and food without it; 0 where it asks for none. */
export const tableWashMinutes = ({ tableWashMinutes: minutes = 0 }: Pick<DayProblem, 'tableWashMinutes'>): number => minutes

/** Allergens that `before` leaves on a table and `after` is free of: they are washed off in between. None where the day asks for no washing. */
export const washedOff = (problem: DayProblem, before: Filled, after: Filled): readonly string[] =>
  tableWashMinutes(problem) === 0 ? [] : before.allergens.filter((allergen) => !after.allergens.includes(allergen))

/**
 * What a filling holds: its table, what it leaves there until it is washed off, and what may not be there while it lasts.
 *
 * Traces and bans are names of their own, so that they clash with one another and never with themselves.
 */
export function tableHolds(
  problem: DayProblem,
  work: Filled | undefined,
  index: number,
  start: KitchenTime,
  end: KitchenTime,
): TakenThing[] {
  const id = tableName(index)
  const wash = tableWashMinutes(problem)
  if (wash === 0 || !work) return [{ id, start, end }]
  return [
    { id, start, end },
    ...work.allergens.map((allergen) => ({ id: trace(id, allergen), start, end: end + wash })),
    ...freeOf(problem, work).map((allergen) => ({ id: ban(id, allergen), start, end })),
  ]
}

/** True when a table is free for [start, end), washed of what this product must not meet, with time left to wash before what must not meet it. */
export function isTableReady(
  calendar: DayCalendar,
  problem: DayProblem,
  work: Filled | undefined,
  index: number,
  start: KitchenTime,
  end: KitchenTime,
): boolean {
  const id = tableName(index)
  if (!isEquipmentFree(calendar, id, start, end)) return false
  const wash = tableWashMinutes(problem)
  if (wash === 0 || !work) return true
  return (
    work.allergens.every((allergen) => isEquipmentFree(calendar, ban(id, allergen), start, end + wash)) &&
    freeOf(problem, work).every((allergen) => isEquipmentFree(calendar, trace(id, allergen), start, end))
  )
}

/** What is washed off the table before this filling begins: allergens of the filling before it there. Empty for all other tasks. */
export function washedOffBefore(problem: DayProblem, plan: DayPlan, task: PlannedTask): readonly string[] {
  if (task.kind !== 'fill' || tableWashMinutes(problem) === 0) return []
  const [before] = plan.tasks
    .filter((other) => other.kind === 'fill' && other.tableIndex === task.tableIndex && other.end <= task.start)
    .sort((a, b) => b.end - a.end)
  const [last, own] = [before && workOfTask(problem, before), workOfTask(problem, task)]
  return last && own ? washedOff(problem, last, own) : []
}

/** The product that a task of a kettle batch is for; ids of batches are the product's with a number. */
export const workOfTask = (problem: DayProblem, { batchId }: Pick<PlannedTask, 'batchId'>): KettleWork | undefined =>
  batchId === null ? undefined : kettleWorkOf(problem, batchId.slice(0, batchId.lastIndexOf('/')))

const trace = (table: string, allergen: string) => `${table} with ${allergen}`
const ban = (table: string, allergen: string) => `${table} without ${allergen}`

/** Allergens of the day that this product has none of. */
const freeOf = (problem: DayProblem, { allergens }: Filled): string[] =>
  [...new Set(kettleWorks(problem).flatMap((work) => work.allergens))].filter((allergen) => !allergens.includes(allergen))
