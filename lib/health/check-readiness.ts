import 'server-only'
import { readdir, statfs } from 'node:fs/promises'
import { join } from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { database } from '@/lib/db/client'
import { env } from '@/lib/env'
import { shutdownSignal } from '@/lib/shutdown'

const DATABASE_LIMIT_MS = 1_000
const FREE_BYTES_NEEDED = 200 * 1024 * 1024

/** Why this process should get no requests now. */
export type NotReadyReason = 'shutting-down' | 'database' | 'migrations' | 'disk'

/** Everything that keeps this process from doing its work right now; empty when it is ready. */
export async function checkReadiness(): Promise<NotReadyReason[]> {
  if (shutdownSignal().aborted) return ['shutting-down']
  const [stored, hasSpace] = await Promise.all([newestStoredMigration(), hasDiskSpace()])
  const reasons: NotReadyReason[] = []
  if (stored === undefined) reasons.push('database')
  else if (stored !== (await newestMigration())) reasons.push('migrations')
  if (!hasSpace) reasons.push('disk')
  return reasons
}

/** The newest migration in the database; undefined when it does not say so within a second. */
async function newestStoredMigration(): Promise<string | undefined> {
  const question = database().$queryRaw<{ name: string | null }[]>`
    SELECT max(migration_name) AS name FROM _prisma_migrations WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL`
  const limit = new AbortController()
  try {
    const rows = await Promise.race([question, sleep(DATABASE_LIMIT_MS, undefined, { signal: limit.signal })])
    return rows && (rows[0]?.name ?? '')
  } catch {
    return undefined
  } finally {
    limit.abort()
  }
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
