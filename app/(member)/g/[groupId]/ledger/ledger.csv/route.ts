import { answerFile } from '@/lib/http/answer-file'
import { ledgerFile } from '@/lib/print/ledger-file'
import { groupHead } from '@/lib/queries/group-head'
import { jarLedgerPage } from '@/lib/queries/jar-ledger'
import { dateIn } from '@/shared/time/calendar-date'

/** The jar ledger as a file for a spreadsheet. */
export async function GET(_: Request, { params }: { params: Promise<{ groupId: string }> }): Promise<Response> {
  const { groupId } = await params
  return answerFile(groupId, 'see-jar-ledger', 'Jar ledger', async (actor) => {
    const [page, { timeZone }] = await Promise.all([jarLedgerPage(actor), groupHead(groupId)])
    return ledgerFile(page, dateIn(timeZone, new Date()))
  })
}
