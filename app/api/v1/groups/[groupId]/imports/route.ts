import { answerImport } from '@/lib/http/answer-import'

/** Takes a CSV file in, as a form sends it, and goes on to the page that shows every line of it that is broken. */
export async function POST(request: Request, { params }: { params: Promise<{ groupId: string }> }): Promise<Response> {
  const { groupId } = await params
  return answerImport(request, groupId)
}
