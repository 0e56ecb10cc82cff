import type { WallAct } from '@/app/_drawings/wall-acts'
import type { DayPlan, PlannedTask, PlanTaskKind, TaskActual } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { type DueTask, dueTasks } from '@/shared/planning/now-next-after'
import type { WallChart } from '@/shared/planning/wall-chart'
import { formatClock, type KitchenTime } from '@/shared/time/kitchen-time'
import { sayAct, sayCalled } from '@/shared/wording/say-act'
import { kettleWorks } from '@/shared/planning/kettle-works'
import type { Planned } from '../plan-drawing'

/** "Finish 21:31, 4 min to spare." */
export function saysWall({ finishAt, spareMinutes }: Pick<WallChart, 'finishAt' | 'spareMinutes'>): string {
  const spare = spareMinutes >= 0 ? `${spareMinutes} min to spare` : `${-spareMinutes} min over`
  return `Finish ${formatClock(finishAt)}, ${spare}`
}

/** "6 min late. Canner 2 decides the finish: keep it moving. D contains mustard: check who works here." */
export function wallLead(problem: DayProblem, plan: DayPlan, { lateMinutes, criticalChain }: WallChart): string {
  const late = lateMinutes > 0 ? `${lateMinutes} min late. ` : ''
  const canner = problem.canners.find(({ id }) => id === criticalChain.at(-1)?.rowId)?.label
  const decides = canner ? `${canner} decides the finish: keep it moving. ` : ''
  const contains = kettleWorks(problem)
    .filter(({ id, allergens }) => allergens.length > 0 && plan.batches.some((batch) => batch.preparationId === id))
    .map(({ code, allergens }) => `${code} contains ${allergens.join(', ')}: check who works here. `)
  return `${late}${decides}${contains.join('')}`.trim()
}

/** What the wall calls out: work at kettles, table and canners. Cutting, washing and labels are on everybody's own list. */
const CALLED_OUT: ReadonlySet<PlanTaskKind> = new Set(['brief', 'cook', 'fill', 'load', 'come-up', 'rest', 'unload', 'clean-up'])

/** The next three things at the stations, in order of time; before the day, its first three. */
export function wallActs(planned: Planned, actuals: readonly TaskActual[], now: KitchenTime | null): WallAct[] {
  const { problem, plan } = planned
  const from = now ?? problem.window.accessAt
  const due = dueTasks(plan, actuals, from)
    .filter(({ task }) => CALLED_OUT.has(task.kind) && task.peopleIds.length > 0)
    .map((one) => ({ one, at: calledAt(one) }))
    .filter(({ at }) => at >= from)
    .sort((a, b) => a.at - b.at || a.one.task.id.localeCompare(b.one.task.id, 'en'))
    .slice(0, 3)
  return due.map(({ one, at }, place) => wallAct(problem, plan, one.task, at, place === 2))
}

/** The clock is started when the come-up ends; everything else begins when it begins. */
const calledAt = ({ task, start, end }: DueTask): KitchenTime => (task.kind === 'come-up' ? end : start)

function wallAct(problem: DayProblem, plan: DayPlan, task: PlannedTask, at: KitchenTime, isLast: boolean): WallAct {
  const speaksSpanish = problem.people.some(({ languages }) => languages.includes('es'))
  return {
    id: task.id,
    lid: isLast ? 'flat' : 'domed',
    at: formatClock(at),
    who: task.kind === 'brief' ? `${sayCalled(problem, task)}, briefing` : sayCalled(problem, task),
    text: sayAct(problem, plan, task),
    ...(speaksSpanish ? { second: { lang: 'es', text: sayAct(problem, plan, task, 'es') } } : {}),
  }
}
