import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { dataFolder } from './project-paths.mjs'
import { runLogged } from './run-logged.mjs'
import { showProgress } from './show-progress.mjs'

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
]

/**
 * The Chromium that the browser tests drive; on Debian, as root, it is installed when it is missing.
 *
 * @returns {Promise<string>}
 */
export async function findChromium() {
  const wanted = process.env.CHROMIUM_PATH
  if (wanted && !existsSync(wanted)) throw new Error(`CHROMIUM_PATH names ${wanted}, which is not there.`)
  return wanted ?? findInstalled() ?? (await installOnDebian())
}

const findInstalled = () => PLACES.find((place) => existsSync(place))

async function installOnDebian() {
  const mayInstall = process.getuid?.() === 0 && spawnSync('apt-get', ['--version'], { stdio: 'ignore' }).status === 0
  if (!mayInstall) {
    throw new Error('The browser tests need Chromium: install it (Debian: apt-get install chromium), or name it in CHROMIUM_PATH.')
  }
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
  const logFile = join(dataFolder, 'logs', 'chromium.log')
  await showProgress('Installing Chromium from Debian', async () => {
    await runLogged('apt-get', ['update'], { env, logFile })
    await runLogged('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], { env, logFile })
  })
  const installed = findInstalled()
  if (!installed) throw new Error(`Chromium was installed but is not at any known place; name it in CHROMIUM_PATH. See ${logFile}.`)
  return installed
}
