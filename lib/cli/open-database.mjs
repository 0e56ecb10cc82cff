import { join } from 'node:path'
import { readKeptSettings, writeKeptSettings } from './kept-settings.mjs'
import { dataFolder } from './project-paths.mjs'
import { runPostgres } from './run-postgres.mjs'
import { prepareDatabase, superuserAddress } from './prepare-database.mjs'

/** PostgreSQL, Appendix A: invalid_password. */
const WRONG_PASSWORD = '28P01'
const FOREIGN_DATABASE = `The database in ${dataFolder} was made with other passwords than its settings.json holds: put that file back, or take the whole folder away to begin anew.`

/**
 * A database to work on.
 *
 * @typedef {object} OpenDatabase
 * @property {string} appUrl - for the app, as a role that cannot change history
 * @property {string} ownerUrl - for migrations
 * @property {boolean} isEmbedded - it is ours alone, in the data folder
 * @property {() => Promise<void>} close - stops the embedded server when we look after it
 */

/**
 * Opens the database that the environment names, or the embedded one when it names none.
 *
 * @param {{ takeOver?: boolean }} [options] - takeOver: look after the embedded server from now on, whoever started it
 * @returns {Promise<OpenDatabase>}
 */
export async function openDatabase({ takeOver = false } = {}) {
  const { DATABASE_URL, DATABASE_OWNER_URL } = process.env
  if (DATABASE_URL) return { appUrl: DATABASE_URL, ownerUrl: DATABASE_OWNER_URL ?? DATABASE_URL, isEmbedded: false, close: async () => {} }

  const kept = readKeptSettings()
  const server = await runPostgres({
    folder: join(dataFolder, 'postgres'),
    logFile: join(dataFolder, 'logs', 'postgres.log'),
    superuserPassword: kept.superuserPassword,
    port: kept.databasePort,
    takeOver,
  })
  if (kept.databasePort !== server.port) writeKeptSettings({ ...kept, databasePort: server.port })
  try {
    const urls = await prepareDatabase({
      ...kept,
      superuserUrl: superuserAddress(kept.superuserPassword, server.port),
      database: 'lidsong',
    })
    return { ...urls, isEmbedded: true, close: server.stop }
  } catch (error) {
    await server.stop()
    throw /** @type {{ code?: string }} */ (error).code === WRONG_PASSWORD ? new Error(FOREIGN_DATABASE, { cause: error }) : error
  }
}
