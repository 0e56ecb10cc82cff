export const dynamic = 'force-dynamic'

/** The process answers; nothing else is asked. */
export function GET(): Response {
  return Response.json({ status: 'live' }, { headers: { 'Cache-Control': 'no-store' } })
}
