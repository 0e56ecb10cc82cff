import { answerFile } from '@/lib/http/answer-file'
import { claimsFile } from '@/lib/print/claims-file'
import { claimRoom } from '@/lib/queries/claim-room'
import { dayProducts } from '@/lib/queries/day-claims'
import { readDayHead } from '@/lib/queries/day-head'

type Params = { params: Promise<{ groupId: string; dayId: string }> }

/** Claims and waiting lists as a file for a spreadsheet. It names every household, so it is for whoever asks in anybody's name. */
export async function GET(_: Request, { params }: Params): Promise<Response> {
  const { groupId, dayId } = await params
  return answerFile(groupId, 'edit-day', 'Claims', async () => {
    const day = await readDayHead(groupId, dayId)
    return day && claimsFile(day.date, await dayProducts(groupId, dayId), await claimRoom(groupId, dayId, day.timeZone))
  })
}
