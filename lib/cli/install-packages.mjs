import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { dataFolder, packagePath, projectRoot } from './project-paths.mjs'
import { runLogged } from './run-logged.mjs'
import { showProgress } from './show-progress.mjs'

/**
 * Throws unless this Node satisfies `engines` in package.json, written as ">=MAJOR.MINOR".
 */
export function checkNodeVersion() {
  const { engines } = JSON.parse(readFileSync(join(projectRoot, 'package.json'), 'utf8'))
  const [major = 0, minor = 0] = engines.node.replace('>=', '').split('.').map(Number)
  const [ourMajor = 0, ourMinor = 0] = process.versions.node.split('.').map(Number)
  if (ourMajor > major || (ourMajor === major && ourMinor >= minor)) return
  throw new Error(`Lidsong needs Node ${engines.node}; this is ${process.version}. Install a newer Node and try again.`)
}

/** Installs the packages of the lockfile when node_modules is missing or holds other versions. */
export async function installPackages() {
  if (!installedAsLocked()) {
    const args = ['ci', '--include=dev', '--no-audit', '--no-fund']
    const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm'
    await showProgress('Installing packages', () => runLogged(npm, args, { logFile: join(dataFolder, 'logs', 'install.log') }))
  }
}

/** Does node_modules hold exactly what the lockfile names? Packages for other machines may be absent. */
export function installedAsLocked() {
  const installedFile = packagePath('.package-lock.json')
  if (!existsSync(installedFile)) return false
  const installed = JSON.parse(readFileSync(installedFile, 'utf8')).packages
  const locked = JSON.parse(readFileSync(join(projectRoot, 'package-lock.json'), 'utf8')).packages
  return Object.entries(locked).every(([path, wanted]) => {
    if (path === '') return true
    const found = installed[path]
    return found ? found.version === wanted.version : wanted.optional === true || wanted.devOptional === true
  })
}
