import 'server-only'
import { env } from '@/lib/env'
import { countInWindow } from '@/lib/services/count-in-window'
import type { Refusal } from '@/shared/wording/refusal'
import { fromOurPages } from './same-origin'

/** What a posted form must pass before it is looked at: our own page, and not faster than a hand can tap. */
export async function guardAction(headers: Headers, userId: string): Promise<Refusal | null> {
  const ours = fromOurPages(headers)
  if (!ours.ok) return ours.problem
  const wait = await countInWindow(`changes:${userId}`, env().changesPerMinute, 60)
  if (wait === 0) return null
  return {
    code: 'too-many-requests',
    status: 429,
    what: 'Not saved: too many entries in a minute.',
    instead: `Wait ${wait} seconds and send it again.`,
  }
}
