import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { buildApp } from './build-app.mjs'
import { generateClient } from './generate-client.mjs'
import { readKeptSettings } from './kept-settings.mjs'
import { loadDemoDay } from './load-demo-day.mjs'
import { applyMigrations } from './migrate.mjs'
import { openDatabase } from './open-database.mjs'
import { isPortFree } from './process-facts.mjs'
import { dataFolder } from './project-paths.mjs'
import { serveApp } from './serve-app.mjs'
import { showProgress } from './show-progress.mjs'
import { wantsDemo } from './start-arguments.mjs'
import { claimStart } from './claim-start.mjs'

const FIRST_PORT = 3000
const PORTS_TRIED = 50

/**
 * Everything that comes after the packages.
 *
 * @param {ReturnType<typeof import('./start-arguments.mjs').readStartArguments>} options
 * @param {{ endings: (() => Promise<void>)[], onAppEnded: (code: number) => void }} life - endings run last to first entered: the app before the database
 */
export async function startApp(options, { endings, onAppEnded }) {
  const startedAt = Date.now()
  const claim = await claimStart()
  endings.unshift(claim.release)
  const port = await choosePort(options.port, options.host)
  const address = process.env.NEXTAUTH_URL ?? `http://localhost:${port}`

  const database = await showProgress('Opening the database', () => openDatabase({ takeOver: true }))
  endings.unshift(database.close)
  const applied = await applyMigrations(database.ownerUrl)
  if (applied.length > 0) console.log(`  Migrations applied: ${applied.join(', ')}`)
  await generateClient()

  const env = appEnvironment(database.appUrl, address)
  if (!options.dev) await buildApp(env)
  const hasDemo = wantsDemo(options, database.isEmbedded)
  if (hasDemo) await loadDemoDay(env, database)

  const app = await serveApp({ env, port, host: options.host, dev: options.dev, onEnded: onAppEnded })
  endings.unshift(app.stop)
  claim.tellApp({ pid: app.pid, address })
  console.log(`\nLidsong is at ${address}  (ready after ${((Date.now() - startedAt) / 1000).toFixed(1)} s; Ctrl-C ends it)`)
  if (hasDemo) printDemoSignIns()
}

/**
 * @param {number | undefined} wanted
 * @param {string} host
 */
async function choosePort(wanted, host) {
  if (wanted !== undefined) {
    if (await isPortFree(wanted, host)) return wanted
    throw new Error(`Port ${wanted} is in use: end what uses it, or name another with --port.`)
  }
  for (let port = FIRST_PORT; port < FIRST_PORT + PORTS_TRIED; port += 1) {
    if (await isPortFree(port, host)) return port
  }
  throw new Error(`No free port from ${FIRST_PORT} to ${FIRST_PORT + PORTS_TRIED - 1}: name one with --port.`)
}

/** What the app's process is told; the owner's address of the database is not among it. */
function appEnvironment(/** @type {string} */ appUrl, /** @type {string} */ address) {
  const { DATABASE_OWNER_URL: _, ...inherited } = process.env
  return {
    ...inherited,
    DATABASE_URL: appUrl,
    NEXTAUTH_URL: address,
    NEXTAUTH_SECRET: process.env.NEXTAUTH_SECRET ?? readKeptSettings().sessionSecret,
    LIDSONG_DATA_DIR: dataFolder,
    NEXT_TELEMETRY_DISABLED: '1',
  }
}

function printDemoSignIns() {
  const file = join(dataFolder, 'demo-sign-ins.txt')
  if (existsSync(file)) console.log(`\n${readFileSync(file, 'utf8').trimEnd()}\n`)
}
