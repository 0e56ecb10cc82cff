import { type ChildProcess, spawn } from 'node:child_process'
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer, type Server } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { superuserAddress } from '@/lib/cli/prepare-database.mjs'
import { isAlive, waitUntil } from '@/lib/cli/process-facts.mjs'
import { type RunningPostgres, runPostgres } from '@/lib/cli/run-postgres.mjs'

const PASSWORD = 'super'

let folder: string
let endings: (() => Promise<void>)[]

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lidsong-server-'))
  chmodSync(folder, 0o711)
  endings = []
})

afterEach(async () => {
  for (const end of endings.reverse()) await end()
  rmSync(folder, { recursive: true, force: true })
})

const cluster = () => join(folder, 'postgres')
const serverPid = () => Number(readFileSync(join(cluster(), 'postmaster.pid'), 'utf8').split('\n')[0])

async function run(port?: number, durable = false): Promise<RunningPostgres> {
  const running = await runPostgres({
    folder: cluster(),
    logFile: join(folder, 'log'),
    superuserPassword: PASSWORD,
    durable,
    takeOver: true,
    port,
  })
  endings.push(running.stop)
  return running
}

async function ask(port: number, sql: string): Promise<unknown[]> {
  const client = new pg.Client({ connectionString: superuserAddress(PASSWORD, port) })
  await client.connect()
  try {
    return (await client.query(sql)).rows
  } finally {
    await client.end()
  }
}

/** A process of its own that starts the server and then only waits. */
async function runInOtherProcess(): Promise<ChildProcess> {
  const script = `import { runPostgres } from '${process.cwd()}/lib/cli/run-postgres.mjs'
    await runPostgres({ folder: '${cluster()}', logFile: '${folder}/log', superuserPassword: '${PASSWORD}', durable: false })
    console.log('ready')
    setInterval(() => {}, 1000)`
  const other = spawn(process.execPath, ['--input-type=module', '--eval', script], { stdio: ['ignore', 'pipe', 'inherit'] })
  endings.push(async () => void other.kill('SIGKILL'))
  await new Promise((resolve, reject) => {
    other.stdout.once('data', resolve)
    other.once('exit', () => reject(new Error('the other process ended')))
  })
  return other
}

describe('runPostgres', () => {
  it('keeps what was written over a stop and a start, at the same port', async () => {
    const first = await run()
    await ask(first.port, 'CREATE TABLE kept AS SELECT 7 AS jars')
    await first.stop()
    const second = await run(first.port)
    expect(second.port).toBe(first.port)
    expect(await ask(second.port, 'SELECT jars FROM kept')).toEqual([{ jars: 7 }])
  })

  it('checks its pages, hashes passwords by SCRAM, and listens on loopback alone', async () => {
    const { port } = await run()
    const rows = await ask(
      port,
      `SELECT current_setting('data_checksums') AS sums, current_setting('listen_addresses') AS listens, current_setting('unix_socket_directories') AS sockets,
      (SELECT bool_and(auth_method = 'scram-sha-256') FROM pg_hba_file_rules) AS scram`,
    )
    expect(rows).toEqual([{ sums: 'on', listens: '127.0.0.1', sockets: '', scram: true }])
  })

  it('takes another port when the remembered one is in use', async () => {
    const taken = await new Promise<Server>((resolve) => {
      const server = createServer().listen(0, '127.0.0.1', () => resolve(server))
    })
    endings.push(async () => void taken.close())
    const address = taken.address()
    const wanted = typeof address === 'object' ? address?.port : undefined
    const { port } = await run(wanted)
    expect(port).not.toBe(wanted)
    expect(await ask(port, 'SELECT 1 AS one')).toEqual([{ one: 1 }])
  })

  it('has everything that was committed after the server was killed', async () => {
    const first = await run(undefined, true)
    await ask(first.port, 'CREATE TABLE kept AS SELECT 7 AS jars')
    await ask(first.port, 'INSERT INTO kept VALUES (8)')
    const pid = serverPid()
    process.kill(pid, 'SIGKILL')
    await waitUntil(() => !isAlive(pid), 5_000)
    const second = await run(first.port, true)
    expect(await ask(second.port, 'SELECT jars FROM kept ORDER BY 1')).toEqual([{ jars: 7 }, { jars: 8 }])
  })

  it('starts although a lock file names a process that is something else by now', async () => {
    const first = await run()
    const lock = readFileSync(join(cluster(), 'postmaster.pid'), 'utf8')
    await first.stop()
    writeFileSync(join(cluster(), 'postmaster.pid'), lock.replace(/^\d+/, String(process.pid)))
    const second = await run()
    expect(await ask(second.port, 'SELECT 1 AS one')).toEqual([{ one: 1 }])
  })

  it('stops the server when its starter is killed', async () => {
    const starter = await runInOtherProcess()
    const pid = serverPid()
    expect(isAlive(pid)).toBe(true)
    starter.kill('SIGKILL')
    expect(await waitUntil(() => !isAlive(pid), 10_000)).toBe(true)
    expect(readFileSync(join(folder, 'log'), 'utf8')).toMatch(/database system is shut down/)
  })

  it('takes over a running server, which then outlives its starter', async () => {
    const starter = await runInOtherProcess()
    const pid = serverPid()
    const taken = await run()
    expect(serverPid()).toBe(pid)
    starter.kill('SIGKILL')
    expect(await waitUntil(() => !isAlive(pid), 2_000)).toBe(false)
    expect(await ask(taken.port, 'SELECT 1 AS one')).toEqual([{ one: 1 }])
  })

  it('leaves a server alone that another process looks after', async () => {
    await runInOtherProcess()
    const guest = await runPostgres({ folder: cluster(), logFile: join(folder, 'log'), superuserPassword: PASSWORD, durable: false })
    await guest.stop()
    expect(await ask(guest.port, 'SELECT 1 AS one')).toEqual([{ one: 1 }])
  })
})
