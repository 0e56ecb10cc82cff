/**
 * Loaded into the server process before Next: limits on slow clients, and an orderly end.
 * Next makes its HTTP server itself and offers no setting for either.
 *
 * On the first SIGTERM or SIGINT the ready answer turns to 503, no new connection is taken, requests and jobs under way get ten seconds,
 * then the process ends with 0. A second signal ends it at once. It also ends when the process that started it has gone.
 * A page that broke because the database is away says so (say-not-saved.mjs), and the API does without proxy.ts (guard-api.mjs).
 */
import http from 'node:http'
import { guardApi } from './guard-api.mjs'
import { sayNotSaved } from './say-not-saved.mjs'

const REQUEST_MS = 15_000
const HEADERS_MS = 10_000
const KEEP_ALIVE_MS = 65_000
const FINISH_MS = 10_000

/** lib/shutdown.ts, lib/jobs/run-jobs.ts and lib/db/client.ts know the same symbols. */
const SHUTDOWN = Symbol.for('lidsong.shutdown')
const JOBS = Symbol.for('lidsong.jobs')
const DATABASE = Symbol.for('lidsong.database')

process.env.NEXT_MANUAL_SIG_HANDLE = '1'

/** @type {Set<http.Server>} */
const servers = new Set()
const ending = new AbortController()
Object.assign(globalThis, { [SHUTDOWN]: ending.signal })

const createServer = http.createServer
http.createServer = /** @type {typeof http.createServer} */ (
  (/** @type {any[]} */ ...args) => {
    const wrapped = args.map((arg) => (typeof arg === 'function' ? guardApi(sayNotSaved(arg)) : arg))
    const server = Reflect.apply(createServer, http, wrapped)
    server.requestTimeout = REQUEST_MS
    server.headersTimeout = HEADERS_MS
    server.keepAliveTimeout = KEEP_ALIVE_MS
    servers.add(server)
    return server
  }
)

async function endOrderly() {
  if (ending.signal.aborted) process.exit(1)
  ending.abort()
  const closed = Promise.all([...servers].map((server) => new Promise((resolve) => server.close(resolve))))
  // A connection that was busy becomes idle with its answer, and would then be kept open for the next request.
  setInterval(() => {
    for (const server of servers) server.closeIdleConnections()
  }, 50)
  const late = new Promise((resolve) => setTimeout(resolve, FINISH_MS))
  await Promise.race([Promise.all([closed, Reflect.get(globalThis, JOBS)]), late])
  await Promise.race([Reflect.get(globalThis, DATABASE)?.$disconnect(), late])
  process.exit(0)
}

process.on('SIGTERM', endOrderly)
process.on('SIGINT', endOrderly)
process.on('disconnect', endOrderly)
