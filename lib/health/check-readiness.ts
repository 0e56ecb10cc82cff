import 'server-only'
import { readdir, statfs } from 'node:fs/promises'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { database } from '@/lib/db/client'
import { env } from '@/lib/env'
import { type LateWork, lateWork } from '@/lib/jobs/late-work'
import { shutdownSignal } from '@/lib/shutdown'

const DATABASE_LIMIT_MS = 1_000
const FREE_BYTES_NEEDED = 200 * 1024 * 1024

/** Why this process should get no requests now. */
export type NotReadyReason = 'shutting-down' | 'database' | 'migrations' | 'disk'

export interface Readiness {
  /** Everything that keeps this process from doing its work right now; empty when it is ready. */
  readonly reasons: readonly NotReadyReason[]
  /** Queues that stand still. Requests are served all the same; whoever keeps the server should look. */
  readonly late: readonly LateWork[]
}

/** May this process be sent requests, and is anything left lying? */
export async function checkReadiness(): Promise<Readiness> {
  if (shutdownSignal().aborted) return { reasons: ['shutting-down'], late: [] }
  const [stored, late, hasSpace] = await Promise.all([inTime(newestStoredMigration()), inTime(lateWork(new Date())), hasDiskSpace()])
  const reasons: NotReadyReason[] = []
  if (stored === undefined) reasons.push('database')
  else if (stored !== (await newestMigration())) reasons.push('migrations')
  if (!hasSpace) reasons.push('disk')
  return { reasons, late: late ?? [] }
}

/** What the database answers; undefined when it does not within a second. */
async function inTime<T>(question: Promise<T>): Promise<T | undefined> {
  const limit = new AbortController()
  try {
    return await Promise.race([question, sleep(DATABASE_LIMIT_MS, undefined, { signal: limit.signal })])
  } catch {
    return undefined
  } finally {
    limit.abort()
  }
}

/** The newest migration in the database. */
async function newestStoredMigration(): Promise<string> {
  const [row] = await database().$queryRaw<{ name: string | null }[]>`
    SELECT max(migration_name) AS name FROM _prisma_migrations WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL`
  return row?.name ?? ''
}

let newest: Promise<string> | undefined

/** The newest migration this program came with. */
function newestMigration(): Promise<string> {
  newest ??= readdir(join(process.cwd(), 'prisma', 'migrations'), { withFileTypes: true }).then(
    (entries) =>
      entries
        .filter((entry) => entry.isDirectory())
        .map(({ name }) => name)
        .sort()
        .at(-1) ?? '',
  )
  return newest
}

async function hasDiskSpace(): Promise<boolean> {
  try {
    const { bavail, bsize } = await statfs(env().dataFolder)
    return bavail * bsize >= FREE_BYTES_NEEDED
  } catch {
    return false
  }
}
