import { answerFile } from '@/lib/http/answer-file'
import { reckoningFile } from '@/lib/print/reckoning-file'
import { reckoningPage } from '@/lib/queries/reckoning'

type Params = { params: Promise<{ groupId: string; dayId: string }> }

/** The money of a day as a file: the whole of it, or one's own. */
export async function GET(_: Request, { params }: Params): Promise<Response> {
  const { groupId, dayId } = await params
  return answerFile(groupId, 'see-reckoning', 'Reckoning', async (actor) => {
    const page = await reckoningPage(actor, dayId)
    return page && reckoningFile(page)
  })
}
