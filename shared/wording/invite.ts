import type { Refusal } from './refusal'

/** Why an invitation cannot be taken up. Each is said apart, because what to do differs. */
export type InviteProblem = 'expired' | 'used' | 'revoked'

const WHYS: Readonly<Record<InviteProblem, readonly [what: string, why: string, instead: string]>> = {
  expired: ['This invitation has expired.', 'It was good for some days only.', 'Ask the organiser for a new one.'],
  used: [
    'This invitation was taken up already.',
    'It works once, for one person.',
    'If that was you, sign in. Otherwise ask the organiser for one of your own.',
  ],
  revoked: ['This invitation was taken back.', 'The organiser no longer offers it.', 'Ask the organiser whether it was meant for you.'],
}

/** The three parts of the answer, as 410 Gone. */
export function inviteIsOver(problem: InviteProblem): Refusal {
  const [what, why, instead] = WHYS[problem]
  return { code: `invite-${problem}`, status: 410, what, why, instead }
}

/** What an invitation's dates say at this moment; null while it may be taken up. Taken back is said before taken up, and that before expired. */
export function inviteProblem(invite: { revokedAt: Date | null; usedAt: Date | null; expiresAt: Date }, now: Date): InviteProblem | null {
  if (invite.revokedAt) return 'revoked'
  if (invite.usedAt) return 'used'
  return invite.expiresAt <= now ? 'expired' : null
}
