import type { DayPlan, PlannedTask, PlanTaskKind } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPerson } from '@/shared/planning/day-problem'
import { askFor, type StaffingAsk } from '@/shared/planning/staffing-asks'
import { hoursOf, isThereFor, type StaffDemand, staffDemands } from '@/shared/planning/staffing-demands'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Half an hour of one skill. */
export type StaffingCell = {
  readonly from: KitchenTime
  readonly to: KitchenTime
  /** The most people of this skill that the plan uses at one moment. */
  readonly wanted: number
  /** The fewest people who are there, briefed, and may do that work, at the moments when somebody is wanted. */
  readonly present: number
  /** Of those present, who have nothing to do in the whole half hour. */
  readonly freeIds: readonly string[]
  /** Gaps that lie in this half hour, as places in `Staffing.gaps`. */
  readonly gaps: readonly number[]
}

/** One skill, with a cell for every half hour of the plan. */
export type StaffingRow = { readonly skill: string; readonly cells: readonly StaffingCell[] }

/** A piece of work that lacks a person, and who could be asked. */
export type StaffingGap = {
  /** Null where the plan found no minute for the work at all. */
  readonly taskId: string | null
  readonly kind: PlanTaskKind
  readonly skill: string
  readonly preparationId: string | null
  readonly batchId: string | null
  readonly loadId: string | null
  readonly start: KitchenTime
  readonly end: KitchenTime
  readonly wanted: number
  /** People named for it who will be there and may do it. */
  readonly namedIds: readonly string[]
  /** People named for it who will not be there for all of it, or may not do it. */
  readonly lostIds: readonly string[]
  /** Free people first, then by the minutes that they would have to come earlier or stay later, then those at other work. */
  readonly ask: readonly StaffingAsk[]
}

export type Staffing = { readonly rows: readonly StaffingRow[]; readonly gaps: readonly StaffingGap[] }

const HALF_HOUR = 30

/**
 * Who is wanted, who is there, and what lacks a person, half hour by half hour and skill by skill.
 *
 * The plan may be older than the day: people named in it who have left since, come later or may no longer do the work are found missing.
 *
 * @param problem - the day as it now stands
 * @param plan - the timetable that people work by
 */
export function staffingGaps(problem: DayProblem, plan: DayPlan): Staffing {
  const demands = staffDemands(problem, plan)
  const gaps = demands.flatMap((demand) => gapOf(problem, plan, demand) ?? []).sort((a, b) => a.start - b.start || a.end - b.end)
  const skills = [...new Set(demands.map((demand) => demand.skill))]
  const from = floorTo(Math.min(...demands.map((demand) => demand.start)))
  const to = Math.max(...demands.map((demand) => demand.end))
  const rows = skills.map((skill) => ({
    skill,
    cells: halfHours(from, to).map((start) => cellOf({ problem, plan, demands, gaps }, skill, start)),
  }))
  return { rows, gaps }
}

const floorTo = (time: KitchenTime) => Math.floor(time / HALF_HOUR) * HALF_HOUR

const halfHours = (from: KitchenTime, to: KitchenTime): KitchenTime[] =>
  from < to ? Array.from({ length: Math.ceil((to - from) / HALF_HOUR) }, (_, index) => from + index * HALF_HOUR) : []

function gapOf(problem: DayProblem, plan: DayPlan, demand: StaffDemand): StaffingGap | null {
  const { namedIds: all, wanted, skills: _, perPerson: __, ...work } = demand
  const there = (id: string) => problem.people.some((person) => person.id === id && isThereFor(problem, demand, person))
  const namedIds = all.filter(there)
  if (namedIds.length >= wanted) return null
  const lostIds = all.filter((id) => !there(id))
  return { ...work, wanted, namedIds, lostIds, ask: askFor(problem, plan, demand, namedIds) }
}

type Whole = {
  readonly problem: DayProblem
  readonly plan: DayPlan
  readonly demands: readonly StaffDemand[]
  readonly gaps: readonly StaffingGap[]
}

function cellOf({ problem, plan, demands, gaps }: Whole, skill: string, from: KitchenTime): StaffingCell {
  const to = from + HALF_HOUR
  const inside = ({ start, end }: { readonly start: KitchenTime; readonly end: KitchenTime }) => start < to && from < end
  const ofSkill = demands.filter((demand) => demand.skill === skill)
  const here = ofSkill.filter(inside)
  const moments = [from, ...here.map((demand) => Math.max(from, demand.start))]
  const open = here.length > 0 ? moments.filter((moment) => countWanted(here, moment) > 0) : moments
  const able = problem.people.filter((person) => ofSkill.some((demand) => demand.may(person)))
  const busy = new Set(plan.tasks.filter(inside).flatMap((task: PlannedTask) => task.peopleIds))
  const isIn = (person: PlanPerson, moment: KitchenTime) => {
    const hours = hoursOf(problem, person)
    return hours.from <= moment && moment < hours.until
  }
  return {
    from,
    to,
    wanted: Math.max(0, ...moments.map((moment) => countWanted(here, moment))),
    present: Math.min(...(open.length > 0 ? open : moments).map((moment) => able.filter((person) => isIn(person, moment)).length)),
    freeIds: able.filter((person) => isIn(person, from) && isIn(person, to - 1) && !busy.has(person.id)).map(({ id }) => id),
    gaps: gaps.flatMap((gap, index) => (gap.skill === skill && inside(gap) ? [index] : [])),
  }
}

/** One person minds several canners of a kind at once; other work takes everybody whole. */
function countWanted(demands: readonly StaffDemand[], moment: KitchenTime): number {
  const shares = demands
    .filter((demand) => demand.start <= moment && moment < demand.end)
    .map(({ wanted, perPerson }) => wanted / perPerson)
  return Math.ceil(shares.reduce((sum, share) => sum + share, 0) - 1e-9)
}
