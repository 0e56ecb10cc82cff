import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { METHODS, type Method } from '@/shared/kitchen/methods'
import type { CannerMinutes, DayPlan, WayOut } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { kettleWorks } from '@/shared/planning/kettle-works'
import { otherJars } from '@/shared/planning/other-ways-out'
import { jarsToPlan } from '@/shared/planning/split-demand'
import { startedEarlier, withOneMore } from '@/shared/planning/ways-out'
import type { KitchenTime } from '@/shared/time/kitchen-time'
import { applyPlanChange, type PlanChange } from './apply-plan-change'

/** Another way to run the day, to be laid beside the one that is planned. */
export interface Alternative {
  /** As an address names it, "start-earlier:30". */
  readonly key: string
  readonly change: WayOut['change']
  readonly problem: DayProblem
  /** What `plan-day` takes for it; null where the change is entered elsewhere: hours, kitchen, recipes. */
  readonly planChange: PlanChange | null
}

/** Most alternatives that are laid side by side. */
export const MOST_SIDE_BY_SIDE = 3

const EARLIER_MINUTES = 30

/** Every alternative that this day offers, each with the day that it makes; what loses jars comes last. Nothing is planned here. */
export function alternativesOf(problem: DayProblem): Alternative[] {
  return [...earlier(problem), ...oneMoreCanner(problem), ...inOtherJars(problem), ...oneBatchFewer(problem), ...oneRecipeLess(problem)]
}

/**
 * The alternatives that an address asks for, in its order and at most three; the first three where it asks for none that the day has.
 *
 * @param asked - keys as they came, of any length and content
 */
export function chosenAlternatives(all: readonly Alternative[], asked: readonly string[]): Alternative[] {
  const found = [...new Set(asked)].flatMap((key) => all.filter((each) => each.key === key))
  return (found.length > 0 ? found : all).slice(0, MOST_SIDE_BY_SIDE)
}

function earlier(problem: DayProblem): Alternative[] {
  const change = { kind: 'start-earlier', minutes: EARLIER_MINUTES } as const
  return [{ key: `start-earlier:${EARLIER_MINUTES}`, change, problem: startedEarlier(problem, EARLIER_MINUTES), planChange: null }]
}

function oneMoreCanner(problem: DayProblem): Alternative[] {
  const inUse = METHODS.filter((method) => problem.preparations.some((each) => each.method === method && jarsToPlan(each) > 0))
  return inUse.flatMap((method: Method) => {
    const ofMethod = problem.canners.filter((canner) => canner.method === method)
    const canners = withOneMore(
      problem.canners,
      ofMethod.find(({ usable }) => !usable),
      ofMethod.find(({ usable }) => usable),
    )
    const change = { kind: 'one-more-canner', method } as const
    return canners ? [{ key: `one-more-canner:${method}`, change, problem: { ...problem, canners }, planChange: null }] : []
  })
}

const inOtherJars = (problem: DayProblem): Alternative[] =>
  otherJars(problem).flatMap(({ change, problem: changed }) =>
    change.kind === 'other-jars'
      ? [{ key: `other-jars:${change.preparationId}:${change.jarSize}`, change, problem: changed, planChange: null }]
      : [],
  )

/** One batch less of whatever has most of them. */
function oneBatchFewer(problem: DayProblem): Alternative[] {
  const batches = (each: DayProblem['preparations'][number]) => Math.ceil(jarsToPlan(each) / each.batchYield.typical)
  const [most] = [...problem.preparations].sort((a, b) => batches(b) - batches(a) || a.code.localeCompare(b.code))
  if (!most || batches(most) < 2) return []
  const planChange: PlanChange = { kind: 'fewer-batches', preparationId: most.id, batches: 1 }
  const changed = applyPlanChange(problem, planChange)
  if (!changed.ok) return []
  const jars = jarsToPlan(most) - (changed.value.preparations.find(({ id }) => id === most.id)?.jarsWanted ?? 0)
  return [{ key: `fewer-batches:${most.id}`, change: { ...planChange, jars }, problem: changed.value, planChange }]
}

function oneRecipeLess(problem: DayProblem): Alternative[] {
  const asked = problem.preparations.filter((each) => jarsToPlan(each) > 0)
  if (asked.length < 2) return []
  return asked.flatMap(({ id }) => {
    const planChange = { kind: 'drop-preparation', preparationId: id } as const
    const changed = applyPlanChange(problem, planChange)
    return changed.ok ? [{ key: `drop-preparation:${id}`, change: planChange, problem: changed.value, planChange }] : []
  })
}

/**
 * The plan to show for an alternative: its own, or the day's as it is where that ends no later and can be kept.
 *
 * An earlier start or one more canner takes nothing away, so what was planned without it stays possible.
 */
export function betterOf({ change }: Alternative, asItIs: DayPlan | null, own: DayPlan | null): DayPlan | null {
  const keepsOld = change.kind === 'start-earlier' || change.kind === 'one-more-canner'
  if (!keepsOld || !asItIs) return own
  return own && own.finishAt < asItIs.finishAt ? own : asItIs
}

/** What a plan comes to, to be compared with another. */
export interface PlanFigures {
  readonly finishAt: KitchenTime
  /** Minutes by which a better plan could at most end earlier. */
  readonly gap: number
  readonly cannerMinutes: CannerMinutes
  /** Minutes that each person is at work or minds something, overlaps counted once; those without work are left out. */
  readonly work: readonly { readonly personId: string; readonly name: string; readonly minutes: number }[]
}

/** Reads the figures off a plan. People stand in the order of their minutes, longest first. */
export function figuresOf(problem: DayProblem, plan: DayPlan): PlanFigures {
  const work = problem.people
    .map(({ id, name }) => ({ personId: id, name, minutes: minutesAtWork(plan, id) }))
    .filter(({ minutes }) => minutes > 0)
    .sort((a, b) => b.minutes - a.minutes || a.name.localeCompare(b.name))
  return { finishAt: plan.finishAt, gap: Math.max(0, plan.finishAt - plan.lowerBound), cannerMinutes: plan.cannerMinutes, work }
}

function minutesAtWork({ tasks }: DayPlan, personId: string): number {
  const spans = tasks.filter(({ peopleIds }) => peopleIds.includes(personId)).sort((a, b) => a.start - b.start)
  let [sum, until] = [0, Number.NEGATIVE_INFINITY]
  for (const { start, end } of spans) {
    sum += Math.max(0, end - Math.max(start, until))
    until = Math.max(until, end)
  }
  return sum
}

/** Jars that are asked for and would not be made, by product; the same food in other jars is not lost. */
export function jarsLost(
  problem: DayProblem,
  changed: DayProblem,
): { readonly title: string; readonly jarSize: JarSize; readonly jars: number }[] {
  return kettleWorks(problem).flatMap((each) => {
    const after = kettleWorks(changed).find(({ id }) => id === each.id)
    if (after && after.jarSize !== each.jarSize) return []
    const jars = jarsToPlan(each) - (after ? jarsToPlan(after) : 0)
    return jars > 0 ? [{ title: each.title, jarSize: each.jarSize, jars }] : []
  })
}
