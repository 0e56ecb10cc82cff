import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import pg from 'pg'

/** The folder of the app under test. */
export const dataFolder = process.env.TEST_DATA_DIR ?? '.data'

/** Asks the database of the app under test, past the app and as the owner of its tables. */
export async function askDatabase<Row>(sql: string, values: readonly unknown[] = []): Promise<Row[]> {
  const { databasePort, ownerPassword } = JSON.parse(await readFile(join(dataFolder, 'settings.json'), 'utf8'))
  const client = new pg.Client({
    ...{ host: '127.0.0.1', port: databasePort, database: 'lidsong', user: 'lidsong_owner', password: ownerPassword },
    connectionTimeoutMillis: 10_000,
  })
  await client.connect()
  try {
    return (await client.query(sql, [...values])).rows
  } finally {
    await client.end()
  }
}

/** All that a change of a group would move: its history, its claims, and the taps that were answered. */
export async function traceOfChanges(groupId: string): Promise<string> {
  const [row] = await askDatabase<Record<string, unknown>>(
    `SELECT (SELECT count(*) FROM history WHERE group_id = $1) AS entries,
            (SELECT hash FROM history_head WHERE group_id = $1) AS head,
            (SELECT coalesce(sum(jars), 0) FROM claim WHERE group_id = $1) AS claimed,
            (SELECT coalesce(sum(claimed), 0) FROM preparation WHERE group_id = $1) AS counted,
            (SELECT count(*) FROM household WHERE group_id = $1) AS households,
            (SELECT count(*) FROM idempotent_request WHERE reply IS NULL) AS unanswered`,
    [groupId],
  )
  return JSON.stringify(row)
}

/** What a test needs to know of a loaded evening. */
export interface Evening {
  readonly groupId: string
  readonly dayId: string
  /** Products by the first letter of their batches. */
  readonly products: Readonly<Record<string, { readonly id: string; readonly offered: number; readonly claimed: number }>>
  /** Ids of households by name. */
  readonly households: Readonly<Record<string, string>>
}

/** Looks up the ids of a loaded evening. */
export async function eveningOf(groupId: string): Promise<Evening> {
  const products = await askDatabase<{ letter: string; id: string; dayId: string; offered: number; claimed: number }>(
    'SELECT letter, id, day_id AS "dayId", offered, claimed FROM preparation WHERE group_id = $1 ORDER BY letter',
    [groupId],
  )
  const households = await askDatabase<{ id: string; name: string }>('SELECT id, name FROM household WHERE group_id = $1', [groupId])
  return {
    groupId,
    dayId: products[0]?.dayId ?? '',
    products: Object.fromEntries(products.map(({ letter, ...product }) => [letter, product])),
    households: Object.fromEntries(households.map(({ name, id }) => [name, id])),
  }
}
