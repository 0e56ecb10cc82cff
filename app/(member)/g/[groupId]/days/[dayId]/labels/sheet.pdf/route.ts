import { currentActor, currentUser } from '@/lib/auth/current-actor'
import { problemResponse } from '@/lib/http/problem'
import { drawLabelSheet } from '@/lib/print/label-sheet'
import { labelJars } from '@/lib/queries/label-jars'
import { readDayHead } from '@/lib/queries/day-head'
import { may } from '@/shared/access/policy'
import { LabelPrintQuery } from '@/shared/forms/label-print'
import { labelSheet } from '@/shared/trace/label-sheets'
import { badInput, notFound, signInFirst } from '@/shared/wording/refusal'
import { sayLabelNote, sayLabelProblem } from '@/shared/wording/say-labels'

type Params = { params: Promise<{ groupId: string; dayId: string }> }

/** The labels of the day's sealed jars as a vector PDF, to print. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
  const { groupId, dayId } = await params
  const actor = await currentActor(groupId)
  if (!actor) return problemResponse((await currentUser()) ? notFound('Group') : signInFirst())
  if (!may(actor, 'print-labels')) return problemResponse(notFound('Label sheet'))
  const query = LabelPrintQuery.safeParse(Object.fromEntries(new URL(request.url).searchParams))
  if (!query.success) return problemResponse(badInput({ sheet: ['Choose a sheet, a batch and a cell from the page of labels.'] }))
  const [day, labels] = await Promise.all([readDayHead(groupId, dayId), labelJars(groupId, dayId, query.data.batch)])
  const sheet = labelSheet(query.data.sheet)
  if (!day || !sheet) return problemResponse(notFound('Canning day'))

  const title = `Labels, ${day.name}, ${query.data.batch ?? 'all batches'}`
  const note = sayLabelNote(labels, query.data.batch, day.date)
  const drawn = await drawLabelSheet(labels, { sheet, startCell: query.data.start, title, note, printedAt: new Date() })
  if (!drawn.ok) return problemResponse(sayLabelProblem(drawn.problem))
  const name = `labels-${day.date}-${query.data.batch ?? 'all'}.pdf`
  return new Response(Buffer.from(drawn.value), {
    headers: {
      'content-type': 'application/pdf',
      'content-disposition': `attachment; filename="${name}"`,
      'cache-control': 'private, no-store',
    },
  })
}
