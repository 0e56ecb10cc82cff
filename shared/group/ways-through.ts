import type { Actor } from '@/shared/access/actor'
import { type Act, may } from '@/shared/access/policy'

/** One line of the menu; `path` follows the group's own address. */
export interface GroupWay {
  readonly path: string
  readonly label: string
  readonly exact?: boolean
}

const WAYS: readonly (GroupWay & { readonly act: Act })[] = [
  { act: 'see-group', path: '', label: 'Start', exact: true },
  { act: 'see-claims', path: '/offers', label: 'Offers' },
  { act: 'see-households', path: '/households', label: 'Households' },
  { act: 'see-people', path: '/people', label: 'People' },
  { act: 'invite', path: '/invites', label: 'Invitations' },
  { act: 'see-kitchen', path: '/kitchens', label: 'Kitchens' },
  { act: 'see-recipes', path: '/recipes', label: 'Recipes' },
  { act: 'see-stock', path: '/stock', label: 'Stock' },
  { act: 'import', path: '/import', label: 'Files in' },
]

/** The ways through a group that are open to this person. */
export const waysThrough = (actor: Pick<Actor, 'role' | 'householdId'>): GroupWay[] =>
  WAYS.filter(({ act }) => may(actor, act)).map(({ act: _, ...way }) => way)
