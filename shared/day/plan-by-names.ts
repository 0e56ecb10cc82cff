import type { DayPlan, PlanRefusal } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { planDay } from '@/shared/planning/plan-day'
import { type PlainRefusal, planOnce } from '@/shared/planning/plan-once'
import type { SearchWatch } from '@/shared/planning/search-watch'
import type { Result } from '@/shared/result/result'

/**
 * Plans a day so that ties go by names and labels, not by ids: ids are drawn by lot when a kitchen is entered, and the same day must get the
 * same timetable on every machine.
 *
 * The answer is in the day's own ids.
 */
export const planDayByNames = (problem: DayProblem): Result<DayPlan, PlanRefusal> => byNames(problem, (named) => planDay(named))

/** The same without looking for ways out. */
export const planOnceByNames = (problem: DayProblem): Result<DayPlan, PlainRefusal> => byNames(problem, (named) => planOnce(named))

/** The same as a search that may go on for minutes: every better plan is told in the day's own ids. */
export const searchByNames = (problem: DayProblem, fillingsPerJob: number, watch: SearchWatch): Result<DayPlan, PlainRefusal> =>
  byNames(problem, (named, inOwnIds) => planOnce(named, fillingsPerJob, { ...watch, better: (found) => watch.better(inOwnIds(found)) }))

function byNames<Answer>(problem: DayProblem, plan: (problem: DayProblem, inOwnIds: <Value>(value: Value) => Value) => Answer): Answer {
  const aliases = aliasesOf(problem)
  const ids = new Map([...aliases].map(([id, alias]) => [alias, id]))
  const named = mapTexts(problem, (text) => aliases.get(text) ?? text)
  const inOwnIds = <Value>(value: Value) =>
    mapTexts(value, (text) => (text.includes(MARK) ? text.replace(ALIAS, (alias) => ids.get(alias) ?? alias) : text))
  return inOwnIds(plan(named, inOwnIds))
}

/** No id, label or code of ours holds this sign. */
const MARK = '\u2063'
const ALIAS = new RegExp(`${MARK}[a-z]\\d{4}`, 'g')

interface Named {
  readonly id: string
  readonly name?: string
  readonly label?: string
  readonly code?: string
}

function aliasesOf({ preparations, chilled = [], kettles, canners, burners, people, households }: DayProblem): Map<string, string> {
  const lists: readonly (readonly [letter: string, list: readonly Named[]])[] = [
    ['a', [...preparations, ...chilled].map(({ id, code }) => ({ id, code }))],
    ['b', kettles],
    ['c', canners],
    ['d', burners],
    ['e', people],
    ['f', households],
  ]
  return new Map(
    lists.flatMap(([letter, list]) =>
      [...list].sort(inNameOrder).map(({ id }, index) => [id, `${MARK}${letter}${String(index).padStart(4, '0')}`] as const),
    ),
  )
}

const nameOf = ({ code, label, name }: Named): string => code ?? label ?? name ?? ''

const inNameOrder = (a: Named, b: Named): number =>
  nameOf(a).localeCompare(nameOf(b), 'en', { numeric: true }) || a.id.localeCompare(b.id, 'en')

/** A copy with every text changed; numbers, lists and shapes stay. */
function mapTexts<Value>(value: Value, change: (text: string) => string): Value {
  if (typeof value === 'string') return change(value) as Value
  if (Array.isArray(value)) return value.map((item) => mapTexts(item, change)) as Value
  if (value === null || typeof value !== 'object') return value
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, mapTexts(item, change)])) as Value
}
