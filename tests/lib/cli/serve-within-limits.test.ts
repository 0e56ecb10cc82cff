import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'

/** A server as small as can be: /slow answers when it is told to, /limits names the limits, /state says whether the end has begun. */
const SERVER = `
  const http = require('node:http')
  const server = http.createServer((request, response) => {
    const ending = globalThis[Symbol.for('lidsong.shutdown')].aborted
    if (request.url === '/limits') return response.end(JSON.stringify([server.requestTimeout, server.headersTimeout]))
    if (request.url === '/state') return response.end(String(ending))
    process.on('message', () => response.end('slow but whole'))
    console.log('slow has begun')
  })
  globalThis[Symbol.for('lidsong.database')] = { $disconnect: async () => console.log('closed the database') }
  server.listen(0, '127.0.0.1', () => console.log('port ' + server.address().port))`

let server: ChildProcess
let said: string
let address: string

beforeEach(async () => {
  said = ''
  server = spawn(process.execPath, ['--import', './lib/cli/serve-within-limits.mjs', '--eval', SERVER], {
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
  })
  server.stdout?.on('data', (text) => {
    said += text
  })
  await hasSaid(/port \d+/)
  address = `http://127.0.0.1:${/port (\d+)/.exec(said)?.[1]}`
})

afterEach(() => server.kill('SIGKILL'))

const get = async (path: string) => (await fetch(address + path)).text()

async function hasSaid(words: RegExp): Promise<void> {
  while (!words.test(said)) await once(server.stdout ?? server, 'data')
}

/** Waits until the server takes nothing new: the signal has come through. */
async function closes(): Promise<void> {
  for (;;) {
    const isOpen = await get('/state').then(
      () => true,
      () => false,
    )
    if (!isOpen) return
  }
}

describe('a server within limits', () => {
  it('waits 15 seconds for a request and 10 for its headers', async () => {
    expect(await get('/limits')).toBe('[15000,10000]')
  })

  it('finishes what is under way, takes nothing new, closes the database and ends with 0', async () => {
    expect(await get('/state')).toBe('false')
    const slow = get('/slow')
    await hasSaid(/slow has begun/)
    const ended = once(server, 'exit')
    server.kill('SIGTERM')
    await closes()
    expect(said).not.toContain('closed the database')
    server.send('answer')
    expect(await slow).toBe('slow but whole')
    expect(await ended).toEqual([0, null])
    expect(said).toContain('closed the database')
  })

  it('ends at once at a second signal', async () => {
    const slow = get('/slow').catch(() => 'cut off')
    await hasSaid(/slow has begun/)
    const ended = once(server, 'exit')
    server.kill('SIGTERM')
    await closes()
    server.kill('SIGTERM')
    expect(await ended).toEqual([1, null])
    expect(await slow).toBe('cut off')
  })

  it('ends when the process that started it is gone', async () => {
    const ended = once(server, 'exit')
    server.disconnect()
    expect(await ended).toEqual([0, null])
  })
})
