import { z } from 'zod'
import { ROLES } from '@/shared/access/actor'
import { Id, line, whole } from './fields'
import { EmailAddress } from './sign-in'

/** Longest life of an invitation, in days: the group's own custom (common practice). */
export const LONGEST_INVITE_DAYS = 30

/** What the invitation form sends. */
export const InvitePerson = z.strictObject({
  role: z.enum(ROLES, 'Choose a role.').default('member'),
  householdId: Id.optional(),
  email: EmailAddress.optional(),
  days: whole(1, LONGEST_INVITE_DAYS, 'How many days is it good for?').default(14),
})
export type InvitePerson = z.infer<typeof InvitePerson>

/** What the take-back button sends. */
export const RevokeInvite = z.strictObject({ inviteId: Id })
export type RevokeInvite = z.infer<typeof RevokeInvite>

/** The secret at the end of an invitation's address: 32 bytes in base64url (RFC 4648, section 5). */
export const InviteToken = z.string().regex(/^[\w-]{43}$/)

/** What somebody sends who takes an invitation up. The household's name counts only when the invitation names none. */
export const AcceptInvite = z.strictObject({
  token: InviteToken,
  name: line(80, 'Say what neighbours call you.'),
  householdName: line(60, 'Give your household a name.').optional(),
  headcount: whole(1, 50, 'How many people live in it?').default(1),
})
export type AcceptInvite = z.infer<typeof AcceptInvite>
