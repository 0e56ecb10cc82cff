import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'

/** A server as small as can be: /slow takes a second, /limits names the limits, /state says whether the end has begun. */
const SERVER = `
  const http = require('node:http')
  const server = http.createServer((request, response) => {
    const ending = globalThis[Symbol.for('lidsong.shutdown')].aborted
    if (request.url === '/limits') return response.end(JSON.stringify([server.requestTimeout, server.headersTimeout]))
    if (request.url === '/state') return response.end(String(ending))
    if (request.url === '/slow') return setTimeout(() => response.end('slow but whole'), 1000)
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
  while (!/port \d+/.test(said)) await once(server.stdout ?? server, 'data')
  address = `http://127.0.0.1:${/port (\d+)/.exec(said)?.[1]}`
})

afterEach(() => server.kill('SIGKILL'))

const get = async (path: string) => (await fetch(address + path)).text()

describe('a server within limits', () => {
  it('waits 15 seconds for a request and 10 for its headers', async () => {
    expect(await get('/limits')).toBe('[15000,10000]')
  })

  it('finishes what is under way, takes nothing new, closes the database and ends with 0', async () => {
    expect(await get('/state')).toBe('false')
    const slow = get('/slow')
    await new Promise((resolve) => setTimeout(resolve, 200))
    const ended = once(server, 'exit')
    const toldAt = Date.now()
    server.kill('SIGTERM')
    await new Promise((resolve) => setTimeout(resolve, 200))
    await expect(get('/state')).rejects.toThrow()
    expect(await slow).toBe('slow but whole')
    expect(await ended).toEqual([0, null])
    expect(Date.now() - toldAt).toBeLessThan(5_000)
    expect(said).toContain('closed the database')
  })

  it('ends at once at a second signal', async () => {
    const slow = get('/slow').catch(() => 'cut off')
    await new Promise((resolve) => setTimeout(resolve, 200))
    const ended = once(server, 'exit')
    server.kill('SIGTERM')
    await new Promise((resolve) => setTimeout(resolve, 100))
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
