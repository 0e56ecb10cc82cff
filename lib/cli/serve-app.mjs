import { spawn } from 'node:child_process'
import { closeSync, mkdirSync, openSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { dataFolder, packagePath, projectRoot } from './project-paths.mjs'
import { ended, lastLines } from './run-logged.mjs'
import { showProgress } from './show-progress.mjs'

const READY_MS = 60_000
const STOP_MS = 15_000

/** Three times what is live after a day's walk; left to itself Node on a large machine lets garbage grow past twice that before it clears up. */
const HEAP_FLAG = '--max-old-space-size=256'
/** The C library otherwise keeps memory of its own for each thread. */
const FEW_ARENAS = { MALLOC_ARENA_MAX: '2' }

/**
 * Serves the app in a process of its own and waits until it answers that it is ready.
 *
 * @param {{ env: NodeJS.ProcessEnv, port: number, host: string, dev: boolean, onEnded: (code: number) => void }} options
 * @returns {Promise<{ pid: number, stop: () => Promise<void> }>}
 */
export async function serveApp({ env, port, host, dev, onEnded }) {
  const logFile = join(dataFolder, 'logs', 'app.log')
  const child = dev ? spawnDevelopment(env, port, host) : spawnProduction(env, port, host, logFile)
  const whenEnded = ended(child)
  let isStopping = false
  void whenEnded.then((code) => {
    if (isStopping) return
    console.error(`\nThe app ended by itself (${code}).${dev ? '' : `\n${lastLines(logFile)}\nIts log: ${logFile}`}`)
    onEnded(1)
  })
  await showProgress('Starting the server', () => waitUntilReady(port, host, () => child.exitCode !== null))
  const stop = async () => {
    isStopping = true
    child.kill('SIGTERM')
    const late = sleep(STOP_MS, 'late', { ref: false })
    if ((await Promise.race([whenEnded, late])) === 'late') child.kill('SIGKILL')
    await whenEnded
  }
  return { pid: /** @type {number} */ (child.pid), stop }
}

/**
 * In a process group of its own, so that Ctrl-C reaches only us and we end it before the database;
 * over the channel to us it notices when we have gone.
 *
 * @param {NodeJS.ProcessEnv} env
 * @param {number} port
 * @param {string} host
 * @param {string} logFile
 */
function spawnProduction(env, port, host, logFile) {
  mkdirSync(dirname(logFile), { recursive: true })
  const log = openSync(logFile, 'w')
  const limits = join(projectRoot, 'lib', 'cli', 'serve-within-limits.mjs')
  const args = [HEAP_FLAG, '--import', limits, packagePath('next', 'dist', 'bin', 'next'), 'start', '-p', String(port), '-H', host]
  const serverEnv = { ...FEW_ARENAS, ...env, NODE_ENV: /** @type {const} */ ('production') }
  const child = spawn(process.execPath, args, { cwd: projectRoot, env: serverEnv, detached: true, stdio: ['ignore', log, log, 'ipc'] })
  closeSync(log)
  return child
}

/**
 * @param {NodeJS.ProcessEnv} env
 * @param {number} port
 * @param {string} host
 */
function spawnDevelopment(env, port, host) {
  const watch = join(projectRoot, 'lib', 'cli', 'end-with-parent.mjs')
  const args = ['--import', watch, packagePath('next', 'dist', 'bin', 'next'), 'dev', '-p', String(port), '-H', host]
  const serverEnv = { ...env, NODE_ENV: /** @type {const} */ ('development') }
  return spawn(process.execPath, args, { cwd: projectRoot, env: serverEnv, detached: true, stdio: ['ignore', 'inherit', 'inherit', 'ipc'] })
}

/**
 * @param {number} port
 * @param {string} host
 * @param {() => boolean} hasEnded
 */
async function waitUntilReady(port, host, hasEnded) {
  const reachable = host === '0.0.0.0' || host === '::' ? '127.0.0.1' : host
  const deadline = Date.now() + READY_MS
  let answer = 'no answer'
  while (Date.now() < deadline) {
    if (hasEnded()) throw new Error('The app ended while it was starting.')
    try {
      const reply = await fetch(`http://${reachable}:${port}/api/health/ready`, { signal: AbortSignal.timeout(10_000) })
      if (reply.ok) return
      answer = `${reply.status} ${await reply.text()}`
    } catch (error) {
      answer = String(error)
    }
    await sleep(150)
  }
  throw new Error(`The app is not ready after ${READY_MS / 1000} s: ${answer}`)
}
