import type { KettleWork, PlanPerson } from '@/shared/planning/day-problem'
import type { PlanTaskKind } from '@/shared/planning/day-plan'

const AT_A_SEAT: ReadonlySet<PlanTaskKind> = new Set(['prep', 'wash', 'label', 'brief'])
const SAFE_FOR_MINORS: ReadonlySet<PlanTaskKind> = new Set(['wash', 'label', 'brief', 'clean-up'])

/**
 * May this person be given this kind of work, whatever the hour?
 *
 * Minors never work at heat, knives or canners. Somebody who may not lift never loads or unloads a canner. Somebody who works seated
 * prepares, washes jars or writes labels. Somebody allergic to what is in a preparation is kept off every open station of it: washing
 * empty jars and writing its labels are the only exceptions.
 *
 * @param skills - any one of them is enough; none asked for means anybody
 */
export function mayDo(person: PlanPerson, kind: PlanTaskKind, skills: readonly string[], preparation: KettleWork | null): boolean {
  if (person.ageClass !== 'adult' && !SAFE_FOR_MINORS.has(kind)) return false
  if (person.limits.includes('seated') && !AT_A_SEAT.has(kind)) return false
  if (person.limits.includes('no-lifting') && (kind === 'load' || kind === 'unload')) return false
  if (preparation && kind !== 'wash' && kind !== 'label' && isAllergic(person, preparation)) return false
  return skills.length === 0 || skills.some((skill) => person.skills.includes(skill))
}

const isAllergic = (person: PlanPerson, preparation: KettleWork) =>
  preparation.allergens.some((allergen) => person.allergies.includes(allergen))
