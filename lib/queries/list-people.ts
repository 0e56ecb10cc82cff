import 'server-only'
import { database } from '@/lib/db/client'
import type { Actor, AgeClass, Role } from '@/shared/access/actor'
import { reachOf } from '@/shared/access/policy'

/** One person as the list shows them. */
export interface ListedPerson {
  readonly id: string
  readonly name: string
  readonly household: string
  readonly role: Role
  readonly ageClass: AgeClass
  readonly skills: readonly string[]
  readonly limits: readonly string[]
  readonly allergies: readonly string[]
  readonly availableFrom: number | null
  readonly availableUntil: number | null
  readonly active: boolean
  readonly hasAccount: boolean
}

const MOST = 1000

/** The people that this person may see, those who are here first, by household and name. A fixed number of statements. */
export async function listPeople(actor: Actor): Promise<ListedPerson[]> {
  const { groupId, householdId } = actor
  const own = reachOf(actor, 'see-people') === 'any' ? {} : { householdId }
  const rows = await database().person.findMany({
    where: { groupId, ...own },
    select: {
      id: true,
      name: true,
      role: true,
      ageClass: true,
      skills: true,
      limits: true,
      allergies: true,
      availableFrom: true,
      availableUntil: true,
      active: true,
      userId: true,
      household: { select: { name: true } },
    },
    orderBy: [{ active: 'desc' }, { household: { name: 'asc' } }, { name: 'asc' }],
    take: MOST,
  })
  return rows.map(({ userId, household, role, ageClass, ...person }) => ({
    ...person,
    role: role as Role,
    ageClass: ageClass as AgeClass,
    household: household.name,
    hasAccount: userId !== null,
  }))
}
