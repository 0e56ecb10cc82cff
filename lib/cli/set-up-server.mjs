/** Makes roles, database and tables on a PostgreSQL server of one's own: what docker-compose.yml runs before the app. */
import { applyMigrations } from './migrate.mjs'
import { prepareDatabase } from './prepare-database.mjs'

/**
 * @param {NodeJS.ProcessEnv} env
 */
export async function setUpServer({ SUPERUSER_URL, OWNER_PASSWORD, APP_PASSWORD, DATABASE_NAME = 'lidsong' }) {
  if (!SUPERUSER_URL || !OWNER_PASSWORD || !APP_PASSWORD) {
    throw new Error('Set SUPERUSER_URL to the server, and OWNER_PASSWORD and APP_PASSWORD to what the two roles shall sign in with.')
  }
  const wanted = { superuserUrl: SUPERUSER_URL, ownerPassword: OWNER_PASSWORD, appPassword: APP_PASSWORD, database: DATABASE_NAME }
  const { ownerUrl } = await prepareDatabase(wanted)
  return applyMigrations(ownerUrl)
}

if (process.argv[1] === import.meta.filename) {
  const applied = await setUpServer(process.env)
  console.log(applied.length > 0 ? `Applied ${applied.join(', ')}.` : 'The database is up to date.')
}
