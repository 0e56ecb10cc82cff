import type { DayCalendar, WorkingHours } from '@/shared/planning/day-calendar'
import type { PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem, KettleWork } from '@/shared/planning/day-problem'
import type { KitchenSetUp } from '@/shared/planning/kitchen-set-up'
import type { SplitJob } from '@/shared/planning/split-demand'
import type { Span, UnderWay } from '@/shared/planning/under-way'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** How operators are chosen: each keeps a canner, or one minds as many as allowed and leaves the others free. */
export type OperatorRule = 'keep-a-canner' | 'one-minds-all'

/** Where filling ends inside the time that filled jars may wait: as late, as early, or as near the middle as fits. */
export type FillRule = 'just-in-time' | 'ahead' | 'in-between'

/** How people are shared out where hands are short all day. */
export type CrowdRule = {
  /** Produce is prepared as early as fits within this many minutes before it is needed, so that hands are left for kettles and tables. */
  readonly prepAheadMinutes: number
}

/** Work left for one search, counted in fillings tried: never in time, so that every machine stops at the same place. */
export type Effort = { left: number }

/** What can stop a placement. */
export type BlockCause = 'canner' | 'operator' | 'lifter' | 'table' | 'kettle' | 'burner' | 'cook' | 'fill' | 'prep' | 'wash' | 'lock'

/** How often each cause stopped a placement, so that a refusal can name it. */
export type Blocked = Record<BlockCause, number>

export const nothingBlocked = (): Blocked => ({
  canner: 0,
  operator: 0,
  lifter: 0,
  table: 0,
  kettle: 0,
  burner: 0,
  cook: 0,
  fill: 0,
  prep: 0,
  wash: 0,
  lock: 0,
})

/** Everything a placement reads and writes. */
export type PlacingContext = {
  readonly problem: DayProblem
  readonly setUp: KitchenSetUp
  readonly calendar: DayCalendar
  readonly operatorRule: OperatorRule
  /** Per job; a job not named here follows `fillRule`. */
  readonly fillRules: ReadonlyMap<SplitJob, FillRule>
  readonly fillRule: FillRule
  readonly lastOperator: Map<string, string>
  readonly blocked: Blocked
  /** Fillings that may still be tried; the search stops at 0, so that a hopeless day is refused in time. */
  readonly effort: Effort
  /** Who may do what, found once, by preparation and stage. */
  readonly able: Map<KettleWork, Map<PlanTaskKind, readonly WorkingHours[]>>
  /** How much each person is needed at canners, kettles and tables, found once. */
  readonly scarcity: Map<string, number>
  /** Canner minutes taken ahead of their turn, by a lock or an outage: loads may still be placed before them. */
  readonly reserved: Map<string, Span[]>
  /** What has begun by now; null when the day is planned before it begins. */
  readonly underWay: UnderWay | null
  /** Fillings that were tried for the load at hand and do not fit, where an answer is wanted at once; without it each minute tries all of them anew. */
  readonly hopeless?: Set<string> | null
  /** Set for a large day: prep ahead, operators spared for their canners, no filling tried twice for a load. */
  readonly crowd: CrowdRule | null
  /** Loads are tried at their minute of the plan that stands before any other. */
  readonly keepsMinutes: boolean
}

/** Nothing is given a start before this minute. */
export const earliestStart = ({ underWay }: PlacingContext): KitchenTime => underWay?.now ?? Number.NEGATIVE_INFINITY

/** Notes one more failure for this cause, and says no. */
export function count(blocked: Blocked, cause: BlockCause): null {
  blocked[cause]++
  return null
}
