import 'server-only'
import { currentActor, currentUser } from '@/lib/auth/current-actor'
import { runCommand } from '@/lib/commands/run-command'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import { readImport } from '@/lib/services/import/read-import'
import { decodeForm } from '@/shared/forms/decode-form'
import { notFound, notSaved, type Refusal, signInFirst } from '@/shared/wording/refusal'
import { guardAction } from './guard-action'
import { problemResponse } from './problem'

/** Four bytes a character at most, and the rest of the form. */
const MOST_BYTES = 16_100_000

/** Takes one file in and goes on to the page that shows what is in it; a refusal goes back to the form with its code. Works without script. */
export async function answerImport(request: Request, groupId: string): Promise<Response> {
  try {
    const actor = await currentActor(groupId)
    if (!actor) return problemResponse((await currentUser()) ? notFound('Group') : signInFirst())
    const stopped = await guardAction(request.headers, actor.userId)
    if (stopped) return problemResponse(stopped)
    const read = await readForm(request)
    if ('code' in read) return back(groupId, read.code)
    const done = await runCommand(readImport, { actor, idempotencyKey: read.key, input: read.input })
    if (!done.ok && done.problem.status === 403) return problemResponse(done.problem)
    return done.ok ? goTo(`/g/${groupId}/import/${done.value.reply.importId}`) : back(groupId, done.problem.code)
  } catch (error) {
    if (error instanceof DatabaseUnavailable) return problemResponse(notSaved(error.isOutcomeUnknown))
    throw error
  }
}

async function readForm(request: Request): Promise<{ key: string; input: Record<string, unknown> } | Pick<Refusal, 'code'>> {
  const length = Number(request.headers.get('content-length') ?? Number.NaN)
  if (!(length <= MOST_BYTES)) return { code: 'file-too-long' }
  const form = await request.formData().catch(() => null)
  const file = form?.get('file')
  if (!form || !(file instanceof File) || file.size === 0) return { code: 'no-file' }
  const text = readUtf8(await file.arrayBuffer())
  if (text === null) return { code: 'not-text' }
  const { input } = decodeForm(form)
  return { key: String(form.get('_key') ?? ''), input: { ...input, name: file.name.slice(0, 120) || 'file', text } }
}

function readUtf8(bytes: ArrayBuffer): string | null {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    return text.includes('\0') ? null : text
  } catch {
    return null
  }
}

const goTo = (path: string) => new Response(null, { status: 303, headers: { location: path, 'cache-control': 'no-store' } })

const back = (groupId: string, code: string) => goTo(`/g/${groupId}/import?refused=${encodeURIComponent(code)}`)
