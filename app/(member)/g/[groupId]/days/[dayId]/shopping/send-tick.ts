import type { KeptTick, TickState } from '@/shared/supplies/kept-ticks'

const LONGEST_WAIT_MS = 10_000

/** What came of sending one: how it stands now, or why it has to wait. */
export type SentTick = TickState | 'no-network' | 'sign-in'

/** Sends one tick under its own key: however often it arrives, it counts once. */
export async function sendTick(groupId: string, dayId: string, { key, type, body }: KeptTick): Promise<SentTick> {
  try {
    const response = await fetch(`/api/v1/groups/${encodeURIComponent(groupId)}/days/${encodeURIComponent(dayId)}/shopping`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'idempotency-key': key },
      body: JSON.stringify({ type, ...body }),
      signal: AbortSignal.timeout(LONGEST_WAIT_MS),
    })
    if (response.ok) return { kind: 'sent', at: Date.parse(response.headers.get('date') ?? '') || 0 }
    if (response.status === 401) return 'sign-in'
    if (response.status >= 500 || response.status === 429) return 'no-network'
    const problem = (await response.json()) as { title?: string; detail?: string; instead?: string }
    return { kind: 'refused', why: [problem.title, problem.detail, problem.instead].filter(Boolean).join(' ') }
  } catch {
    return 'no-network'
  }
}
