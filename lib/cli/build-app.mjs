import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { hashFiles } from './hash-files.mjs'
import { buildFolder, dataFolder, packagePath, projectRoot } from './project-paths.mjs'
import { runLogged } from './run-logged.mjs'
import { showProgress } from './show-progress.mjs'

/** Everything that ends up in the build. */
const SOURCES = [
  'app',
  'lib',
  'shared',
  'public',
  'prisma/schema.prisma',
  'next.config.ts',
  'proxy.ts',
  'instrumentation.ts',
  'tsconfig.json',
  'package.json',
  'package-lock.json',
]
const NOT_BUILT = [join('lib', 'cli'), join('lib', 'db', 'generated')]

/** Builds the app when its sources differ from the last build's. */
export async function buildApp(/** @type {NodeJS.ProcessEnv} */ env = process.env) {
  const stampFile = join(projectRoot, buildFolder, 'sources.sha256')
  const wanted = hashFiles(SOURCES, (path) => NOT_BUILT.includes(path))
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === wanted) return
  rmSync(stampFile, { force: true })
  const args = [packagePath('next', 'dist', 'bin', 'next'), 'build']
  const buildEnv = { ...env, NODE_ENV: /** @type {const} */ ('production'), NEXT_TELEMETRY_DISABLED: '1' }
  await showProgress('Building the app', () =>
    runLogged(process.execPath, args, { env: buildEnv, logFile: join(dataFolder, 'logs', 'build.log') }),
  )
  writeFileSync(stampFile, wanted)
}
