import { Logger, runMigrations } from 'graphile-worker'

/** The queue library's own schema. */
const QUEUE = 'graphile_worker'
const APP_ROLE = 'lidsong_app'

/**
 * Brings the schema of the job queue up to date and lets the app's role work with it, which owns nothing of it.
 *
 * The library closes its tables by row security to everybody but their owner; the app's role gets a policy on each.
 *
 * @param {string} ownerUrl
 * @param {import('pg').Client} client - connected as the owner; others must be kept away for the while
 */
export async function prepareQueue(ownerUrl, client) {
  await runMigrations({ connectionString: ownerUrl, maxPoolSize: 1, schema: QUEUE, logger: new Logger(() => () => {}) })
  const { rows } = await client.query('SELECT 1 FROM pg_roles WHERE rolname = $1', [APP_ROLE])
  if (rows.length === 0) return
  await client.query(`GRANT USAGE ON SCHEMA ${QUEUE} TO ${APP_ROLE}`)
  await client.query(`GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA ${QUEUE} TO ${APP_ROLE}`)
  await client.query(`REVOKE INSERT, UPDATE, DELETE ON ${QUEUE}.migrations FROM ${APP_ROLE}`)
  await client.query(`GRANT USAGE ON ALL SEQUENCES IN SCHEMA ${QUEUE} TO ${APP_ROLE}`)
  for (const table of await tablesWithoutPolicy(client))
    await client.query(
      `CREATE POLICY app_works ON ${QUEUE}.${client.escapeIdentifier(table)} TO ${APP_ROLE} USING (true) WITH CHECK (true)`,
    )
}

async function tablesWithoutPolicy(/** @type {import('pg').Client} */ client) {
  const { rows } = await client.query(
    `SELECT c.relname AS name FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
     WHERE n.nspname = $1 AND c.relrowsecurity AND NOT EXISTS (SELECT 1 FROM pg_policy p WHERE p.polrelid = c.oid AND p.polname = 'app_works')`,
    [QUEUE],
  )
  return rows.map(({ name }) => String(name))
}
