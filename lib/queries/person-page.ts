import 'server-only'
import { database } from '@/lib/db/client'
import { PERSON_FIELDS, seenMark } from '@/lib/stores/editable-fields'
import type { Actor, AgeClass, Role } from '@/shared/access/actor'
import { may } from '@/shared/access/policy'

/** One person, as far as their form shows them. */
export interface PersonPage {
  readonly id: string
  readonly name: string
  readonly householdId: string
  readonly household: string
  readonly role: Role
  readonly ageClass: AgeClass
  readonly skills: readonly string[]
  readonly limits: readonly string[]
  readonly allergies: readonly string[]
  readonly languages: readonly string[]
  readonly availableFrom: number | null
  readonly availableUntil: number | null
  readonly active: boolean
  readonly hasAccount: boolean
  readonly seen: string
}

/** A person of the group that the actor may see, or null. */
export async function personPage(actor: Actor, id: string): Promise<PersonPage | null> {
  const row = await database().person.findUnique({
    where: { groupId_id: { groupId: actor.groupId, id } },
    select: { ...PERSON_FIELDS, role: true, active: true, userId: true, household: { select: { name: true } } },
  })
  if (!row || !may(actor, 'see-people', row.householdId)) return null
  const { role, active, userId, household, ...fields } = row
  const ageClass = fields.ageClass as AgeClass
  return {
    id,
    ...fields,
    ageClass,
    role: role as Role,
    active,
    hasAccount: userId !== null,
    household: household.name,
    seen: seenMark(fields),
  }
}
