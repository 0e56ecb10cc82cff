import 'server-only'
import { readDayProblem } from '@/lib/queries/day-problem'
import { readSavedPlan } from '@/lib/queries/saved-plan'
import { plannedForPage } from '@/lib/services/day/remembered-plans'
import { type Alternative, alternativesOf, betterOf, chosenAlternatives } from '@/shared/day/what-if'
import { isSearchedApart } from '@/shared/day/day-size'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'

/** One column of the comparison: a day as it would be, and its plan; null where it does not fit. */
export interface Compared {
  readonly alternative: Alternative | null
  readonly problem: DayProblem
  readonly plan: DayPlan | null
}

export interface WhatIf {
  readonly problem: DayProblem
  readonly all: readonly Alternative[]
  /** The day as it is and the chosen alternatives; none of them is planned for a large day. */
  readonly columns: readonly Compared[]
  readonly isLarge: boolean
}

/** A day as it is beside the alternatives that an address asks for, each planned to the last canner; null where nothing is asked for yet. A fixed number of statements. */
export async function whatIf(groupId: string, dayId: string, asked: readonly string[]): Promise<WhatIf | null> {
  const [read, stored] = await Promise.all([readDayProblem(groupId, dayId), readSavedPlan(groupId, dayId)])
  const problem = stored?.problem ?? read?.problem
  if (!problem || problem.preparations.every(({ jarsWanted }) => jarsWanted === 0)) return null
  const all = alternativesOf(problem)
  const chosen = chosenAlternatives(all, asked)
  const isLarge = isSearchedApart(problem)
  const asItIs: Compared = { alternative: null, problem, plan: stored?.plan ?? (await planOf(problem)) }
  return {
    problem,
    all,
    isLarge,
    columns: [
      asItIs,
      ...(await Promise.all(
        chosen.map(async (alternative) => {
          const { problem: changed } = alternative
          return { alternative, problem: changed, plan: betterOf(alternative, asItIs.plan, await planOf(changed)) }
        }),
      )),
    ],
  }
}

async function planOf(problem: DayProblem): Promise<DayPlan | null> {
  const planned = await plannedForPage(problem)
  return planned?.ok ? planned.value : null
}
