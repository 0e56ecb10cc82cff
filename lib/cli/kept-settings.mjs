import { randomBytes } from 'node:crypto'
import { chmodSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { dataFolder } from './project-paths.mjs'

/**
 * What an installation has to remember between starts.
 *
 * @typedef {object} KeptSettings
 * @property {number} [databasePort] - port of the embedded PostgreSQL, kept so that tools find it again
 * @property {string} superuserPassword
 * @property {string} ownerPassword - of lidsong_owner, who owns the tables
 * @property {string} appPassword - of lidsong_app, whom the app signs in as
 * @property {string} sessionSecret - signs sessions when NEXTAUTH_SECRET is not set
 */

const file = join(dataFolder, 'settings.json')

/**
 * Reads the kept settings; the first call makes them, with random secrets.
 *
 * @returns {KeptSettings}
 */
export function readKeptSettings() {
  const fresh = { superuserPassword: secret(), ownerPassword: secret(), appPassword: secret(), sessionSecret: secret() }
  const kept = { ...fresh, ...readFile() }
  writeKeptSettings(kept)
  return kept
}

/** Replaces the kept settings as a whole; only the owner of the file may read it. */
export function writeKeptSettings(/** @type {KeptSettings} */ settings) {
  mkdirSync(dataFolder, { recursive: true, mode: 0o711 })
  const draft = `${file}.${process.pid}`
  writeFileSync(draft, `${JSON.stringify(settings, null, 2)}\n`, { mode: 0o600 })
  chmodSync(draft, 0o600)
  renameSync(draft, file)
}

function readFile() {
  try {
    return JSON.parse(readFileSync(file, 'utf8'))
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code === 'ENOENT') return {}
    throw new Error(`${file} cannot be read: ${error}`)
  }
}

function secret() {
  return randomBytes(32).toString('hex')
}
