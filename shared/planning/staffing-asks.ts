import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem, PlanPerson } from '@/shared/planning/day-problem'
import { hoursOf, type StaffDemand } from '@/shared/planning/staffing-demands'

/** Somebody who could take a piece of work, and what it would ask of them. */
export type StaffingAsk = {
  readonly personId: string
  readonly how: 'is-free' | 'come-earlier' | 'stay-later' | 'leave-other-work'
  /** Minutes earlier or later than their hours; 0 otherwise. */
  readonly minutes: number
  /** The other work that they would leave; null otherwise. */
  readonly taskId: string | null
}

/** Names enough to choose from. */
const MOST_ASKED = 5

const RANK: Readonly<Record<StaffingAsk['how'], number>> = { 'is-free': 0, 'stay-later': 1, 'come-earlier': 2, 'leave-other-work': 3 }

/** Who may do the work and is not named for it yet: those free then, those who would come earlier or stay later, those at other work. */
export function askFor(problem: DayProblem, plan: DayPlan, demand: StaffDemand, namedIds: readonly string[]): StaffingAsk[] {
  return problem.people
    .filter((person) => !namedIds.includes(person.id) && demand.may(person))
    .flatMap((person) => askOf(problem, plan, demand, person) ?? [])
    .sort((a, b) => RANK[a.how] - RANK[b.how] || a.minutes - b.minutes)
    .slice(0, MOST_ASKED)
}

function askOf(problem: DayProblem, plan: DayPlan, demand: StaffDemand, person: PlanPerson): StaffingAsk | null {
  const hours = hoursOf(problem, person)
  const early = Math.max(0, hours.from - demand.start)
  const late = Math.max(0, demand.end - hours.until)
  const other = plan.tasks.find(
    (task) =>
      task.kind !== 'brief' &&
      task.id !== demand.taskId &&
      task.peopleIds.includes(person.id) &&
      task.start < demand.end &&
      demand.start < task.end,
  )
  if (other && early + late > 0) return null
  if (other) return { personId: person.id, how: 'leave-other-work', minutes: 0, taskId: other.id }
  if (early > 0) return { personId: person.id, how: 'come-earlier', minutes: early + late, taskId: null }
  return { personId: person.id, how: late > 0 ? 'stay-later' : 'is-free', minutes: late, taskId: null }
}
