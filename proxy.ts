import { type NextRequest, NextResponse } from 'next/server'

/** A client must not choose what the page trusts, nor the id under which its request is logged. */
const OURS_ALONE = ['content-security-policy', 'content-security-policy-report-only', 'x-nonce', 'x-request-id']

/** Gives each request its content security policy with a fresh nonce, and its id. Who may do what is checked where data is read and written. */
export function proxy(request: NextRequest): NextResponse {
  const nonce = btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(16))))
  const policy = contentSecurityPolicy(nonce)
  const requestId = crypto.randomUUID()

  const headers = new Headers(request.headers)
  for (const name of OURS_ALONE) headers.delete(name)
  headers.set('content-security-policy', policy)
  headers.set('x-nonce', nonce)
  headers.set('x-request-id', requestId)

  const response = NextResponse.next({ request: { headers } })
  response.headers.set('Content-Security-Policy', policy)
  response.headers.set('X-Request-Id', requestId)
  return response
}

export const config = { matcher: ['/((?!_next/static/).*)'] }

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
