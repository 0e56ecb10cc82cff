import 'server-only'
import type { ClientConfig } from 'pg'
import { env } from '@/lib/env'

/** How connections outside the client's pool are opened, for listening and for the job queue: the app's role too, and a dead peer is noticed. */
export const plainConnection = (): ClientConfig => ({
  connectionString: env().databaseUrl,
  options: '-c role=lidsong_app',
  connectionTimeoutMillis: 5_000,
  keepAlive: true,
  keepAliveInitialDelayMillis: 10_000,
})
