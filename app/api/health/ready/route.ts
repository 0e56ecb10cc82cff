import { checkReadiness } from '@/lib/health/check-readiness'

export const dynamic = 'force-dynamic'

/** May this process be sent requests? 503 with the reasons when not. `late` names the queues that stand still, where one does. */
export async function GET(): Promise<Response> {
  const { reasons, late } = await checkReadiness()
  const headers = { 'Cache-Control': 'no-store' }
  if (reasons.length === 0) return Response.json({ status: 'ready', ...(late.length > 0 ? { late } : {}) }, { headers })
  return Response.json({ status: 'not-ready', reasons }, { status: 503, headers: { ...headers, 'Retry-After': '2' } })
}
