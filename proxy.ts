import { type NextRequest, NextResponse } from 'next/server'
import { fromOurPages } from '@/lib/http/same-origin'
import { contentSecurityPolicy, holdsNul, isQueryTooLong, OURS_ALONE } from '@/shared/http/answer-headers.mjs'

const LONGEST_FORM_BYTES = 64 * 1024

/**
 * Gives each request its content security policy with a fresh nonce, and its id, and turns away what no page of ours sends.
 * Who may do what is checked where data is read and written.
 */
export function proxy(request: NextRequest): NextResponse {
  const nonce = btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(16))))
  const policy = contentSecurityPolicy(nonce, { allowsEval: process.env.NODE_ENV === 'development' })
  const requestId = crypto.randomUUID()

  const headers = new Headers(request.headers)
  for (const name of OURS_ALONE) headers.delete(name)
  headers.set('content-security-policy', policy)
  headers.set('x-nonce', nonce)
  headers.set('x-request-id', requestId)

  const response = refuseAddress(request.nextUrl) ?? refuseForm(request) ?? NextResponse.next({ request: { headers } })
  response.headers.set('Content-Security-Policy', policy)
  response.headers.set('X-Request-Id', requestId)
  return response
}

/** Built files have a policy of their own. A request of /api/v1 comes here unless guard-api.mjs has done all this; a client cannot say that it has. */
export const config = {
  matcher: [{ source: '/((?!_next/static/|api/v1/).*)' }, { source: '/(api/v1/.*)', missing: [{ type: 'header', key: 'x-guarded' }] }],
}

/** No address of ours is that long or holds NUL. */
function refuseAddress({ pathname, search }: { pathname: string; search: string }): NextResponse | null {
  if (isQueryTooLong(search)) return sayPlainly(414, 'This address is too long. Open Lidsong at its start and go on from there.')
  if (holdsNul(pathname + search))
    return sayPlainly(400, 'This address holds a character that is none. Open Lidsong at its start and go on from there.')
  return null
}

/** A posted form comes from our own page and is short. /api/v1 answers for itself, in JSON. */
function refuseForm({ method, headers, nextUrl }: NextRequest): NextResponse | null {
  if (method === 'GET' || method === 'HEAD' || nextUrl.pathname.startsWith('/api/v1/')) return null
  if (!fromOurPages(headers).ok)
    return sayPlainly(403, 'Not saved: the form did not come from this site. Open Lidsong itself and enter it there.')
  if (Number(headers.get('content-length')) > LONGEST_FORM_BYTES)
    return sayPlainly(413, 'Not saved: a form may hold 64 kB. Go back, shorten what you typed and send it again.')
  return null
}

const sayPlainly = (status: number, text: string): NextResponse =>
  new NextResponse(text, { status, headers: { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store' } })
