import { describe, expect, it } from 'vitest'
import { readJson } from '@/lib/http/read-json'

const JSON_KIND = { 'content-type': 'application/json' }

function request(body: BodyInit | undefined, headers: Record<string, string> = JSON_KIND): Request {
  return new Request('http://localhost/api', { method: 'POST', body, headers, duplex: 'half' } as RequestInit)
}

const read = (body: BodyInit | undefined, headers?: Record<string, string>) => readJson(request(body, headers))

/** Reads it and says how it was refused, or what it held. */
async function answer(body: BodyInit | undefined, headers?: Record<string, string>): Promise<unknown> {
  const done = await read(body, headers)
  return done.ok ? done.value : `${done.problem.status} ${done.problem.code}`
}

/** Lists within lists, so many deep. */
const nested = (depth: number) => `${'['.repeat(depth)}${']'.repeat(depth)}`

/** A body that comes in pieces and does not say how long it is. */
const inPieces = (pieces: readonly string[]) =>
  new ReadableStream({
    start(controller) {
      for (const piece of pieces) controller.enqueue(new TextEncoder().encode(piece))
      controller.close()
    },
  })

describe('a JSON body', () => {
  it('is read', async () => {
    expect(await answer('{"jars": 3}')).toEqual({ jars: 3 })
  })

  it.each(['application/json; charset=utf-8', 'Application/JSON', 'application/json ;charset=UTF-8'])('comes as %s', async (kind) => {
    expect(await answer('[]', { 'content-type': kind })).toEqual([])
  })

  it.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data', 'application/jsonp', 'application/json-seq', ''])(
    'is refused as %s',
    async (kind) => {
      expect(await answer('{}', { 'content-type': kind })).toBe('400 wrong-content-type')
    },
  )

  it.each(['', '{', '{"a":1}x', "{'a':1}", 'undefined', 'NaN', '{"a":01}'])('is refused when it is no JSON: %s', async (body) => {
    expect(await answer(body)).toBe('400 no-json')
  })

  it('is refused when nothing was sent', async () => {
    expect(await answer(undefined)).toBe('400 no-json')
  })

  it('is refused when its bytes are no UTF-8', async () => {
    expect(await answer(new Uint8Array([0x22, 0xff, 0xfe, 0x22]))).toBe('400 no-json')
  })

  it('may hold 64 kB and not a byte more', async () => {
    const text = (bytes: number) => `"${'x'.repeat(bytes - 2)}"`
    expect(await answer(text(65_536))).toHaveLength(65_534)
    expect(await answer(text(65_537))).toBe('413 too-large')
    expect(await answer(text(1_000_000))).toBe('413 too-large')
  })

  it('is cut off at 64 kB when it does not say how long it is', async () => {
    expect(await answer(inPieces(['"', ...Array.from({ length: 100 }, () => 'x'.repeat(1_000)), '"']))).toBe('413 too-large')
  })

  it('is not trusted to be as short as it says', async () => {
    const headers = { ...JSON_KIND, 'content-length': '2' }
    expect(await answer(inPieces(['"', 'x'.repeat(70_000), '"']), headers)).toBe('413 too-large')
  })

  it('may hold characters of several bytes, cut anywhere', async () => {
    const bytes = new TextEncoder().encode('"Käse 🫙"')
    const stream = new ReadableStream({
      start(controller) {
        for (const byte of bytes) controller.enqueue(new Uint8Array([byte]))
        controller.close()
      },
    })
    expect(await answer(stream)).toBe('Käse 🫙')
  })

  it('may be 8 deep and no deeper', async () => {
    expect(await answer(nested(8))).toEqual(JSON.parse(nested(8)))
    expect(await answer(nested(9))).toBe('413 too-large')
    expect(await answer(`${'{"a":'.repeat(9)}1${'}'.repeat(9)}`)).toBe('413 too-large')
    expect(await answer(nested(30_000))).toBe('413 too-large')
  })

  it('may hold 500 items a list and 500 names an object, no more', async () => {
    const list = (length: number) => JSON.stringify(Array.from({ length }, () => 0))
    const names = (length: number) => JSON.stringify(Object.fromEntries(Array.from({ length }, (_, index) => [`n${index}`, 0])))
    expect(await answer(list(500))).toHaveLength(500)
    expect(await answer(list(501))).toBe('413 too-large')
    expect(await answer(names(501))).toBe('413 too-large')
    expect(await answer(`{"a":{"b":${list(501)}}}`)).toBe('413 too-large')
  })

  it.each(['{"name":"a\\u0000b"}', '["\\ud800"]', '{"a\\u0000":1}'])('is refused with text that no store holds: %s', async (body) => {
    expect(await answer(body)).toBe('400 no-text')
  })

  it('keeps __proto__ a name like any other', async () => {
    const done = await read('{"__proto__":{"isOrganiser":true}}')
    expect(done.ok && Object.getPrototypeOf(done.value)).toBe(Object.prototype)
    expect(({} as Record<string, unknown>).isOrganiser).toBeUndefined()
  })

  it('says what to do when it is refused', async () => {
    for (const body of ['{', nested(9), `"${'x'.repeat(70_000)}"`]) {
      const done = await read(body)
      expect(done.ok ? '' : done.problem.instead).toMatch(/^Send /)
    }
  })
})
