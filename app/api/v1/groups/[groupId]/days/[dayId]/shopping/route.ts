import { answerCommand } from '@/lib/http/answer-command'
import { chooseShoppingEvent } from '@/lib/services/shopping/choose-shopping-event'

/** Enters one tick of the shopping list, or takes one back: `{ type, … }`, with an Idempotency-Key. */
export async function POST(request: Request, { params }: { params: Promise<{ groupId: string; dayId: string }> }): Promise<Response> {
  const { groupId, dayId } = await params
  return answerCommand(request, groupId, chooseShoppingEvent(dayId))
}
