import type { WallAct } from '@/app/_drawings/wall-acts'
import type { DayPlan, TaskActual } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { type DueTask, nowNextAfter } from '@/shared/planning/now-next-after'
import type { WallChart } from '@/shared/planning/wall-chart'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'
import { sayTask, taskStation } from '@/shared/wording/say-task'
import type { Planned } from '../plan-drawing'

/** "Finish 21:31, 4 min to spare." */
export function saysWall({ finishAt, spareMinutes }: WallChart): string {
  const spare = spareMinutes >= 0 ? `${spareMinutes} min to spare` : `${-spareMinutes} min over`
  return `Finish ${formatClock(finishAt)}, ${spare}`
}

/** "6 min late. Canner 2 decides the finish: keep it moving. D contains mustard: check who works here." */
export function wallLead(problem: DayProblem, plan: DayPlan, { lateMinutes, criticalChain }: WallChart): string {
  const late = lateMinutes > 0 ? `${lateMinutes} min late. ` : ''
  const canner = problem.canners.find(({ id }) => id === criticalChain.at(-1)?.rowId)?.label
  const decides = canner ? `${canner} decides the finish: keep it moving. ` : ''
  const contains = problem.preparations
    .filter(({ id, allergens }) => allergens.length > 0 && plan.batches.some((batch) => batch.preparationId === id))
    .map(({ code, allergens }) => `${code} contains ${allergens.join(', ')}: check who works here. `)
  return `${late}${decides}${contains.join('')}`.trim()
}

/** What is on, what is next, what is after. Before the day, its first three things. */
export function wallActs(planned: Planned, actuals: readonly TaskActual[], now: KitchenTime | null): WallAct[] {
  const { problem, plan } = planned
  const from = now ?? Math.min(...plan.tasks.filter(({ peopleIds }) => peopleIds.length > 0).map(({ start }) => start))
  const { now: running, next, after } = nowNextAfter(plan, actuals, null, from)
  const due = [running, next, after].filter((task) => task !== null)
  return due.map((task, place) => wallAct(problem, plan, task, place === due.length - 1 && place > 0))
}

function wallAct(problem: DayProblem, plan: DayPlan, { task, start }: DueTask, isLast: boolean): WallAct {
  const people = problem.people.filter(({ id }) => task.peopleIds.includes(id))
  const who = people.length > 3 ? 'Everybody' : people.map(({ name }) => name).join(', ')
  const station = taskStation(problem, task)
  const speaksSpanish = problem.people.some(({ languages }) => languages.includes('es'))
  return {
    id: task.id,
    lid: isLast ? 'flat' : 'domed',
    at: formatClock(start),
    who: `${who}, ${station.charAt(0).toLowerCase()}${station.slice(1)}`,
    text: sayTask(problem, plan, task),
    ...(speaksSpanish ? { second: { lang: 'es', text: sayTask(problem, plan, task, 'es') } } : {}),
  }
}
