import { answerFile } from '@/lib/http/answer-file'
import { sharesFile } from '@/lib/print/shares-file'
import { readDayHead } from '@/lib/queries/day-head'
import { sharesPage } from '@/lib/queries/shares'
import { may } from '@/shared/access/policy'

type Params = { params: Promise<{ groupId: string; dayId: string }> }

/** The share tables of a day as a file, with what is needed to redo them. */
export async function GET(_: Request, { params }: Params): Promise<Response> {
  const { groupId, dayId } = await params
  return answerFile(groupId, 'see-shares', 'Shares', async (actor) => {
    const day = await readDayHead(groupId, dayId)
    if (!day) return null
    const page = await sharesPage(groupId, dayId, day.shareRule)
    return sharesFile(page, day.date, (householdId) => may(actor, 'see-households', householdId))
  })
}
