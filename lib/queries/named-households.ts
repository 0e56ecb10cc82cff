import 'server-only'
import { database } from '@/lib/db/client'
import type { NamedHousehold } from '@/shared/people/still-here'

/** All households that the group ever had, by name. One statement. */
export async function namedHouseholds(groupId: string): Promise<NamedHousehold[]> {
  const rows = await database().household.findMany({
    where: { groupId },
    select: { id: true, name: true, leftAt: true },
    orderBy: { name: 'asc' },
  })
  return rows.map(({ leftAt, ...household }) => ({ ...household, hasLeft: leftAt !== null }))
}
