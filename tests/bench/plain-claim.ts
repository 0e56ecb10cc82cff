import { createHash, randomUUID } from 'node:crypto'
import pg from 'pg'
import type { Asker, Target } from './bench-data'

/** The one statement that a plain claim is (see lib/services/day/claim-short-way.ts), sent without our program. */
const CLAIM = {
  name: 'claim',
  text: 'SELECT reply, of_day FROM claim_the_short_way($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15)',
}

/** As many connections as the app has. */
export const openPool = (connectionString: string): pg.Pool =>
  new pg.Pool({ connectionString, max: 5, options: '-c role=lidsong_app', connectionTimeoutMillis: 30_000 })

/** Claims a second that the database takes over the wire, with so many asking at once. */
export async function plainClaimsPerSecond(
  pool: pg.Pool,
  askers: readonly Asker[],
  pick: (asker: Asker) => Target,
  total: number,
): Promise<number> {
  let next = 0
  const startedAt = performance.now()
  await Promise.all(
    askers.map(async (asker) => {
      while (next < total) {
        next += 1
        await claimOnce(pool, asker.userId, pick(asker), 1 + (next % 5))
      }
    }),
  )
  return total / ((performance.now() - startedAt) / 1000)
}

const MINUTE_MS = 60_000

async function claimOnce(pool: pg.Pool, userId: string, { groupId, preparationId, householdId }: Target, jars: number): Promise<void> {
  const [key, now] = [randomUUID(), new Date()]
  const minute = new Date(Math.floor(now.getTime() / MINUTE_MS) * MINUTE_MS)
  const values = [
    ...[key, createHash('sha256').update(key).digest('hex'), userId, 1, ['organiser'], ['member'], minute, 1_000_000],
    ...[groupId, preparationId, householdId, jars, randomUUID(), ['plum-jam'], now.toISOString()],
  ]
  const { rows } = await pool.query({ ...CLAIM, values })
  if (!rows[0]?.reply) throw new Error(`a plain claim of ${householdId} went no short way`)
}
