import 'server-only'
import { database } from '@/lib/db/client'
import type { JarTreatmentName } from '@/shared/forms/preparation'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Gauge, Method } from '@/shared/kitchen/methods'
import type { Recipe } from '@/shared/recipes/recipe'
import { recipeById } from '@/shared/recipes/recipe-library'

/** A product of a day with its offer, as claims and recipes pages show it. */
export interface OfferedProduct {
  readonly id: string
  readonly letter: string
  readonly recipe: Recipe
  readonly jarSize: JarSize
  readonly method: Method
  readonly gauge: Gauge | null
  readonly jarTreatment: JarTreatmentName
  readonly processMinutes: number
  readonly processPsi: number | null
  readonly processSource: string
  readonly processEdition: string
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

/** The products of a day, by letter, with all claims. Three statements. */
export async function dayProducts(groupId: string, dayId: string): Promise<OfferedProduct[]> {
  const rows = await database().preparation.findMany({
    where: { groupId, dayId },
    orderBy: { letter: 'asc' },
    select: {
      id: true,
      letter: true,
      recipeId: true,
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
  return rows.map(({ recipeId, claims, ...row }) => {
    const recipe = recipeById(recipeId)
    if (!recipe) throw new Error(`preparation ${row.id} names the recipe ${recipeId}, which is not in the library`)
    return {
      ...row,
      recipe,
      jarSize: row.jarSize as JarSize,
      method: row.method as Method,
      gauge: row.gauge as Gauge | null,
      jarTreatment: row.jarTreatment as JarTreatmentName,
      claims: new Map(claims.map(({ householdId, jars }) => [householdId, jars])),
      claimants: new Map(claims.map(({ householdId, household }) => [householdId, household.name])),
    }
  })
}

/** The households that claim, by name, with their allergens; all of the group, or one. Two statements. */
export function claimingHouseholds(groupId: string, householdId?: string): Promise<ClaimingHousehold[]> {
  return database().household.findMany({
    where: householdId === undefined ? { groupId } : { groupId, id: householdId },
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
