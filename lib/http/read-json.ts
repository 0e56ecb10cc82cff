import 'server-only'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'

const LONGEST_BODY_BYTES = 64 * 1024
const DEEPEST = 8
const LONGEST_ARRAY = 500

const JSON_TYPE = /^application\/json\s*(;|$)/i

/** Reads a JSON body of at most 64 kB, 8 levels and 500 items a list; anything else is refused before it is looked at. */
export async function readJson(request: Request): Promise<Result<unknown, Refusal>> {
  if (!JSON_TYPE.test(request.headers.get('content-type') ?? '')) return refuse(wrongKind())
  const bytes = await readAtMost(request, LONGEST_BODY_BYTES)
  if (bytes === null) return refuse(tooLarge())
  const body = parse(bytes)
  if (body === undefined) return refuse(noJson())
  if (!withinBounds(body, 1)) return refuse(tooLarge())
  return isStorable(body) ? ok(body) : refuse(noText())
}

/** The value that the bytes spell in UTF-8; undefined when they spell none. */
function parse(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes))
  } catch {
    return undefined
  }
}

async function readAtMost(request: Request, limit: number): Promise<Uint8Array | null> {
  if (Number(request.headers.get('content-length') ?? 0) > limit) return null
  const reader = request.body?.getReader()
  if (!reader) return new Uint8Array()
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
  return Buffer.concat(chunks)
}

function withinBounds(value: unknown, depth: number): boolean {
  if (value === null || typeof value !== 'object') return true
  if (depth > DEEPEST) return false
  const members = Array.isArray(value) ? value : Object.values(value)
  return members.length <= LONGEST_ARRAY && members.every((member) => withinBounds(member, depth + 1))
}

/** PostgreSQL's text holds no NUL and its jsonb no half of a surrogate pair. */
function isStorable(value: unknown): boolean {
  if (typeof value === 'string') return !value.includes('\0') && !/\p{Surrogate}/u.test(value)
  if (value === null || typeof value !== 'object') return true
  return Object.entries(value).every(([name, member]) => isStorable(name) && isStorable(member))
}

const noJson = (): Refusal => ({
  code: 'no-json',
  status: 400,
  what: 'Not saved: the body is no JSON.',
  instead: 'Send one JSON object with Content-Type application/json.',
})

const noText = (): Refusal => ({
  code: 'no-text',
  status: 400,
  what: 'Not saved: a text holds a character that is none.',
  why: 'NUL and halves of surrogate pairs cannot be kept.',
  instead: 'Send it without them.',
})

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
