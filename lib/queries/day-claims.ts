import 'server-only'
import { database } from '@/lib/db/client'
import { recipesOfDay } from '@/lib/stores/recipes'
import type { JarTreatmentName } from '@/shared/forms/preparation'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method } from '@/shared/kitchen/methods'
import type { Recipe } from '@/shared/recipes/recipe'

/** The published process of a product with the canner it is for; minutes as they are run, psi on a true gauge. */
export interface OfferedProcess {
  readonly method: Method
  readonly gauge: Gauge | null
  readonly minutes: number
  readonly psi: number | null
  readonly source: string
  readonly edition: string
}

/** A product of a day with its offer, as claims and recipes pages show it. */
export interface OfferedProduct {
  readonly id: string
  readonly letter: string
  readonly recipe: Recipe
  readonly jarSize: JarSize
  readonly jarTreatment: JarTreatmentName
  /** As it was looked up when the recipe was put on the day; null: fridge or freezer. */
  readonly process: OfferedProcess | null
  readonly offered: number
  readonly claimed: number
  readonly spareJars: number
  /** Jars by household, without claims that were given up. */
  readonly claims: ReadonlyMap<string, number>
  /** The names of the households that claim: ties are broken by them. */
  readonly claimants: ReadonlyMap<string, string>
}

/** A household with whatever keeps a product off it. Names are for that household and the organiser. */
export interface ClaimingHousehold {
  readonly id: string
  readonly name: string
  readonly headcount: number
  readonly allergens: readonly string[]
  readonly people: readonly { readonly name: string; readonly allergies: readonly string[] }[]
}

/** The products of a day, by letter, with all claims. Four statements. */
export async function dayProducts(groupId: string, dayId: string): Promise<OfferedProduct[]> {
  const recipes = await recipesOfDay(database(), groupId, dayId)
  const rows = await database().preparation.findMany({
    where: { groupId, dayId },
    orderBy: { letter: 'asc' },
    select: {
      id: true,
      letter: true,
      jarSize: true,
      method: true,
      gauge: true,
      jarTreatment: true,
      processMinutes: true,
      processPsi: true,
      processSource: true,
      processEdition: true,
      offered: true,
      claimed: true,
      spareJars: true,
      claims: { where: { jars: { gt: 0 } }, select: { householdId: true, jars: true, household: { select: { name: true } } } },
    },
  })
  return rows.map((row) => {
    const { id, letter, offered, claimed, spareJars, claims } = row
    return {
      ...{ id, letter, offered, claimed, spareJars },
      recipe: recipes.of(id),
      process: processOf(row),
      jarSize: row.jarSize as JarSize,
      jarTreatment: row.jarTreatment as JarTreatmentName,
      claims: new Map(claims.map(({ householdId, jars }) => [householdId, jars])),
      claimants: new Map(claims.map(({ householdId, household }) => [householdId, household.name])),
    }
  })
}

interface ProcessColumns {
  readonly method: string | null
  readonly gauge: string | null
  readonly processMinutes: number | null
  readonly processPsi: number | null
  readonly processSource: string | null
  readonly processEdition: string | null
}

/** The columns of a process are all there or none of them: the database sees to it. */
function processOf({
  method,
  gauge,
  processMinutes: minutes,
  processPsi: psi,
  processSource: source,
  processEdition: edition,
}: ProcessColumns) {
  if (method === null || minutes === null || source === null || edition === null) return null
  return { method: method as Method, gauge: gauge as Gauge | null, minutes, psi, source, edition }
}

/** The households that claim, by name, with their allergens; all of the group, or one. Two statements. */
export function claimingHouseholds(groupId: string, householdId?: string): Promise<ClaimingHousehold[]> {
  return database().household.findMany({
    where: householdId === undefined ? { groupId, leftAt: null } : { groupId, id: householdId, leftAt: null },
    orderBy: { name: 'asc' },
    select: {
      id: true,
      name: true,
      headcount: true,
      allergens: true,
      people: { where: { active: true }, orderBy: { name: 'asc' }, select: { name: true, allergies: true } },
    },
  })
}

/** Whom to tell that a list is wrong: the organiser's name, or null in a group without one. */
export async function organiserName(groupId: string): Promise<string | null> {
  const organiser = await database().person.findFirst({
    where: { groupId, role: 'organiser', active: true },
    orderBy: { createdAt: 'asc' },
    select: { name: true },
  })
  return organiser?.name ?? null
}
