import 'server-only'
import { database } from '@/lib/db/client'
import type { Role } from '@/shared/access/actor'

/** One group that somebody belongs to, and as what. */
export interface MyGroup {
  readonly id: string
  readonly name: string
  readonly role: Role
  readonly household: string
}

/** The groups of an account, by name. A fixed number of statements. */
export async function myGroups(userId: string): Promise<MyGroup[]> {
  const people = await database().person.findMany({
    where: { userId, active: true },
    select: { role: true, group: { select: { id: true, name: true } }, household: { select: { name: true } } },
    orderBy: { group: { name: 'asc' } },
    take: 50,
  })
  return people.map(({ role, group, household }) => ({ ...group, role: role as Role, household: household.name }))
}
