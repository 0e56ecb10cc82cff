import { answerLive } from '@/lib/http/answer-live'

/** Notices of one canning day as server-sent events: "look again", and nothing of what changed. */
export async function GET(request: Request, { params }: { params: Promise<{ groupId: string; dayId: string }> }): Promise<Response> {
  const { groupId, dayId } = await params
  return answerLive(request, groupId, dayId)
}
