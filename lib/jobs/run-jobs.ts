import 'server-only'
import { Logger, type LogLevel, type Runner, run, type TaskList } from 'graphile-worker'
import pg from 'pg'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import { inTransaction } from '@/lib/db/in-transaction'
import { plainConnection } from '@/lib/db/plain-connection'
import { deliverMail, isMailDue } from '@/lib/effects/deliver-mail'
import { log } from '@/lib/log'
import { shutdownSignal } from '@/lib/shutdown'
import { type Jobs, SEARCH_FLAG, wakeMailSender } from './add-job'
import { searchPlan } from './search-plan'
import { wakeLostSearches } from './search-rows'

/** One search and the mail. */
const AT_ONCE = 2
/** Connections of this process for its jobs: one listens, the other fetches and finishes (see lib/db/client.ts for all of them). */
const CONNECTIONS = 2
/** Where a notice of new work is lost, it is found so much later. */
const POLL_MS = 5_000
/** How often this process looks for work that was left behind: mail that is due again, searches whose process is gone. */
const LOOK_MS = 15_000
const BEGIN_AGAIN_MS = 5_000
/** Work under way gets so long at the end of this process. */
const FINISH_MS = 3_000

/** lib/cli/serve-within-limits.mjs waits for it before it closes the database. */
const JOBS = Symbol.for('lidsong.jobs')

/** Takes work from the queue for as long as this process serves, and begins again where the database was away. Called once, when it begins. */
export function runJobs(): void {
  if (Reflect.get(globalThis, JOBS)) return
  const ended = untilShutdown()
  Reflect.set(globalThis, JOBS, ended)
}

async function untilShutdown(): Promise<void> {
  const signal = shutdownSignal()
  const look = setInterval(() => void lookAround(), LOOK_MS).unref()
  while (!signal.aborted) {
    try {
      await runUntil(signal)
    } catch (error) {
      log().warn({ err: error }, 'jobs are not run for a moment')
    }
    await pause(BEGIN_AGAIN_MS, signal)
  }
  clearInterval(look)
}

/** Without a delay named, an end that cannot be written down is a promise nobody catches; with one, the library stops and we begin again. */
const ONE_AT_A_TIME = { completeJobBatchDelay: 0, failJobBatchDelay: 0 }

/** Runs until the signal, or until the library gives up because the database is away for long. */
export async function runUntil(signal: AbortSignal, tasks: TaskList = TASKS): Promise<void> {
  const pool = openPool()
  try {
    const runner = await run({
      preset: { worker: ONE_AT_A_TIME },
      pgPool: pool as never, // the library brings types of its own for the same package
      taskList: tasks,
      parsedCronItems: [],
      concurrency: AT_ONCE,
      pollInterval: POLL_MS,
      noHandleSignals: true,
      gracefulShutdownAbortTimeout: FINISH_MS,
      forbiddenFlags: () => (isSearching ? [SEARCH_FLAG] : null),
      logger: new Logger(toOurLog),
    })
    await lookAround()
    await Promise.race([runner.promise, stopAt(signal, runner)])
  } finally {
    await pool.end().catch(() => {})
  }
}

async function stopAt(signal: AbortSignal, runner: Runner): Promise<void> {
  await new Promise<void>((resolve) => {
    if (signal.aborted) resolve()
    else signal.addEventListener('abort', () => resolve(), { once: true })
  })
  await runner.stop()
}

/** Another process may have been lost, and mail that failed is due again by and by. */
async function lookAround(): Promise<void> {
  try {
    await wakeLostSearches()
    if (await isMailDue(new Date())) await inTransaction(wakeMailSender)
  } catch (error) {
    if (!(error instanceof DatabaseUnavailable)) log().error({ err: error }, 'work that was left behind is not looked for')
  }
}

let isSearching = false

const TASKS: TaskList = {
  'deliver-mail': async () => {
    while (!shutdownSignal().aborted && (await deliverMail()).sent > 0);
  },
  'search-plan': async (told) => {
    isSearching = true
    try {
      await searchPlan(told as Jobs['search-plan'])
    } finally {
      isSearching = false
    }
  },
}

/** A connection that is lost says so in the log and is opened again; without a listener the process would end. */
function openPool(): pg.Pool {
  const pool = new pg.Pool({ ...plainConnection(), max: CONNECTIONS })
  const note = (error: Error) => log().warn({ err: error }, 'a connection of the jobs was lost')
  pool.on('error', note)
  pool.on('connect', (client) => client.on('error', note))
  return pool
}

const LEVELS: Readonly<Record<LogLevel, 'error' | 'warn' | 'info' | 'debug'>> = {
  error: 'error',
  warning: 'warn',
  info: 'debug',
  debug: 'debug',
}

const toOurLog = () => (level: LogLevel, message: string, meta?: { readonly [key: string]: unknown }) =>
  log()[LEVELS[level]]({ ...(meta?.error instanceof Error ? { err: meta.error } : {}) }, message)

function pause(ms: number, signal: AbortSignal): Promise<void> {
  return new Promise((resolve) => {
    if (signal.aborted) return resolve()
    const timer = setTimeout(resolve, ms)
    timer.unref()
    signal.addEventListener('abort', () => resolve(), { once: true })
  })
}
