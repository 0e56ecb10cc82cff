import { type NextRequest, NextResponse } from 'next/server'
import { fromOurPages } from '@/lib/http/same-origin'

/** A client must not choose what the page trusts, nor the id under which its request is logged. */
const OURS_ALONE = ['content-security-policy', 'content-security-policy-report-only', 'x-nonce', 'x-request-id']

const LONGEST_QUERY = 2048
const LONGEST_FORM_BYTES = 64 * 1024

/**
 * Gives each request its content security policy with a fresh nonce, and its id, and turns away what no page of ours sends.
 * Who may do what is checked where data is read and written.
 */
export function proxy(request: NextRequest): NextResponse {
  const nonce = btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(16))))
  const policy = contentSecurityPolicy(nonce)
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

export const config = { matcher: ['/((?!_next/static/).*)'] }

/** No address of ours is that long or holds NUL, which no store keeps and every query would break on. */
function refuseAddress({ pathname, search }: { pathname: string; search: string }): NextResponse | null {
  if (search.length > LONGEST_QUERY) return sayPlainly(414, 'This address is too long. Open Lidsong at its start and go on from there.')
  if (/%00/.test(pathname + search))
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

function contentSecurityPolicy(nonce: string): string {
  // React rebuilds server errors with eval while developing, and only then.
  const whileDeveloping = process.env.NODE_ENV === 'development' ? " 'unsafe-eval'" : ''
  return [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${whileDeveloping}`,
    `style-src 'self' 'nonce-${nonce}'`,
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ')
}
