import 'server-only'
import type { PolicyRoles } from '@/shared/access/policy'
import type { Reply } from './command'

/** One tap that came in by HTTP, before anybody was asked about it: who says to send it, under which key, what, and when. */
export interface ShortTap {
  readonly key: string
  readonly userId: string
  /** What the session began with; it counts only while the stored one is the same. */
  readonly sessionVersion: number
  readonly groupId: string
  readonly roles: PolicyRoles
  /** As it was sent: not parsed yet. */
  readonly input: unknown
  readonly mostAMinute: number
  readonly now: Date
}

/**
 * The plain case of a change in one statement, with all that the gate does: who is signed in and may, the count of changes a minute, the key,
 * the change, the history, the kept reply. One transaction.
 *
 * Null when anything is out of the ordinary; nothing was done then, and the gate decides and words it.
 */
export type ShortWay = (tap: ShortTap) => Promise<Reply | null>
