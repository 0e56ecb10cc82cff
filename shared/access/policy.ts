import type { Actor, Role } from './actor'

/** How far a role's permission reaches: nothing, things of the person's own household, or everything in the group. */
export type Reach = 'none' | 'own' | 'any'

const row = (organiser: Reach, stationLead: Reach, operator: Reach, member: Reach, helper: Reach, visitor: Reach): Record<Role, Reach> => ({
  organiser,
  'station-lead': stationLead,
  operator,
  member,
  helper,
  visitor,
})

/**
 * The one table of who may do what. A button and the service behind it ask the same row.
 *
 * Columns: organiser, station lead, operator, household member, helper, visitor. "own" is the person's own household.
 */
export const POLICY = {
  // the group
  'see-group': row('any', 'any', 'any', 'any', 'any', 'any'),
  'edit-group': row('any', 'none', 'none', 'none', 'none', 'none'),
  'see-households': row('any', 'any', 'own', 'own', 'own', 'none'),
  'edit-household': row('any', 'own', 'own', 'own', 'none', 'none'),
  'add-household': row('any', 'none', 'none', 'none', 'none', 'none'),
  'remove-household': row('any', 'none', 'none', 'none', 'none', 'none'),
  'see-people': row('any', 'any', 'own', 'own', 'own', 'none'),
  'edit-person': row('any', 'own', 'own', 'own', 'none', 'none'),
  'change-role': row('any', 'none', 'none', 'none', 'none', 'none'),
  invite: row('any', 'none', 'none', 'none', 'none', 'none'),
  import: row('any', 'none', 'none', 'none', 'none', 'none'),
  'see-history': row('any', 'none', 'none', 'none', 'none', 'none'),
  // the kitchen and its stock
  'see-kitchen': row('any', 'any', 'any', 'any', 'any', 'none'),
  'edit-kitchen': row('any', 'none', 'none', 'none', 'none', 'none'),
  'see-stock': row('any', 'any', 'any', 'any', 'none', 'none'),
  'see-jar-ledger': row('any', 'any', 'own', 'own', 'none', 'none'),
  'edit-stock': row('any', 'any', 'none', 'none', 'none', 'none'),
  // the group's own recipes; who may put one on a day also answers for the conditions of its process
  'see-recipes': row('any', 'any', 'any', 'any', 'any', 'none'),
  'edit-recipes': row('any', 'any', 'none', 'none', 'none', 'none'),
  // before the day
  'see-day': row('any', 'any', 'any', 'any', 'any', 'any'),
  'edit-day': row('any', 'none', 'none', 'none', 'none', 'none'),
  'see-claims': row('any', 'any', 'any', 'any', 'none', 'none'),
  'claim-jars': row('any', 'own', 'own', 'own', 'none', 'none'),
  'see-pledges': row('any', 'any', 'own', 'own', 'own', 'none'),
  pledge: row('any', 'own', 'own', 'own', 'own', 'none'),
  'see-shopping': row('any', 'any', 'any', 'any', 'any', 'none'),
  'buy-item': row('any', 'own', 'own', 'own', 'own', 'none'),
  'edit-shopping': row('any', 'none', 'none', 'none', 'none', 'none'),
  'see-plan': row('any', 'any', 'any', 'any', 'any', 'none'),
  'plan-day': row('any', 'none', 'none', 'none', 'none', 'none'),
  // on the day
  'see-floor': row('any', 'any', 'any', 'any', 'any', 'none'),
  'receive-ingredients': row('any', 'any', 'none', 'none', 'none', 'none'),
  'run-batch': row('any', 'any', 'any', 'none', 'none', 'none'),
  'run-load': row('any', 'none', 'any', 'none', 'none', 'none'),
  'note-jar': row('any', 'any', 'any', 'none', 'any', 'none'),
  'note-incident': row('any', 'any', 'any', 'any', 'any', 'none'),
  // after the day
  'check-seals': row('any', 'any', 'any', 'none', 'none', 'none'),
  'see-shares': row('any', 'any', 'any', 'any', 'none', 'none'),
  'award-jars': row('any', 'none', 'none', 'none', 'none', 'none'),
  'hand-over': row('any', 'any', 'none', 'none', 'none', 'none'),
  'print-labels': row('any', 'any', 'none', 'none', 'none', 'none'),
  'see-reckoning': row('any', 'own', 'own', 'own', 'none', 'none'),
  'edit-reckoning': row('any', 'none', 'none', 'none', 'none', 'none'),
  'mark-payment': row('any', 'own', 'own', 'own', 'none', 'none'),
  'close-day': row('any', 'none', 'none', 'none', 'none', 'none'),
  'trace-jar': row('any', 'any', 'any', 'own', 'none', 'none'),
} as const satisfies Record<string, Record<Role, Reach>>

export type Act = keyof typeof POLICY

/** The roles that may do something for any household, and those that may for their own alone. */
export interface PolicyRoles {
  readonly any: readonly Role[]
  readonly own: readonly Role[]
}

/** One row of the table by its columns, for a question that the database answers by itself. */
export function rolesFor(act: Act): PolicyRoles {
  const roles = Object.entries(POLICY[act]) as [Role, Reach][]
  const reaching = (reach: Reach) => roles.filter((role) => role[1] === reach).map(([role]) => role)
  return { any: reaching('any'), own: reaching('own') }
}

/** How far `actor` may go with `act`. */
export const reachOf = (actor: Pick<Actor, 'role'>, act: Act): Reach => POLICY[act][actor.role]

/**
 * May this person do that?
 *
 * @param householdId - the household the thing belongs to; left out when the question is "to anything at all" (is there any use in showing the page?)
 */
export function may(actor: Pick<Actor, 'role' | 'householdId'>, act: Act, householdId?: string | null): boolean {
  const reach = reachOf(actor, act)
  if (reach === 'any') return true
  if (reach === 'none') return false
  return householdId === undefined || householdId === actor.householdId
}
