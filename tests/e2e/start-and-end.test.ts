import { type ChildProcess, spawn } from 'node:child_process'
import { chmodSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { expect, test } from '@playwright/test'

const PORT = 3977
const ADDRESS = `http://localhost:${PORT}`
const SECOND_START_MS = 15_000

let folder: string
let started: ChildProcess | undefined

test.beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'lidsong-start-'))
  chmodSync(folder, 0o711)
})

test.afterAll(async () => {
  if (started && started.exitCode === null) await end(started)
  rmSync(folder, { recursive: true, force: true })
})

/** Starts the app on an empty data folder of its own, as `npm start -- --empty` does, and waits for the address it prints. */
async function start(): Promise<{ app: ChildProcess; ms: number }> {
  const startedAt = Date.now()
  const { DATABASE_URL: _, NEXTAUTH_URL: __, ...env } = process.env
  const app = spawn(process.execPath, ['lib/cli/start.mjs', '--port', String(PORT), '--empty'], {
    env: { ...env, LIDSONG_DATA_DIR: folder },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  started = app
  let said = ''
  app.stdout.on('data', (text) => (said += text))
  app.stderr.on('data', (text) => (said += text))
  while (!said.includes(`Lidsong is at ${ADDRESS}`)) {
    if (app.exitCode !== null) throw new Error(`the start ended with ${app.exitCode}: ${said}`)
    await sleep(50)
  }
  return { app, ms: Date.now() - startedAt }
}

function end(app: ChildProcess, signal: NodeJS.Signals = 'SIGTERM'): Promise<number | null> {
  return new Promise((resolve) => {
    app.once('exit', resolve)
    app.kill(signal)
  })
}

const answers = async () => (await fetch(`${ADDRESS}/api/health/ready`).catch(() => undefined))?.status
const readPid = (file: string) => Number(readFileSync(join(folder, file), 'utf8').split('\n')[0])
const appPid = () => Number(JSON.parse(readFileSync(join(folder, 'start.json'), 'utf8')).appPid)

function isAlive(pid: number): boolean {
  try {
    return process.kill(pid, 0)
  } catch {
    return false
  }
}

async function goesAway(pid: number): Promise<boolean> {
  for (let look = 0; look < 200 && isAlive(pid); look += 1) await sleep(50)
  return !isAlive(pid)
}

test.describe
  .serial('the app', () => {
    test('starts, and ends in good order when it is told to: app and database both', async () => {
      const { app } = await start()
      expect(await answers()).toBe(200)
      const [server, database] = [appPid(), readPid('postgres/postmaster.pid')]
      expect(await end(app)).toBe(0)
      expect([isAlive(server), isAlive(database)]).toEqual([false, false])
      expect(readFileSync(join(folder, 'logs', 'postgres.log'), 'utf8').trimEnd()).toMatch(/database system is shut down$/)
    })

    test('starts a second time within 15 seconds', async () => {
      const { ms } = await start()
      expect(ms).toBeLessThan(SECOND_START_MS)
      expect(await answers()).toBe(200)
    })

    test('refuses a second start of the same data folder while it runs', async () => {
      const env = { ...process.env, LIDSONG_DATA_DIR: folder }
      const second = spawn(process.execPath, ['lib/cli/start.mjs', '--port', String(PORT + 1), '--empty'], {
        env,
        stdio: ['ignore', 'ignore', 'pipe'],
      })
      let said = ''
      second.stderr.on('data', (text) => (said += text))
      expect(await new Promise((resolve) => second.once('exit', resolve))).toBe(1)
      expect(said).toContain(`already runs at ${ADDRESS}`)
    })

    test('leaves nothing running when its start is killed, and starts again', async () => {
      const [server, database] = [appPid(), readPid('postgres/postmaster.pid')]
      if (started) await end(started, 'SIGKILL')
      expect(await goesAway(server)).toBe(true)
      expect(await goesAway(database)).toBe(true)
      await start()
      expect(await answers()).toBe(200)
    })

    test('recovers when everything was killed at once', async () => {
      const [server, database] = [appPid(), readPid('postgres/postmaster.pid')]
      process.kill(database, 'SIGKILL')
      process.kill(server, 'SIGKILL')
      if (started) await end(started, 'SIGKILL')
      const { app } = await start()
      expect(await answers()).toBe(200)
      expect(readFileSync(join(folder, 'logs', 'postgres.log'), 'utf8')).toMatch(/database system was interrupted/)
      expect(await end(app)).toBe(0)
    })
  })
