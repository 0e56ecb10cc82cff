import 'server-only'
import { database } from '@/lib/db/client'
import { HOUSEHOLD_FIELDS, seenMark } from '@/lib/stores/editable-fields'
import type { Actor, Role } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'
import { householdAllergens } from '@/shared/people/household-allergens'

/** One household with the people in it. */
export interface HouseholdPage {
  readonly id: string
  readonly name: string
  readonly headcount: number
  readonly language: string
  readonly contact: string
  /** The household's own list, as it is edited. */
  readonly allergens: readonly string[]
  /** That list and those of its people. */
  readonly doesNotEat: readonly string[]
  readonly seen: string
  /** Null while it belongs to the group. */
  readonly leftAt: Date | null
  readonly people: readonly { readonly id: string; readonly name: string; readonly role: Role; readonly active: boolean }[]
}

/** A household of the group that this person may see, or null. */
export async function householdPage(actor: Actor, id: string): Promise<HouseholdPage | null> {
  if (!may(actor, 'see-households', id)) return null
  const row = await database().household.findUnique({
    where: { groupId_id: { groupId: actor.groupId, id } },
    select: {
      ...HOUSEHOLD_FIELDS,
      leftAt: true,
      people: { select: { id: true, name: true, role: true, active: true, allergies: true }, orderBy: { name: 'asc' } },
    },
  })
  if (!row) return null
  const { people, leftAt, ...fields } = row
  return {
    ...{ id, ...fields, leftAt, seen: seenMark(fields) },
    doesNotEat: householdAllergens(
      fields.allergens,
      people.filter(({ active }) => active),
    ),
    people: people.map(({ allergies: _, role, ...person }) => ({ ...person, role: role as Role })),
  }
}
