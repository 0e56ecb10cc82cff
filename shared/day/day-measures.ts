import { checkSupplies, type StockLot } from '@/shared/day/supply-check'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { kettleWorks } from '@/shared/planning/kettle-works'
import type { DayPlan } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'
import { BOX_OF } from '@/shared/supplies/supplies-needed'

/** Something of which there is a fixed amount: what the day needs and what there is. */
export type DayMeasure =
  | { readonly kind: 'canners' | 'burners' | 'people'; readonly needed: number; readonly available: number }
  | { readonly kind: 'jars'; readonly size: JarSize; readonly needed: number; readonly available: number }
  | {
      readonly kind: 'lids'
      readonly needed: number
      readonly available: number
      /** Lids that may not be used, lids with the spare, and whole boxes to buy. */
      readonly tooOld: number
      readonly withSpare: number
      readonly boxes: number
      readonly boxOf: number
    }

/** What a plan takes of everything that can run out, in the order in which days run out of it. */
export function dayMeasures(
  problem: DayProblem,
  plan: DayPlan,
  stock: readonly StockLot[],
  { date, sparePercent }: { readonly date: string; readonly sparePercent: number },
): DayMeasure[] {
  const methods = new Map(problem.preparations.map(({ id, method }) => [id, method]))
  const planned = kettleWorks(problem).map((preparation) => ({
    size: preparation.jarSize,
    // What no canner takes is under no pressure: any sound jar will do.
    method: methods.get(preparation.id) ?? ('boiling-water' as const),
    jars: plan.batches.filter((batch) => batch.preparationId === preparation.id).reduce((sum, batch) => sum + batch.jars.typical, 0),
  }))
  const supplies = checkSupplies(
    planned.filter(({ jars }) => jars > 0),
    stock,
    date,
    sparePercent,
  )
  const burners = new Set(plan.tasks.flatMap(({ burnerId }) => (burnerId === null ? [] : [burnerId])))
  return [
    { kind: 'canners', needed: plan.cannerMinutes.needed, available: plan.cannerMinutes.available },
    { kind: 'burners', needed: burners.size, available: problem.burners.length },
    ...supplies.jars.map(({ size, planned: needed, usable }) => ({ kind: 'jars' as const, size, needed, available: usable })),
    {
      ...{ kind: 'lids', needed: supplies.lids.planned, available: supplies.lids.usable, tooOld: supplies.lidsOut },
      ...{ withSpare: supplies.lids.withSpare, boxes: supplies.lids.boxes, boxOf: BOX_OF },
    },
    { kind: 'people', needed: mostAtOnce(problem), available: problem.window.headcountLimit ?? mostAtOnce(problem) },
  ]
}

/** The most people in the room at one moment. */
function mostAtOnce({ people }: DayProblem): number {
  const inside = (at: number) => people.filter((person) => person.from <= at && at < person.until).length
  return Math.max(0, ...people.map(({ from }) => inside(from)))
}
