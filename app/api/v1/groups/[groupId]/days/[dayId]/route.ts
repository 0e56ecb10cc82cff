import { answerQuery } from '@/lib/http/answer-query'
import { dayForApi } from '@/lib/queries/day-for-api'

/** One canning day: hours, products, and what the asker may see of claims and plan. */
export async function GET(_: Request, { params }: { params: Promise<{ groupId: string; dayId: string }> }): Promise<Response> {
  const { groupId, dayId } = await params
  return answerQuery(groupId, 'see-day', 'Canning day', (actor) => dayForApi(actor, dayId))
}
