import 'server-only'
import { PrismaPg } from '@prisma/adapter-pg'
import pg from 'pg'
import { env } from '@/lib/env'
import { isDatabaseAway, noteDatabaseAway } from '@/lib/request-state'
import { DatabaseUnavailable, isDatabaseUnavailable } from './database-unavailable'
import { PrismaClient } from './generated/client'

/** One client a process, also across the reloads of `next dev`; lib/cli/serve-within-limits.mjs closes it by the same symbol. */
const DATABASE = Symbol.for('lidsong.database')
/** The connections of each client. A build holds this file once in each of its bundles, which share one client. */
const POOLS = Symbol.for('lidsong.pools')

/**
 * Of one process. With two for its jobs (lib/jobs/run-jobs.ts) and one that listens (lib/live/day-listener.ts) that is eight, so that two
 * processes, as there are while one takes over from another, stay within sixteen.
 */
const CONNECTIONS = 5

/** The app's connection to PostgreSQL. It always works as the role lidsong_app, whoever signed in. */
export function database(): PrismaClient {
  const known: PrismaClient | undefined = Reflect.get(globalThis, DATABASE)
  if (known) return known
  const made = openClient(env().databaseUrl, { connections: CONNECTIONS })
  Reflect.set(globalThis, DATABASE, made)
  return made
}

/**
 * Opens a client with limits everywhere, so that a request fails within five seconds when the database is frozen.
 *
 * @param connectionString - a postgresql:// address
 * @param connections - how many it opens at most
 * @param settings - of each session, as PostgreSQL takes them at its start: "-c name=value"
 */
export function openClient(connectionString: string, { connections = 8, settings = '' } = {}): PrismaClient {
  const pool = new pg.Pool({
    connectionString,
    options: `-c role=lidsong_app ${settings}`.trim(),
    max: connections,
    connectionTimeoutMillis: 2_000,
    idleTimeoutMillis: 30_000,
    statement_timeout: 3_000,
    lock_timeout: 2_000,
    idle_in_transaction_session_timeout: 5_000,
    query_timeout: 4_000,
  })
  const adapter = new PrismaPg(pool, { disposeExternalPool: true })
  const client = new PrismaClient({ adapter, errorFormat: 'minimal' })
  const guarded = client.$extends({
    name: 'database-unavailable',
    query: {
      async $allOperations({ args, query }) {
        if (isDatabaseAway()) throw new DatabaseUnavailable('asked before in this request')
        try {
          return await query(args)
        } catch (error) {
          throw isDatabaseUnavailable(error) ? noteDatabaseAway(new DatabaseUnavailable(error)) : error
        }
      },
    },
  })
  pools().set(guarded, pool)
  return guarded as unknown as PrismaClient // the extension changes no type: it only renames errors
}

/** The connections under the app's client, for the few statements that are asked so often that the client's own work would be most of them. */
export function databasePool(): pg.Pool {
  const pool = pools().get(database())
  if (!pool) throw new Error('the client was not opened by openClient')
  return pool
}

function pools(): WeakMap<object, pg.Pool> {
  const known: WeakMap<object, pg.Pool> | undefined = Reflect.get(globalThis, POOLS)
  if (known) return known
  const made = new WeakMap<object, pg.Pool>()
  Reflect.set(globalThis, POOLS, made)
  return made
}
