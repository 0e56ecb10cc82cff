import 'server-only'
import { setTimeout as sleep } from 'node:timers/promises'
import { database } from './client'
import { codesOf, DatabaseUnavailable, meansUnavailable } from './database-unavailable'
import type { Prisma } from './generated/client'

/** An open transaction. */
export type Tx = Prisma.TransactionClient

const MOST_TRIES = 6
const LONGEST_MS = 3000
const FIRST_WAIT_MS = 20
const LONGEST_WAIT_MS = 1000
/** Serialization failure and deadlock: the transaction lost a race and may simply be run again. */
const LOST_A_RACE = new Set(['40001', '40P01', 'P2034'])

/**
 * Runs `work` in one transaction and answers after the commit.
 *
 * A lost race is run again with full jitter, at most six times and three seconds in all. `work` must not leave the database: no mail, no network.
 *
 * @throws DatabaseUnavailable when there is no answer, or the race was lost too often
 */
export async function inTransaction<Value>(work: (tx: Tx) => Promise<Value>): Promise<Value> {
  const until = Date.now() + LONGEST_MS
  for (let attempt = 1; ; attempt++) {
    try {
      return await database().$transaction(work, { maxWait: 2000, timeout: 5000 })
    } catch (error) {
      if (meansUnavailable(error)) throw new DatabaseUnavailable(error)
      if (!codesOf(error).some((code) => LOST_A_RACE.has(code))) throw error
      const wait = Math.random() * Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** attempt)
      if (attempt >= MOST_TRIES || Date.now() + wait > until) throw new DatabaseUnavailable(error)
      await sleep(wait)
    }
  }
}
