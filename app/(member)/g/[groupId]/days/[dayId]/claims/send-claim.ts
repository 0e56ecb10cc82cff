import type { Refusal } from '@/app/_ui/notice'

/** How a claim was answered; `unsent` when nobody knows whether it arrived. */
export type ClaimAnswer = { kind: 'saved'; jars: number } | { kind: 'refused'; refusal: Refusal } | { kind: 'unsent' }

const LONGEST_WAIT_MS = 10_000

/** Sends one claim. The same key sent again is the same tap. */
export async function sendClaim(
  groupId: string,
  claim: { preparationId: string; householdId: string; jars: number },
  key: string,
): Promise<ClaimAnswer> {
  try {
    const response = await fetch(`/api/v1/groups/${encodeURIComponent(groupId)}/claims`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', 'idempotency-key': key },
      body: JSON.stringify(claim),
      signal: AbortSignal.timeout(LONGEST_WAIT_MS),
    })
    if (response.ok) return { kind: 'saved', jars: claim.jars }
    if (response.status >= 500) return { kind: 'unsent' }
    const problem = (await response.json()) as { title?: string; detail?: string; instead?: string }
    return { kind: 'refused', refusal: { what: problem.title ?? 'Not saved.', why: problem.detail, instead: problem.instead } }
  } catch {
    return { kind: 'unsent' }
  }
}
