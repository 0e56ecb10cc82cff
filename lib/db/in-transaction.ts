import 'server-only'
import { setTimeout as sleep } from 'node:timers/promises'
import { noteDatabaseAway } from '@/lib/request-state'
import { database } from './client'
import { DatabaseUnavailable, isDatabaseUnavailable, isTransactionConflict } from './database-unavailable'
import type { Prisma, PrismaClient } from './generated/client'

/** An open transaction. */
export type Tx = Prisma.TransactionClient

const MAX_TRIES = 6
const MAX_ALL_MS = 3_000
const FIRST_PAUSE_MS = 20
const MAX_PAUSE_MS = 1_000
const COMMIT_MS = 4_000
/** No transaction is open for longer than that, from its first statement to the last before its commit. */
export const LONGEST_TRANSACTION_MS = 5_000
const LIMITS = { maxWait: 2_000, timeout: LONGEST_TRANSACTION_MS } as const

export interface TransactionOptions {
  readonly isolation?: Prisma.TransactionIsolationLevel
  /** Another client than the process's own. */
  readonly client?: PrismaClient
}

/**
 * Does work in one transaction: all of it is saved, or nothing.
 *
 * When the database undid it because of another transaction (serialization failure, deadlock) the work runs again, at most six times
 * and three seconds in all, so it must touch nothing but the database. Nobody else may retry around this.
 *
 * @throws DatabaseUnavailable when the database is down or stays too busy
 */
export async function inTransaction<T>(work: (tx: Tx) => Promise<T>, options: TransactionOptions = {}): Promise<T> {
  const startedAt = Date.now()
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await runOnce(work, options)
    } catch (error) {
      if (!isTransactionConflict(error)) throw error
      const pauseMs = pauseBefore(attempt)
      if (attempt === MAX_TRIES || Date.now() - startedAt + pauseMs > MAX_ALL_MS) throw new DatabaseUnavailable(error)
      await sleep(pauseMs)
    }
  }
}

async function runOnce<T>(work: (tx: Tx) => Promise<T>, { isolation, client = database() }: TransactionOptions): Promise<T> {
  const patience = new Patience()
  try {
    return await Promise.race([
      client.$transaction((tx) => patience.watch(work(tx)), { ...LIMITS, isolationLevel: isolation }),
      patience.isOver,
    ])
  } catch (error) {
    // After the work only the commit can fail: its answer may be lost although it was done.
    if (error instanceof DatabaseUnavailable || isDatabaseUnavailable(error))
      throw noteDatabaseAway(new DatabaseUnavailable(error, { isOutcomeUnknown: patience.isWorkDone }))
    throw error
  } finally {
    patience.end()
  }
}

/**
 * Ends the wait for a transaction whose end is clear: its work failed on an absent database, so that only the rollback is still to come,
 * or its commit does not answer. Either would take as long again as the statement before.
 */
class Patience {
  isWorkDone = false
  readonly isOver: Promise<never>
  #end: (error: unknown) => void = () => {}
  #timer: NodeJS.Timeout | undefined

  constructor() {
    this.isOver = new Promise((_, reject) => {
      this.#end = reject
    })
    this.isOver.catch(() => {}) // it may end when nobody waits any more
  }

  async watch<T>(work: Promise<T>): Promise<T> {
    try {
      const result = await work
      this.isWorkDone = true
      this.#timer = setTimeout(() => this.#end(new DatabaseUnavailable('the commit was not answered')), COMMIT_MS)
      return result
    } catch (error) {
      if (error instanceof DatabaseUnavailable || isDatabaseUnavailable(error)) this.#end(error)
      throw error
    }
  }

  end(): void {
    clearTimeout(this.#timer)
  }
}

/** Full jitter: anything from nothing to twice the last limit, at most a second. */
function pauseBefore(attempt: number): number {
  return Math.random() * Math.min(MAX_PAUSE_MS, FIRST_PAUSE_MS * 2 ** attempt)
}
