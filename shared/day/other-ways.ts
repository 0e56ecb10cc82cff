import { type ChosenProcess, chooseProcess } from '@/shared/day/choose-process'
import { type DayProduct, planPreparation } from '@/shared/day/plan-preparation'
import type { Gauge, Method } from '@/shared/kitchen/methods'
import type { PlanAlternative, PlanPreparation } from '@/shared/planning/day-problem'
import { lookUpProcess } from '@/shared/process/look-up-process'

/** The kitchen as far as it decides which processes can be run in it. */
export interface KitchenForWays {
  readonly elevationFeet: number
  readonly canners: readonly { readonly method: string; readonly gauge: string | null }[]
}

/**
 * The other published ways to put a product up in this kitchen: in a pressure canner, one way for each gauge that is there, and in each other
 * jar that the recipe takes.
 *
 * Only printed rows are used, at this kitchen's elevation; a way without a row is not a way. Of several pressures that one row prints the one
 * with the shortest time is taken.
 */
export function otherWays(product: DayProduct, kitchen: KitchenForWays): PlanAlternative[] {
  const gauges = kitchen.canners.flatMap(({ method, gauge }) => (method === 'pressure' && gauge !== null ? [gauge as Gauge] : []))
  const pressure = product.method === 'pressure' ? [] : [...new Set(gauges)]
  return [
    ...pressure.flatMap((gauge) => {
      const process = pressureProcess(product, gauge, kitchen.elevationFeet)
      return process ? [wayOf({ ...product, method: 'pressure', jarTreatment: 'washed-hot' }, process, gauge)] : []
    }),
    ...product.recipe.jars
      .filter((jarSize) => jarSize !== product.jarSize)
      .flatMap((jarSize) => {
        const inJar = { ...product, jarSize }
        const gauge = product.method === 'pressure' ? (gauges[0] ?? null) : null
        const process = chooseProcess({ ...inJar, gauge, elevationFeet: kitchen.elevationFeet })
        return process.ok ? [wayOf(inJar, process.value, gauge)] : []
      }),
  ]
}

function pressureProcess({ recipe, jarSize }: DayProduct, gauge: Gauge, elevationFeet: number): ChosenProcess | null {
  // A group's own recipe has confirmed nothing of another table.
  if (!recipe.process || recipe.own) return null
  const { foodId, pack } = recipe.process
  const query = { food: foodId, pack, jar: jarSize, method: 'pressure' as Method, gauge, elevation: { feet: elevationFeet } }
  const first = lookUpProcess(query)
  if (!first.ok) return null
  const others = first.value.otherOptions.map(({ option }) => lookUpProcess({ ...query, option }))
  const printed = [first, ...others].flatMap((found) => (found.ok ? [found.value] : []))
  const [published] = printed.sort((a, b) => a.minutes - b.minutes)
  return published ? { published, minutes: published.minutes, jarBoilMinutes: 0, isLongerForJars: false } : null
}

function wayOf(product: DayProduct, process: ChosenProcess, gauge: Gauge | null): PlanAlternative {
  const planned: PlanPreparation = planPreparation(product, { process, soakedBy: 0, hosts: new Map() })
  const { method, jarSize, jarTreatment, jarBoilMinutes, cycle, batchYield, fill, wash, label } = planned
  return { method, jarSize, process: planned.process, jarTreatment, jarBoilMinutes, cycle, batchYield, fill, wash, label, gauge }
}
