import 'server-only'
import { PrismaPg } from '@prisma/adapter-pg'
import { env } from '@/lib/env'
import { isDatabaseAway, noteDatabaseAway } from '@/lib/request-state'
import { DatabaseUnavailable, isDatabaseUnavailable } from './database-unavailable'
import { PrismaClient } from './generated/client'

/** One client a process, also across the reloads of `next dev`; lib/cli/serve-within-limits.mjs closes it by the same symbol. */
const DATABASE = Symbol.for('lidsong.database')

/** The app's connection to PostgreSQL. It always works as the role lidsong_app, whoever signed in. */
export function database(): PrismaClient {
  const known: PrismaClient | undefined = Reflect.get(globalThis, DATABASE)
  if (known) return known
  const made = openClient(env().databaseUrl)
  Reflect.set(globalThis, DATABASE, made)
  return made
}

/**
 * Opens a client with limits everywhere, so that a request fails within five seconds when the database is frozen.
 *
 * @param connectionString - a postgresql:// address
 */
export function openClient(connectionString: string): PrismaClient {
  const adapter = new PrismaPg({
    connectionString,
    options: '-c role=lidsong_app',
    max: 8,
    connectionTimeoutMillis: 2_000,
    idleTimeoutMillis: 30_000,
    statement_timeout: 3_000,
    lock_timeout: 2_000,
    idle_in_transaction_session_timeout: 5_000,
    query_timeout: 4_000,
  })
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
  return guarded as unknown as PrismaClient // the extension changes no type: it only renames errors
}
