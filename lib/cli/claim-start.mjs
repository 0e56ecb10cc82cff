import { mkdirSync, readFileSync, readlinkSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { commandLineOf, isAlive, waitUntil } from './process-facts.mjs'
import { dataFolder, projectRoot } from './project-paths.mjs'

const file = join(dataFolder, 'start.json')
const STOP_MS = 15_000

/**
 * Makes this process the one start of its data folder.
 * Another one that still runs is named and refused; an app that a killed start left behind is ended first.
 */
export async function claimStart() {
  const last = readLast()
  if (last && last.pid !== process.pid && isAlive(last.pid) && commandLineOf(last.pid).includes('start.mjs')) {
    throw new Error(`Lidsong already runs${last.address ? ` at ${last.address}` : ''} (process ${last.pid}): end that one first.`)
  }
  if (last?.appPid && isLeftOver(last.appPid)) {
    process.kill(last.appPid, 'SIGTERM')
    const gone = await waitUntil(() => !isAlive(last.appPid), STOP_MS)
    if (!gone) process.kill(last.appPid, 'SIGKILL')
  }
  mkdirSync(dataFolder, { recursive: true, mode: 0o711 })
  write({ pid: process.pid })
  return {
    tellApp: (/** @type {{ pid: number, address: string }} */ app) => write({ pid: process.pid, appPid: app.pid, address: app.address }),
    release: async () => rmSync(file, { force: true }),
  }
}

function readLast() {
  try {
    return JSON.parse(readFileSync(file, 'utf8'))
  } catch {
    return undefined
  }
}

function write(/** @type {object} */ start) {
  writeFileSync(file, JSON.stringify(start))
}

/** Is this process a server of this very checkout? Process ids are reused, so the id alone proves nothing. */
function isLeftOver(/** @type {number} */ pid) {
  if (!isAlive(pid) || !commandLineOf(pid).includes('next')) return false
  try {
    return process.platform !== 'linux' || readlinkSync(`/proc/${pid}/cwd`) === projectRoot
  } catch {
    return false
  }
}
