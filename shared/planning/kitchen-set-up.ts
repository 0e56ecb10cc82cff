import type { BurnerUse, DayProblem, KettleWork, PlanBurner, PlanCanner } from '@/shared/planning/day-problem'
import { restRuleOf } from '@/shared/planning/breaks'
import type { WorkingHours } from '@/shared/planning/day-calendar'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/**
 * The strongest ring on which a pressure canner may stand, BTU per hour.
 *
 * Source: Utah State University Extension, Cook Surface Precautions for Home Canning (canner makers' limit).
 */
export const PRESSURE_CANNER_MAX_BTU_PER_HOUR = 12_000

/** A canner on the burner it keeps all day: a canner of hot water is not carried about. */
export type CannerPlace = { readonly canner: PlanCanner; readonly burner: PlanBurner; readonly readyAt: KitchenTime }

/** What the kitchen looks like once the canners stand on their burners. */
export type KitchenSetUp = {
  readonly places: readonly CannerPlace[]
  readonly kettleBurners: readonly PlanBurner[]
  readonly hours: readonly WorkingHours[]
}

/** May this burner heat that? A portable electric ring heats brine and jar pots only (common practice). */
export function burnerServes(burner: PlanBurner, use: BurnerUse, canner: PlanCanner | null = null): boolean {
  if (burner.forUses && !burner.forUses.includes(use)) return false
  if (burner.kind === 'portable-electric' && (use === 'canner' || use === 'kettle')) return false
  return canner?.method !== 'pressure' || (burner.btuPerHour ?? 0) <= PRESSURE_CANNER_MAX_BTU_PER_HOUR
}

/** The heat that a preparation's kettle asks for. */
export const kettleHeat = (preparation: Pick<KettleWork, 'kettleUse'>): BurnerUse =>
  preparation.kettleUse === 'brine' ? 'brine' : 'kettle'

/**
 * Puts the given canners on burners, the strongest first; canners that find none are left out.
 *
 * Ties go by the order in the kitchen's list. What is left serves kettles.
 */
export function setUpKitchen(problem: DayProblem, canners: readonly PlanCanner[]): KitchenSetUp {
  const left = [...problem.burners].sort((a, b) => (b.btuPerHour ?? 0) - (a.btuPerHour ?? 0))
  const places: CannerPlace[] = []
  for (const canner of canners) {
    const index = left.findIndex((burner) => burnerServes(burner, 'canner', canner))
    const [burner] = index < 0 ? [] : left.splice(index, 1)
    if (burner)
      places.push({ canner, burner, readyAt: Math.max(problem.window.firstLoadAt, problem.window.accessAt + canner.preheatMinutes) })
  }
  return { places, kettleBurners: left.reverse(), hours: problem.people.map((person) => workingHours(problem, person)) }
}

function workingHours(problem: DayProblem, person: DayProblem['people'][number]): WorkingHours {
  const { peopleArriveAt, briefingMinutes, hardEnd } = problem.window
  const rest = restRuleOf(problem, person)
  const hours = { person, from: Math.max(person.from, peopleArriveAt) + briefingMinutes, until: Math.min(person.until, hardEnd) }
  return rest ? { ...hours, rest } : hours
}
