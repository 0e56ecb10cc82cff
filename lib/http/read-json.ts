import 'server-only'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'

const LONGEST_BODY_BYTES = 64 * 1024
const DEEPEST = 8
const LONGEST_ARRAY = 500

/** Reads a JSON body of at most 64 kB, 8 levels and 500 items a list; anything else is refused before it is looked at. */
export async function readJson(request: Request): Promise<Result<unknown, Refusal>> {
  if (!request.headers.get('content-type')?.toLowerCase().startsWith('application/json')) return refuse(wrongKind())
  const text = await readAtMost(request, LONGEST_BODY_BYTES)
  if (text === null) return refuse(tooLarge())
  try {
    const body: unknown = JSON.parse(text)
    return withinBounds(body, 1) ? ok(body) : refuse(tooLarge())
  } catch {
    return refuse({
      code: 'no-json',
      status: 400,
      what: 'Not saved: the body is no JSON.',
      instead: 'Send one JSON object with Content-Type application/json.',
    })
  }
}

async function readAtMost(request: Request, limit: number): Promise<string | null> {
  if (Number(request.headers.get('content-length') ?? 0) > limit) return null
  const reader = request.body?.getReader()
  if (!reader) return ''
  const chunks: Uint8Array[] = []
  let size = 0
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    size += part.value.byteLength
    if (size > limit) {
      await reader.cancel()
      return null
    }
    chunks.push(part.value)
  }
  return Buffer.concat(chunks).toString('utf8')
}

function withinBounds(value: unknown, depth: number): boolean {
  if (value === null || typeof value !== 'object') return true
  if (depth > DEEPEST) return false
  const members = Array.isArray(value) ? value : Object.values(value)
  return members.length <= LONGEST_ARRAY && members.every((member) => withinBounds(member, depth + 1))
}

const wrongKind = (): Refusal => ({
  code: 'wrong-content-type',
  status: 400,
  what: 'Not saved: this door takes JSON only.',
  instead: 'Send Content-Type application/json.',
})

const tooLarge = (): Refusal => ({
  code: 'too-large',
  status: 413,
  what: 'Not saved: too much at once.',
  why: 'A body may hold 64 kB, 8 levels and 500 items a list.',
  instead: 'Send less, in several requests.',
})
