import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { findFreePort } from './process-facts.mjs'
import { projectRoot } from './project-paths.mjs'
import { startTestProcess, stopTestProcess } from './test-processes.mjs'

const READY_MS = 300_000

/**
 * Starts the app as `npm start` does, with a data folder and a database of its own, for as long as some work lasts.
 *
 * @template T
 * @param {(served: { TEST_BASE_URL: string, TEST_DATA_DIR: string }) => Promise<T>} work - gets where the app is, as environment variables
 * @returns {Promise<T>}
 */
export async function withServedApp(work) {
  const folder = mkdtempSync(join(tmpdir(), 'lidsong-browser-'))
  chmodSync(folder, 0o711) // as root, the database server runs as another user, who has to get through
  const port = await findFreePort()
  const address = `http://localhost:${port}`
  const { DATABASE_URL: _, DATABASE_OWNER_URL: __, ...env } = process.env
  const app = startTestProcess([join(projectRoot, 'lib', 'cli', 'start.mjs'), '--port', String(port)], {
    ...env,
    NEXTAUTH_URL: address,
    LIDSONG_DATA_DIR: folder,
    // One machine plays everybody: the limits on tries have tests of their own.
    LIDSONG_SIGN_INS_PER_MINUTE: '1000',
    LIDSONG_CHANGES_PER_MINUTE: '10000',
  })
  try {
    await waitUntilReady(address, app)
    return await work({ TEST_BASE_URL: address, TEST_DATA_DIR: folder })
  } finally {
    await stopTestProcess(app)
    rmSync(folder, { recursive: true, force: true })
  }
}

async function waitUntilReady(/** @type {string} */ address, /** @type {import('node:child_process').ChildProcess} */ app) {
  const deadline = Date.now() + READY_MS
  while (Date.now() < deadline) {
    if (app.exitCode !== null) throw new Error('The app did not start: see above.')
    const reply = await fetch(`${address}/api/health/ready`, { signal: AbortSignal.timeout(5_000) }).catch(() => undefined)
    if (reply?.ok) return
    await sleep(250)
  }
  throw new Error(`The app is not ready after ${READY_MS / 1000} s.`)
}
