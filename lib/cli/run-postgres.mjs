import { spawn, spawnSync } from 'node:child_process'
import { chmodSync, closeSync, existsSync, mkdirSync, openSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { findPostgresFiles, makeServerFolder } from './postgres-files.mjs'
import { commandLineOf, findFreePort, isAlive, isPortFree, waitUntil } from './process-facts.mjs'
import { lastLines } from './run-logged.mjs'

export const SUPERUSER = 'postgres'

const START_TRIES = 5
const READY_MS = 60_000
const STOP_MS = 20_000
const LOG_LIMIT_BYTES = 5_000_000

/**
 * @typedef {object} PostgresOptions
 * @property {string} folder - the cluster; made when it is missing
 * @property {string} logFile
 * @property {string} superuserPassword
 * @property {number} [port] - tried first; another free one is taken when it is in use
 * @property {boolean} [durable] - false for tests: no fsync, nothing to keep
 * @property {boolean} [takeOver] - stop the server at our end even when another process of ours started it
 */

/**
 * @typedef {object} RunningPostgres
 * @property {number} port
 * @property {() => Promise<void>} stop - stops the server, unless another process of ours looks after it
 */

/**
 * @typedef {object} Server
 * @property {number} pid
 * @property {number} port
 * @property {{ end: () => void }} [watch] - stops the server when we die without a word
 */

/**
 * Makes sure that the cluster in a folder is served on loopback: makes it, starts it, or joins the server that already runs on it.
 *
 * A server whose starter was killed is adopted. Whoever looks after the server is named in a file beside the cluster,
 * and a shell that waits on a pipe from that process stops the server when the process dies without a word.
 *
 * @param {PostgresOptions} options
 * @returns {Promise<RunningPostgres>}
 */
export async function runPostgres(options) {
  const files = findPostgresFiles(options.folder)
  mkdirSync(dirname(options.logFile), { recursive: true, mode: 0o711 })
  if (!existsSync(join(files.dataFolder, 'PG_VERSION'))) makeCluster(files, options)

  const keeper = keeperFile(files.dataFolder)
  const found = await findRunningServer(files.dataFolder)
  const isGuest = found !== undefined && !options.takeOver && keeperIsAlive(keeper)
  if (isGuest) return { port: found.port, stop: async () => {} }

  writeKeeper(keeper)
  const server = found ?? (await startServer(files, options))
  const watch = server.watch ?? watchOverServer(server.pid, files)
  const stop = async () => {
    if (readNumber(keeper) === process.pid) {
      await stopServer(server.pid)
      rmSync(keeper, { force: true })
    }
    watch.end()
  }
  return { port: server.port, stop }
}

function makeCluster(/** @type {import('./postgres-files.mjs').PostgresFiles} */ files, /** @type {PostgresOptions} */ options) {
  const draft = `${files.dataFolder}.new`
  const passwordFile = join(draft, 'password')
  const cluster = join(draft, 'cluster')
  rmSync(draft, { recursive: true, force: true })
  makeServerFolder(draft, files.runAs)
  writeFileSync(passwordFile, `${options.superuserPassword}\n`)
  chmodSync(passwordFile, 0o644)
  const flags = ['--auth=scram-sha-256', `--username=${SUPERUSER}`, `--pwfile=${passwordFile}`, '--data-checksums', '--encoding=UTF8']
  const locale = ['--locale=C', '--locale-provider=builtin', '--builtin-locale=C.UTF-8']
  const args = ['-D', cluster, ...flags, ...locale, ...(options.durable === false ? ['--no-sync'] : [])]
  const made = spawnSync(join(files.programs, 'initdb'), args, { ...files.runAs, cwd: '/', encoding: 'utf8', env: serverEnvironment() })
  if (made.status !== 0) throw new Error(`PostgreSQL could not make its data folder ${files.dataFolder}:\n${made.stdout}\n${made.stderr}`)
  renameSync(cluster, files.dataFolder)
  rmSync(draft, { recursive: true, force: true })
}

/**
 * The server that runs on this cluster, once it is ready; none when the last one has gone or is going.
 *
 * @param {string} cluster
 * @returns {Promise<Server | undefined>}
 */
async function findRunningServer(cluster) {
  const lock = readLock(cluster)
  if (!lock) return undefined
  if (!isServerOf(cluster, lock.pid)) {
    rmSync(join(cluster, 'postmaster.pid'), { force: true })
    return undefined
  }
  const settled = await waitUntil(() => {
    const now = readLock(cluster)
    return now === undefined || now.state === 'ready' || !isAlive(now.pid)
  }, READY_MS)
  if (!settled) throw new Error(`The PostgreSQL server ${lock.pid} on ${cluster} neither starts nor stops; end it and try again.`)
  const after = readLock(cluster)
  return after?.state === 'ready' && isAlive(after.pid) ? { pid: after.pid, port: after.port } : undefined
}

/**
 * @param {import('./postgres-files.mjs').PostgresFiles} files
 * @param {PostgresOptions} options
 * @returns {Promise<Server>}
 */
async function startServer(files, options) {
  for (let attempt = 1; ; attempt += 1) {
    const wanted = attempt === 1 ? options.port : undefined
    const port = wanted && (await isPortFree(wanted)) ? wanted : await findFreePort()
    const server = await tryStart(files, options, port)
    if (server) return server
    if (attempt === START_TRIES) throw new Error(`PostgreSQL does not start on ${files.dataFolder}:\n${lastLines(options.logFile, 15)}`)
    await sleep(attempt * 500)
  }
}

/**
 * Starts the server once, in a session of its own so that Ctrl-C reaches us first.
 *
 * @param {import('./postgres-files.mjs').PostgresFiles} files
 * @param {PostgresOptions} options
 * @param {number} port
 * @returns {Promise<Server | undefined>} the server when it is ready
 */
async function tryStart(files, options, port) {
  if (existsSync(options.logFile) && statSync(options.logFile).size > LOG_LIMIT_BYTES) rmSync(options.logFile)
  const log = openSync(options.logFile, 'a')
  const settings = [
    'listen_addresses=127.0.0.1',
    'unix_socket_directories=',
    'max_connections=100',
    ...(options.durable === false ? HURRIED : []),
  ]
  const args = ['-D', files.dataFolder, '-p', String(port), ...settings.flatMap((setting) => ['-c', setting])]
  const stdio = /** @type {import('node:child_process').StdioOptions} */ (['ignore', log, log])
  const child = spawn(join(files.programs, 'postgres'), args, { ...files.runAs, cwd: '/', stdio, detached: true, env: serverEnvironment() })
  let isGone = false
  child.once('error', () => (isGone = true))
  child.once('exit', () => (isGone = true))
  child.unref()
  closeSync(log)
  const pid = child.pid
  if (!pid) return undefined
  const watch = watchOverServer(pid, files)
  const isReady = () => readLock(files.dataFolder)?.state === 'ready' && readLock(files.dataFolder)?.pid === pid
  await waitUntil(() => isGone || isReady(), READY_MS)
  if (!isGone && isReady()) return { pid, port, watch }
  if (!isGone) child.kill('SIGQUIT')
  watch.end()
  return undefined
}

/** Speed over safety, for databases that live as long as a test run. */
const HURRIED = ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off', 'autovacuum=off', 'max_wal_size=256MB']

/**
 * A shell that waits for a word of ours. When we are gone it reads nothing, and stops the server unless somebody else has taken it over.
 *
 * @param {number} pid
 * @param {import('./postgres-files.mjs').PostgresFiles} files
 */
function watchOverServer(pid, files) {
  const script = 'read -r word || { [ "$(cat "$2")" = "$3" ] && kill -INT "$1"; }'
  const args = ['-c', script, 'sh', String(pid), keeperFile(files.dataFolder), String(process.pid)]
  const watch = spawn('/bin/sh', args, { ...files.runAs, cwd: '/', stdio: ['pipe', 'ignore', 'ignore'], detached: true })
  watch.unref()
  const pipe = /** @type {import('node:net').Socket} */ (watch.stdin)
  pipe.unref()
  pipe.on('error', () => {}) // the shell may have gone with its server; nothing is left to tell it
  return { end: () => void pipe.end('done\n') }
}

async function stopServer(/** @type {number} */ pid) {
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGQUIT'])) {
    try {
      process.kill(pid, signal)
    } catch {
      return
    }
    if (await waitUntil(() => !isAlive(pid), STOP_MS)) return
  }
}

