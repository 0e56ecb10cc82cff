import { PAUSE_MINUTES } from '@/shared/planning/breaks'
import { setUpKitchen } from '@/shared/planning/kitchen-set-up'
import type { DayPlan, PlannedTask, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { workShares } from '@/shared/planning/share-work'
import type { KitchenTime } from '@/shared/time/kitchen-time'

type Span = { readonly start: KitchenTime; readonly end: KitchenTime }

/** What a day asks of one person, in minutes; two things at once count once. */
export type WorkLoad = {
  readonly personId: string
  /** That they are there after the briefing. */
  readonly thereMinutes: number
  /** Hands and minding; briefing, breaks and cleaning up are not counted. */
  readonly workMinutes: number
  /** Of these at a kettle or a canner. */
  readonly heatMinutes: number
  /** Of these on their feet: all but cutting, washing jars and labels, which may be done at a seat. */
  readonly standingMinutes: number
  /** The longest work without a pause of ten minutes. */
  readonly longestStretchMinutes: number
  readonly breaks: readonly Span[]
}

const AT_HEAT: ReadonlySet<PlanTaskKind> = new Set(['preheat', 'jar-heat', 'cook', 'hold', 'load', 'come-up', 'process', 'rest', 'unload'])
const AT_A_SEAT: ReadonlySet<PlanTaskKind> = new Set(['prep', 'wash', 'label'])

/** What a plan asks of everybody, in the order of the day's people. */
export function workLoads(problem: DayProblem, plan: DayPlan): WorkLoad[] {
  return workShares(setUpKitchen(problem, []).hours, plan.tasks).map(({ personId, workMinutes, availableMinutes }) => {
    const own = plan.tasks.filter(({ peopleIds }) => peopleIds.includes(personId))
    const work = own.filter(isWork)
    return {
      ...{ personId, workMinutes, thereMinutes: availableMinutes },
      heatMinutes: minutesOf(work.filter(({ kind }) => AT_HEAT.has(kind))),
      standingMinutes: minutesOf(work.filter(({ kind }) => !AT_A_SEAT.has(kind))),
      longestStretchMinutes: longest(work),
      breaks: own.filter(({ kind }) => kind === 'break').map(({ start, end }) => ({ start, end })),
    }
  })
}

/** Who works most and who least of the time that they are there; null where fewer than two people work. */
export function mostAndLeast(loads: readonly WorkLoad[]): { readonly most: WorkLoad; readonly least: WorkLoad } | null {
  const there = loads.filter(({ thereMinutes }) => thereMinutes > 0)
  const order = [...there].sort((a, b) => minutesOfEachHour(b) - minutesOfEachHour(a))
  const [most, least] = [order[0], order.at(-1)]
  return most && least && most !== least ? { most, least } : null
}

/** Minutes at work of each hour that somebody is there, rounded. */
export const minutesOfEachHour = ({ workMinutes, thereMinutes }: Pick<WorkLoad, 'workMinutes' | 'thereMinutes'>): number =>
  thereMinutes === 0 ? 0 : Math.round((60 * workMinutes) / thereMinutes)

const isWork = ({ kind, start, end }: PlannedTask): boolean => kind !== 'brief' && kind !== 'break' && kind !== 'clean-up' && end > start

const minutesOf = (spans: readonly Span[]): number => stretches(spans, 0).reduce((sum, { start, end }) => sum + end - start, 0)

const longest = (spans: readonly Span[]): number => Math.max(0, ...stretches(spans, PAUSE_MINUTES).map(({ start, end }) => end - start))

/** Spans joined where less than `pause` minutes lie between them; at 0 only those that touch or overlap. */
function stretches(spans: readonly Span[], pause: number): Span[] {
  const joined: { start: KitchenTime; end: KitchenTime }[] = []
  for (const { start, end } of [...spans].sort((a, b) => a.start - b.start)) {
    const last = joined.at(-1)
    if (last && (start <= last.end || start - last.end < pause)) last.end = Math.max(last.end, end)
    else joined.push({ start, end })
  }
  return joined
}
