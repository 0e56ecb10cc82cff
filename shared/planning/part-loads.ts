import type { DayPlan, PlannedLoad } from '@/shared/planning/day-plan'
import type { DayProblem } from '@/shared/planning/day-problem'

/**
 * Why a canner runs with free places: 'batch': one more kettle batch would not fit; 'rest': no more jars are wanted; 'apart': another batch
 * would fit, but is filled at another time, and filled jars may not wait.
 */
export type WhyPart = 'batch' | 'rest' | 'apart'

/** Loads of one product that are alike: so many jars of so many that the canner holds. */
export type PartLoad = {
  readonly preparationId: string
  readonly loads: number
  readonly jars: number
  readonly places: number
  readonly why: WhyPart
}

/** Loads that leave places free, by product and reason, in the order of the products. */
export function partLoads(problem: DayProblem, plan: DayPlan): PartLoad[] {
  const found = new Map<string, PartLoad>()
  for (const load of plan.loads) {
    const [jars, places] = [jarsIn(load, 'typical'), placesIn(problem, load)]
    if (jars >= places || jarsIn(load, 'high') >= places) continue
    const why = whyPart(plan, load, places)
    const key = `${load.preparationId} ${jars} ${places} ${why}`
    const known = found.get(key)
    found.set(key, { preparationId: load.preparationId, loads: (known?.loads ?? 0) + 1, jars, places, why })
  }
  const order = problem.preparations.map(({ id }) => id)
  return [...found.values()].sort((a, b) => order.indexOf(a.preparationId) - order.indexOf(b.preparationId) || b.loads - a.loads)
}

function whyPart(plan: DayPlan, load: PlannedLoad, places: number): WhyPart {
  const others = plan.batches.filter(
    ({ id, preparationId }) => preparationId === load.preparationId && !load.batchParts.some(({ batchId }) => batchId === id),
  )
  if (others.length === 0) return 'rest'
  const smallest = Math.min(...others.map(({ jars }) => jars.high))
  return jarsIn(load, 'high') + smallest > places ? 'batch' : 'apart'
}

const jarsIn = ({ batchParts }: PlannedLoad, part: 'typical' | 'high'): number => batchParts.reduce((sum, { jars }) => sum + jars[part], 0)

const placesIn = ({ canners }: DayProblem, { cannerId, jarSize }: PlannedLoad): number =>
  canners.find(({ id }) => id === cannerId)?.capacity[jarSize] ?? 0
