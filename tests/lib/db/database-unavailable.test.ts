import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { applyMigrations } from '@/lib/cli/migrate.mjs'
import { prepareDatabase, superuserAddress } from '@/lib/cli/prepare-database.mjs'
import { type RunningPostgres, runPostgres } from '@/lib/cli/run-postgres.mjs'
import { openClient } from '@/lib/db/client'
import { DatabaseUnavailable, isDatabaseUnavailable, isTransactionConflict } from '@/lib/db/database-unavailable'
import type { PrismaClient } from '@/lib/db/generated/client'
import { inTransaction } from '@/lib/db/in-transaction'

let folder: string
let server: RunningPostgres
let client: PrismaClient

const serve = (port?: number) =>
  runPostgres({ folder: join(folder, 'postgres'), logFile: join(folder, 'log'), superuserPassword: 'super', durable: false, port })

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'lidsong-absence-'))
  chmodSync(folder, 0o711)
  server = await serve()
  const wanted = { superuserUrl: superuserAddress('super', server.port), ownerPassword: 'owner', appPassword: 'app', database: 'lidsong' }
  const { appUrl, ownerUrl } = await prepareDatabase(wanted)
  await applyMigrations(ownerUrl)
  client = openClient(appUrl)
})

afterAll(async () => {
  await client.$disconnect()
  await server.stop()
  rmSync(folder, { recursive: true, force: true })
})

/** The server and all its processes, to be frozen and woken. */
function signalServer(signal: 'SIGSTOP' | 'SIGCONT'): void {
  const main = Number(readFileSync(join(folder, 'postgres', 'postmaster.pid'), 'utf8').split('\n')[0])
  const children = readdirSync('/proc').filter((pid) => /^\d+$/.test(pid) && parentOf(pid) === main)
  for (const pid of [main, ...children.map(Number)]) process.kill(pid, signal)
}

function parentOf(pid: string): number {
  try {
    return Number(
      readFileSync(`/proc/${pid}/stat`, 'utf8')
        .replace(/^.*\) \S /s, '')
        .split(' ')[0],
    )
  } catch {
    return 0
  }
}

async function timed(work: Promise<unknown>): Promise<{ error: unknown; ms: number }> {
  const startedAt = Date.now()
  const error = await work.then(
    () => undefined,
    (reason) => reason,
  )
  return { error, ms: Date.now() - startedAt }
}

const read = () => client.group.count()
const write = () => inTransaction((tx) => tx.group.count(), { client })

describe('a database that is away', () => {
  it('is told from a fault of the request when it was stopped, and is used again once it is back', async () => {
    expect(await read()).toBe(0)
    const { port } = server
    await server.stop()
    for (const ask of [read, write, () => client.$queryRaw`SELECT 1`]) {
      const { error, ms } = await timed(ask())
      expect(error).toBeInstanceOf(DatabaseUnavailable)
      expect(ms).toBeLessThan(5_000)
    }
    server = await serve(port)
    expect(server.port).toBe(port)
    expect(await read()).toBe(0)
    expect(await write()).toBe(0)
  })

  it('fails within five seconds while it is frozen, and answers within five seconds once it wakes', async () => {
    expect(await read()).toBe(0)
    signalServer('SIGSTOP')
    try {
      const asked = await Promise.all([timed(read()), timed(write()), timed(read()), timed(client.$queryRaw`SELECT 1`)])
      for (const { error, ms } of asked) {
        expect(error).toBeInstanceOf(DatabaseUnavailable)
        expect(ms).toBeLessThan(5_000)
      }
    } finally {
      signalServer('SIGCONT')
    }
    const wokeAt = Date.now()
    let answer: unknown
    while (answer !== 0 && Date.now() - wokeAt < 5_000) answer = await read().catch((error) => error)
    expect(answer).toBe(0)
  })
})

describe('isDatabaseUnavailable', () => {
  it.each([
    ['a refused connection', Object.assign(new Error('connect'), { code: 'ECONNREFUSED' })],
    ['a server that shuts down', Object.assign(new Error('terminating'), { code: '57P01' })],
    ['a statement that took too long', Object.assign(new Error('canceling'), { code: '57014' })],
    ['a lock that was not to be had', Object.assign(new Error('lock'), { code: '55P03' })],
    [
      'what Prisma noted below its own error',
      Object.assign(new Error('raw'), { code: 'P2010', meta: { driverAdapterError: { cause: { originalCode: '57P03' } } } }),
    ],
    ['the driver giving up without a code', new Error('timeout exceeded when trying to connect')],
  ])('sees it in %s', (_, error) => expect(isDatabaseUnavailable(error)).toBe(true))

  it.each([
    ['a taken name', Object.assign(new Error('unique'), { code: 'P2002' })],
    ['a broken check', Object.assign(new Error('check'), { code: '23514' })],
    ['a slip of ours', new TypeError('undefined is not a function')],
    ['nothing', undefined],
  ])('does not see it in %s', (_, error) => expect(isDatabaseUnavailable(error)).toBe(false))
})

describe('isTransactionConflict', () => {
  it.each(['P2034', '40001', '40P01'])('is %s', (code) =>
    expect(isTransactionConflict(Object.assign(new Error('lost'), { code }))).toBe(true),
  )
  it('is not a taken name', () => expect(isTransactionConflict(Object.assign(new Error('unique'), { code: 'P2002' }))).toBe(false))
})
