import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { hashFiles } from './hash-files.mjs'
import { dataFolder, packagePath, projectRoot } from './project-paths.mjs'
import { runLogged } from './run-logged.mjs'
import { showProgress } from './show-progress.mjs'

const generated = join(projectRoot, 'lib', 'db', 'generated')
const stampFile = join(generated, 'schema.sha256')

/** Writes Prisma's client again when the schema or Prisma itself has changed. */
export async function generateClient() {
  const wanted = hashFiles([join('prisma', 'schema.prisma'), join('node_modules', 'prisma', 'package.json')])
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === wanted) return
  const args = [packagePath('prisma', 'build', 'index.js'), 'generate', '--config', join('prisma', 'prisma.config.ts')]
  // Generating needs no schema engine, but Prisma looks for one and would fetch it: any program will do.
  const env = { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1', CHECKPOINT_DISABLE: '1' }
  await showProgress('Writing the database client', () =>
    runLogged(process.execPath, args, { env, logFile: join(dataFolder, 'logs', 'generate.log') }),
  )
  writeFileSync(stampFile, wanted)
}
