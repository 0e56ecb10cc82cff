import 'server-only'
import { PrismaPg } from '@prisma/adapter-pg'
import { env } from '@/lib/env'
import { PrismaClient } from './generated/client'

const KEPT = globalThis as { lidsongDatabase?: PrismaClient }

/**
 * The one client of this process, made when first asked for.
 *
 * Every wait has an end: without these limits a paused server hangs each request for ever. The pool works as `lidsong_app`, which owns nothing.
 */
export function database(): PrismaClient {
  KEPT.lidsongDatabase ??= new PrismaClient({ adapter: new PrismaPg(poolSettings(env().databaseUrl)) })
  return KEPT.lidsongDatabase
}

/** Pool settings for a connection string; tests use them for their own databases. */
export const poolSettings = (connectionString: string) => ({
  connectionString,
  max: 8,
  connectionTimeoutMillis: 2000,
  idleTimeoutMillis: 30_000,
  statement_timeout: 3000,
  lock_timeout: 2000,
  idle_in_transaction_session_timeout: 5000,
  query_timeout: 4000,
  options: '-c role=lidsong_app',
})
