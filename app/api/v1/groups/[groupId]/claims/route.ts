import { answerCommand } from '@/lib/http/answer-command'
import { claimJars } from '@/lib/services/day/claim-jars'

/** Asks for jars: `{ preparationId, householdId, jars }`, with an Idempotency-Key. */
export async function POST(request: Request, { params }: { params: Promise<{ groupId: string }> }): Promise<Response> {
  const { groupId } = await params
  return answerCommand(request, groupId, (input) => ({ command: claimJars, input }))
}
