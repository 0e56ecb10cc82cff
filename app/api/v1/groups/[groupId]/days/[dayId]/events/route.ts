import { answerCommand } from '@/lib/http/answer-command'
import { chooseFloorEvent } from '@/lib/services/floor/choose-floor-event'

/** Notes one thing that happened on the floor: `{ type, … }`, with an Idempotency-Key. */
export async function POST(request: Request, { params }: { params: Promise<{ groupId: string; dayId: string }> }): Promise<Response> {
  const { groupId, dayId } = await params
  return answerCommand(request, groupId, chooseFloorEvent(dayId))
}
