/** What a person may be in a group. A person without a role in the group is not in it at all. */
export const ROLES = ['organiser', 'station-lead', 'operator', 'member', 'helper', 'visitor'] as const
export type Role = (typeof ROLES)[number]

/** Children are under 14, teens 14 to 17: neither may be put at heat, knives or canners by the planner (common practice). */
export const AGE_CLASSES = ['adult', 'teen', 'child'] as const
export type AgeClass = (typeof AGE_CLASSES)[number]

/** A signed-in person acting inside one group. */
export interface Actor {
  readonly userId: string
  readonly personId: string
  readonly groupId: string
  readonly householdId: string
  readonly name: string
  readonly role: Role
}

const ROLE_NAMES: Readonly<Record<Role, string>> = {
  organiser: 'Organiser',
  'station-lead': 'Station lead',
  operator: 'Operator',
  member: 'Household member',
  helper: 'Helper',
  visitor: 'Visitor',
}

/** "Station lead", as said on screens. */
export const roleName = (role: Role): string => ROLE_NAMES[role]

const AGE_NAMES: Readonly<Record<AgeClass, string>> = { adult: 'Adult', teen: '14 to 17', child: 'Under 14' }

/** "Under 14", as said on screens. */
export const ageName = (ageClass: AgeClass): string => AGE_NAMES[ageClass]
