import 'server-only'
import { refuse, ok, type Result } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'
import { env } from '@/lib/env'

/**
 * A change must come from our own pages: the Origin is ours, or the browser says same-origin.
 *
 * An absent or "null" Origin without that is refused: a cookie alone never changes anything.
 */
export function fromOurPages(headers: Headers): Result<true, Refusal> {
  const origin = headers.get('origin')
  if (origin && origin !== 'null') return origin === new URL(env().baseUrl).origin ? ok(true) : refuse(FOREIGN)
  return headers.get('sec-fetch-site') === 'same-origin' ? ok(true) : refuse(FOREIGN)
}

const FOREIGN: Refusal = {
  code: 'foreign-page',
  status: 403,
  what: 'Not saved: the request did not come from this site.',
  instead: 'Open Lidsong itself and enter it there.',
}
