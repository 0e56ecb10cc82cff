import { createHash, randomUUID } from 'node:crypto'
import pg from 'pg'
import type { Asker, Target } from './bench-data'

/** What one claim asks of the database, statement by statement, without our program and without Prisma. */
const STATEMENTS = {
  person: `SELECT p.id FROM person p JOIN "user" u ON u.id = p.user_id WHERE p.group_id = $1 AND p.user_id = $2 AND p.active AND u.session_version = 1`,
  window: `INSERT INTO rate_window (key, starts_at, count) VALUES ($1, date_trunc('minute', now()), 1)
           ON CONFLICT (key) DO UPDATE SET count = rate_window.count + 1 RETURNING count`,
  key: `INSERT INTO idempotent_request (key, actor_id, command, body_hash) VALUES ($1, $2, 'claim-jars', $3) ON CONFLICT (key) DO NOTHING`,
  product: `SELECT p.id, p.day_id, d.state FROM preparation p JOIN day d ON d.group_id = p.group_id AND d.id = p.day_id
            WHERE p.group_id = $1 AND p.id = $2 FOR SHARE OF d`,
  household: `SELECT h.allergens, (SELECT jsonb_agg(p.allergies) FROM person p WHERE p.group_id = h.group_id AND p.household_id = h.id AND p.active)
              FROM household h WHERE h.group_id = $1 AND h.id = $2`,
  claim: `INSERT INTO claim (group_id, id, preparation_id, household_id, jars) VALUES ($1, $2, $3, $4, 0)
          ON CONFLICT (group_id, preparation_id, household_id) DO UPDATE SET jars = claim.jars RETURNING id, jars`,
  move: `UPDATE preparation SET claimed = claimed - $3 + $4 WHERE group_id = $1 AND id = $2 AND claimed - $3 + $4 <= offered RETURNING claimed`,
  jars: `UPDATE claim SET jars = $3, updated_at = now() WHERE group_id = $1 AND id = $2`,
  start: `INSERT INTO history_head (group_id, number, hash) VALUES ($1, 0, $2) ON CONFLICT DO NOTHING`,
  head: `SELECT number, hash FROM history_head WHERE group_id = $1 FOR UPDATE`,
  history: `INSERT INTO history (group_id, number, day_id, command, subject, detail, actor_id, actor_name, recorded_at, previous_hash, hash)
            VALUES ($1, $2, $3, 'claim-jars', $4, $5, $6, 'Asker', now(), $7, $8)`,
  moveHead: `UPDATE history_head SET number = $2, hash = $3 WHERE group_id = $1`,
  reply: `UPDATE idempotent_request SET reply = $2 WHERE key = $1`,
} as const

/** As many connections as the app has. */
export const openPool = (connectionString: string): pg.Pool =>
  new pg.Pool({ connectionString, max: 8, options: '-c role=lidsong_app', connectionTimeoutMillis: 30_000 })

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

async function claimOnce(pool: pg.Pool, userId: string, { groupId, preparationId, householdId }: Target, jars: number): Promise<void> {
  const key = randomUUID()
  await pool.query(STATEMENTS.person, [groupId, userId])
  await pool.query(STATEMENTS.window, [`changes:${userId}`])
  const client = await pool.connect()
  try {
    await client.query('BEGIN')
    await client.query(STATEMENTS.key, [key, userId, hashOf(key)])
    const product = (await client.query(STATEMENTS.product, [groupId, preparationId])).rows[0]
    await client.query(STATEMENTS.household, [groupId, householdId])
    const claim = (await client.query(STATEMENTS.claim, [groupId, randomUUID(), preparationId, householdId])).rows[0]
    await client.query(STATEMENTS.move, [groupId, preparationId, claim.jars, jars])
    await client.query(STATEMENTS.jars, [groupId, claim.id, jars])
    await client.query(STATEMENTS.start, [groupId, '0'.repeat(64)])
    const head = (await client.query(STATEMENTS.head, [groupId])).rows[0]
    const hash = hashOf(head.hash + key)
    const [number, subject, detail] = [Number(head.number) + 1, `claim ${claim.id}`, { preparationId, householdId, jars }]
    await client.query(STATEMENTS.history, [groupId, number, product.day_id, subject, detail, userId, head.hash, hash])
    await client.query(STATEMENTS.moveHead, [groupId, number, hash])
    await client.query(STATEMENTS.reply, [key, { claimId: claim.id, jars }])
    await client.query('COMMIT')
  } catch (error) {
    await client.query('ROLLBACK')
    throw error
  } finally {
    client.release()
  }
}

const hashOf = (text: string): string => createHash('sha256').update(text).digest('hex')
