import { existsSync } from 'node:fs'
import { join } from 'node:path'
import pg from 'pg'
import { dataFolder, projectRoot } from './project-paths.mjs'
import { runLogged } from './run-logged.mjs'
import { scriptArguments } from './script-arguments.mjs'
import { showProgress } from './show-progress.mjs'

/**
 * Loads the demo evening into a database that holds no group yet.
 *
 * @param {NodeJS.ProcessEnv} env - as the app gets it: the demo goes through the app's own services and role
 * @param {string} ownerUrl
 */
export async function loadDemoDay(env, ownerUrl) {
  if (!existsSync(join(projectRoot, 'lib', 'cli', 'load-scenario.ts'))) return
  if (await holdsGroup(ownerUrl)) return
  const args = scriptArguments(join('lib', 'cli', 'load-scenario.ts'), [join(projectRoot, 'prisma', 'seed', 'scenarios.json'), 'S1'])
  await showProgress('Loading the demo evening', () =>
    runLogged(process.execPath, args, { env, logFile: join(dataFolder, 'logs', 'demo.log') }),
  )
}

async function holdsGroup(/** @type {string} */ ownerUrl) {
  const client = new pg.Client({ connectionString: ownerUrl, connectionTimeoutMillis: 10_000 })
  await client.connect()
  try {
    const { rowCount } = await client.query('SELECT 1 FROM "group" LIMIT 1')
    return Boolean(rowCount)
  } finally {
    await client.end()
  }
}
