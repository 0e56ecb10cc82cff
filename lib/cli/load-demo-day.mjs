import { existsSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import pg from 'pg'
import { dataFolder, projectRoot } from './project-paths.mjs'
import { runLogged } from './run-logged.mjs'
import { scriptArguments } from './script-arguments.mjs'
import { showProgress } from './show-progress.mjs'

/** There while the demo is being loaded: found at a start, the last load was cut short. */
const loadingMark = join(dataFolder, 'demo-day-loading')

/**
 * Loads the demo evening into a database that holds no group yet.
 *
 * A load that was cut short is thrown away and done again, in the embedded database only: nobody can have worked on it.
 *
 * @param {NodeJS.ProcessEnv} env - as the app gets it: the demo goes through the app's own services and role
 * @param {import('./open-database.mjs').OpenDatabase} database
 */
export async function loadDemoDay(env, { ownerUrl, isEmbedded }) {
  if (isEmbedded && existsSync(loadingMark)) await withClient(ownerUrl, emptyTables)
  if (await withClient(ownerUrl, holdsGroup)) return
  const args = scriptArguments(join('lib', 'cli', 'load-scenario.ts'), [join(projectRoot, 'prisma', 'seed', 'scenarios.json'), 'S1'])
  writeFileSync(loadingMark, '')
  await showProgress('Loading the demo evening', () =>
    runLogged(process.execPath, args, { env, logFile: join(dataFolder, 'logs', 'demo.log') }),
  )
  rmSync(loadingMark)
}

async function holdsGroup(/** @type {pg.Client} */ client) {
  const { rowCount } = await client.query('SELECT 1 FROM "group" LIMIT 1')
  return Boolean(rowCount)
}

async function emptyTables(/** @type {pg.Client} */ client) {
  const { rows } = await client.query(
    `SELECT format('%I', tablename) AS name FROM pg_tables WHERE schemaname = 'public' AND tablename <> '_prisma_migrations'`,
  )
  await client.query(`TRUNCATE ${rows.map(({ name }) => name).join(', ')}`)
}

/**
 * @template T
 * @param {string} url
 * @param {(client: pg.Client) => Promise<T>} work
 * @returns {Promise<T>}
 */
async function withClient(url, work) {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 10_000 })
  await client.connect()
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}
