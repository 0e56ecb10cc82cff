import { createHash, randomUUID } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import pg from 'pg'
import { prepareQueue } from './prepare-queue.mjs'
import { projectRoot } from './project-paths.mjs'

/** The advisory lock that Prisma's own `migrate deploy` takes, so that the two never run at once. */
const MIGRATION_LOCK = 72707369
const LOCK_WAIT = '60s'

/** Prisma's own table, column by column, so that `prisma migrate deploy` and `status` work on the same database. */
const MIGRATIONS_TABLE = `CREATE TABLE IF NOT EXISTS _prisma_migrations (
  id VARCHAR(36) PRIMARY KEY NOT NULL,
  checksum VARCHAR(64) NOT NULL,
  finished_at TIMESTAMPTZ,
  migration_name VARCHAR(255) NOT NULL,
  logs TEXT,
  rolled_back_at TIMESTAMPTZ,
  started_at TIMESTAMPTZ NOT NULL DEFAULT now(),
  applied_steps_count INTEGER NOT NULL DEFAULT 0
)`

/** A database that these migrations do not fit; nothing was changed. */
export class MigrationRefused extends Error {}

/**
 * Brings a database up to the newest migration, and the job queue's own schema beside it. Each migration is one transaction: it is there
 * whole or not at all.
 *
 * @param {string} ownerUrl - a role that may make tables
 * @param {string} [folder] - holds one folder a migration, applied in the order of their names
 * @returns {Promise<string[]>} the names of the migrations that were applied now
 * @throws MigrationRefused when an applied migration was changed, is unknown here, or had failed
 */
export async function applyMigrations(ownerUrl, folder = join(projectRoot, 'prisma', 'migrations')) {
  const client = new pg.Client({ connectionString: ownerUrl, connectionTimeoutMillis: 10_000 })
  await client.connect()
  try {
    await client.query(`SET lock_timeout = '${LOCK_WAIT}'`)
    await client.query('SELECT pg_advisory_lock($1)', [MIGRATION_LOCK])
    await client.query('SET client_min_messages = warning')
    await client.query(MIGRATIONS_TABLE)
    const migrations = readMigrations(folder)
    const pending = await findPending(client, migrations)
    for (const migration of pending) await applyMigration(client, migration)
    await letAppRoleIn(client)
    await prepareQueue(ownerUrl, client)
    return pending.map(({ name }) => name)
  } finally {
    await client.end()
  }
}

/**
 * The migrations on disk, oldest first.
 *
 * @param {string} folder
 */
export function readMigrations(folder) {
  const folders = readdirSync(folder, { withFileTypes: true }).filter((entry) => entry.isDirectory())
  return folders
    .map(({ name }) => {
      const sql = readFileSync(join(folder, name, 'migration.sql'), 'utf8')
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') }
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
}

/** @typedef {ReturnType<typeof readMigrations>[number]} Migration */

async function findPending(/** @type {pg.Client} */ client, /** @type {Migration[]} */ migrations) {
  const { rows } = await client.query('SELECT migration_name, checksum, finished_at FROM _prisma_migrations WHERE rolled_back_at IS NULL')
  for (const row of rows) {
    const ours = migrations.find(({ name }) => name === row.migration_name)
    if (!ours)
      throw new MigrationRefused(
        `The database has the migration ${row.migration_name}, which this program does not know: it is newer than the program.`,
      )
    if (!row.finished_at)
      throw new MigrationRefused(
        `The migration ${row.migration_name} failed half-way earlier: repair it, then mark it with "prisma migrate resolve".`,
      )
    if (ours.checksum !== row.checksum) {
      throw new MigrationRefused(
        `The migration ${row.migration_name} was changed after it was applied: put the file back and write a new migration.`,
      )
    }
  }
  const applied = new Set(rows.map((row) => row.migration_name))
  return migrations.filter(({ name }) => !applied.has(name))
}

async function applyMigration(/** @type {pg.Client} */ client, /** @type {Migration} */ { name, sql, checksum }) {
  await client.query('BEGIN')
  try {
    await client.query(sql)
    await client.query(
      `INSERT INTO _prisma_migrations (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
       VALUES ($1, $2, $3, transaction_timestamp(), clock_timestamp(), 1)`,
      [randomUUID(), checksum, name],
    )
    await client.query('COMMIT')
  } catch (error) {
    await client.query('ROLLBACK')
    throw new Error(`The migration ${name} failed and changed nothing: ${error}`, { cause: error })
  }
}

/** The app may read which migrations are in (its ready answer says so), and the owner may act as the app. */
async function letAppRoleIn(/** @type {pg.Client} */ client) {
  const { rows } = await client.query(`SELECT
    EXISTS (SELECT 1 FROM pg_roles WHERE rolname = 'lidsong_app') AS has_role,
    COALESCE((SELECT pg_has_role(current_user, oid, 'SET') FROM pg_roles WHERE rolname = 'lidsong_app'), false) AS may_act`)
  if (!rows[0].has_role) return
  if (!rows[0].may_act) await client.query('GRANT lidsong_app TO CURRENT_USER')
  await client.query('GRANT SELECT ON _prisma_migrations TO lidsong_app')
}

async function main() {
  const url = process.env.DATABASE_OWNER_URL ?? process.env.DATABASE_URL
  if (!url) throw new Error('Set DATABASE_OWNER_URL (or DATABASE_URL) to the database that is to be migrated.')
  const applied = await applyMigrations(url)
  console.log(applied.length > 0 ? `Applied ${applied.join(', ')}.` : 'The database is up to date.')
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  main().catch((error) => {
    console.error(error instanceof Error ? error.message : error)
    process.exitCode = 1
  })
}
