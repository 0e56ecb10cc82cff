import 'server-only'
import { database } from '@/lib/db/client'
import type { PledgeKind } from '@/shared/forms/pledge'

/** One promise, as the page lists it. */
export interface ListedPledge {
  readonly id: string
  readonly kind: PledgeKind
  readonly householdId: string
  readonly household: string
  readonly person: string | null
  readonly item: string
  readonly quantity: number
  readonly unit: string
  readonly creditMinor: number | null
  readonly pool: string
  readonly note: string
}

/** What was promised for a day: by everybody, or by one household. A fixed number of statements. */
export async function dayPledges(groupId: string, dayId: string, householdId?: string): Promise<ListedPledge[]> {
  const rows = await database().pledge.findMany({
    where: { groupId, dayId, ...(householdId === undefined ? {} : { householdId }) },
    orderBy: [{ kind: 'asc' }, { createdAt: 'asc' }, { id: 'asc' }],
    select: {
      id: true,
      kind: true,
      householdId: true,
      personId: true,
      item: true,
      quantity: true,
      unit: true,
      creditMinor: true,
      pool: true,
      note: true,
      household: { select: { name: true, people: { select: { id: true, name: true } } } },
    },
  })
  return rows.map(({ household, personId, quantity, kind, ...row }) => ({
    ...row,
    kind: kind as PledgeKind,
    quantity: quantity.toNumber(),
    household: household.name,
    person: household.people.find((person) => person.id === personId)?.name ?? null,
  }))
}

/** People to name in a promise: of all households that are still in the group, or of one. */
export function pledgePeople(groupId: string, householdId?: string) {
  return database().household.findMany({
    where: { groupId, leftAt: null, ...(householdId !== undefined && { id: householdId }) },
    orderBy: { name: 'asc' },
    select: {
      id: true,
      name: true,
      people: { where: { active: true }, orderBy: { name: 'asc' }, select: { id: true, name: true } },
    },
  })
}
