import 'server-only'
import type { Refusal } from '@/shared/wording/refusal'

/** A refusal as RFC 9457 problem details. The type is a relative reference into our own list of codes. */
export function problemResponse(refusal: Refusal, headers: Record<string, string> = {}): Response {
  const { code, status, what, why, instead, fields } = refusal
  const body = { type: `/problems/${code}`, title: what, status, detail: why, instead, fields }
  return Response.json(body, {
    status,
    headers: {
      'content-type': 'application/problem+json',
      'cache-control': 'no-store',
      ...(status === 503 || status === 429 ? { 'retry-after': '5' } : {}),
      ...headers,
    },
  })
}