/**
 * What the server's lock file says: line 1 its process, line 4 its port, line 8 its state.
 *
 * @param {string} cluster
 */
function readLock(cluster) {
  try {
    const lines = readFileSync(join(cluster, 'postmaster.pid'), 'utf8').split('\n')
    return { pid: Number(lines[0]), port: Number(lines[3]), state: (lines[7] ?? '').trim() }
  } catch {
    return undefined
  }
}

function isServerOf(/** @type {string} */ cluster, /** @type {number} */ pid) {
  return isAlive(pid) && commandLineOf(pid).includes(cluster)
}

function keeperFile(/** @type {string} */ cluster) {
  return `${cluster}.keeper`
}

/** Names us as the one who looks after the server; the watching shell, as another user, has to read it. */
function writeKeeper(/** @type {string} */ file) {
  writeFileSync(file, String(process.pid))
  chmodSync(file, 0o644)
}

function keeperIsAlive(/** @type {string} */ file) {
  const pid = readNumber(file)
  return pid !== undefined && pid !== process.pid && isAlive(pid) && commandLineOf(pid).includes('node')
}

/**
 * @param {string} file
 * @returns {number | undefined}
 */
function readNumber(file) {
  try {
    return Number(readFileSync(file, 'utf8'))
  } catch {
    return undefined
  }
}

/** @returns {NodeJS.ProcessEnv} */
function serverEnvironment() {
  return { PATH: process.env.PATH ?? '', LANG: 'C', LC_ALL: 'C', TZ: 'UTC', NODE_ENV: process.env.NODE_ENV }
}
