import type { DayProblem, PlanPreparation } from '@/shared/planning/day-problem'
import { minutesFor } from '@/shared/planning/place-batch'
import { drawerOf, rangesOf } from '@/shared/planning/stage-ranges'
import { randomFrom } from '@/shared/scheduling/random'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** The last minute at which a kettle of a preparation may be put on. */
export type LastStart = { readonly preparationId: string; readonly code: string; readonly title: string; readonly at: KitchenTime }

/**
 * "Start no new batch after": for each preparation, the latest minute at which one more kettle still leaves its canner empty in time with
 * this chance, when a canner is free as soon as its jars are filled. A filled kettle is one tested batch, filled by the smallest team.
 *
 * @param chance - 0.9 means in 9 of 10 such evenings
 * @param seed - the same seed gives the same answer on every machine
 * @returns earliest first; a preparation of which nothing is wanted is left out
 */
export function lastStarts(problem: DayProblem, chance: number, seed: number, runs = 1000): LastStart[] {
  return problem.preparations
    .filter((preparation) => preparation.jarsWanted > 0)
    .map((preparation) => {
      const { id, code, title } = preparation
      const at = Math.floor(problem.window.cannersEmptyBy - minutesAtChance(preparation, chance, seed, runs) + 1e-9)
      return { preparationId: id, code, title, at }
    })
    .sort((a, b) => a.at - b.at || (a.code < b.code ? -1 : 1))
}

/** From the kettle to the empty canner, so long that this share of the draws is no longer. */
function minutesAtChance(preparation: PlanPreparation, chance: number, seed: number, runs: number): number {
  const { cycle, process, fill } = preparation
  const { kettle, comeUp } = rangesOf(preparation)
  const heat = cycle.loadMinutes + cycle.ventMinutes + cycle.pressuriseMinutes + process.minutes
  const fixed = minutesFor(fill, 1, fill.peopleMin) + heat + cycle.restMinutes + cycle.waitMinutes + cycle.unloadMinutes
  const random = randomFrom(seed)
  const [cook, boil] = [drawerOf(kettle), drawerOf(comeUp)]
  const lengths = Array.from({ length: runs }, () => cook(random()) + boil(random()) + fixed).sort((a, b) => a - b)
  return lengths[Math.min(runs, Math.max(1, Math.ceil(chance * runs - 1e-9))) - 1] ?? 0
}
