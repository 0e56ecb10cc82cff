import { answerFile } from '@/lib/http/answer-file'
import { shoppingFile } from '@/lib/print/shopping-file'
import { shoppingPage } from '@/lib/queries/shopping'

type Params = { params: Promise<{ groupId: string; dayId: string }> }

/** The shopping list as a file for a spreadsheet. */
export async function GET(_: Request, { params }: Params): Promise<Response> {
  const { groupId, dayId } = await params
  return answerFile(groupId, 'see-shopping', 'Shopping list', async (actor) => {
    const page = await shoppingPage(actor, dayId)
    return page && shoppingFile(page)
  })
}
