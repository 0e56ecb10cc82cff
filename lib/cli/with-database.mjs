/** Runs a script of ours with a migrated database: the one that runs, or the embedded one started for the while. */
import { spawn } from 'node:child_process'
import { checkNodeVersion, installPackages } from './install-packages.mjs'
import { dataFolder, projectRoot } from './project-paths.mjs'

async function main() {
  const [script, ...args] = process.argv.slice(2)
  if (!script) throw new Error('Name the script: node lib/cli/with-database.mjs SCRIPT [ARGUMENTS]')
  checkNodeVersion()
  await installPackages()
  const { openDatabase } = await import('./open-database.mjs')
  const { applyMigrations } = await import('./migrate.mjs')
  const { generateClient } = await import('./generate-client.mjs')
  const { readKeptSettings } = await import('./kept-settings.mjs')
  const { scriptArguments } = await import('./script-arguments.mjs')
  const { ended } = await import('./run-logged.mjs')

  const database = await openDatabase()
  try {
    await applyMigrations(database.ownerUrl)
    await generateClient()
    const env = {
      ...process.env,
      DATABASE_URL: database.appUrl,
      DATABASE_OWNER_URL: database.ownerUrl,
      NEXTAUTH_URL: process.env.NEXTAUTH_URL ?? 'http://localhost:3000',
      NEXTAUTH_SECRET: process.env.NEXTAUTH_SECRET ?? readKeptSettings().sessionSecret,
      LIDSONG_DATA_DIR: dataFolder,
    }
    const child = spawn(process.execPath, scriptArguments(script, args), { cwd: projectRoot, env, stdio: 'inherit' })
    for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM'])) process.on(signal, () => child.kill(signal))
    const code = await ended(child)
    process.exitCode = typeof code === 'number' ? code : 1
  } finally {
    await database.close()
  }
}

main().catch((error) => {
  console.error(error instanceof Error ? error.message : error)
  process.exitCode = 1
})
