import 'server-only'
import { database } from '@/lib/db/client'
import type { Actor } from '@/shared/access/actor'
import { reachOf } from '@/shared/access/policy'
import { householdAllergens } from '@/shared/people/household-allergens'

/** One household as lists and choices show it. */
export interface ListedHousehold {
  readonly id: string
  readonly name: string
  readonly headcount: number
  readonly language: string
  readonly contact: string
  /** On the household's own list and on those of its people. */
  readonly allergens: readonly string[]
  readonly people: number
}

const MOST = 500

/** The households that this person may see, by name: all of them, or their own. Two statements. */
export async function listHouseholds(actor: Actor): Promise<ListedHousehold[]> {
  const { groupId, householdId } = actor
  const own = reachOf(actor, 'see-households') === 'any' ? {} : { id: householdId }
  const rows = await database().household.findMany({
    where: { groupId, leftAt: null, ...own },
    select: {
      id: true,
      name: true,
      headcount: true,
      language: true,
      contact: true,
      allergens: true,
      people: { where: { active: true }, select: { allergies: true } },
    },
    orderBy: { name: 'asc' },
    take: MOST,
  })
  return rows.map(({ people, allergens, ...household }) => ({
    ...household,
    allergens: householdAllergens(allergens, people),
    people: people.length,
  }))
}
