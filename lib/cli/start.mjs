/**
 * From a checkout to a served app: packages, database, migrations, build, demo day, server.
 * Runs before anything is installed, so this file and what it imports at its head use Node alone.
 */
import { checkNodeVersion, installPackages } from './install-packages.mjs'
import { stopRunningCommands } from './run-logged.mjs'
import { readStartArguments } from './start-arguments.mjs'
import { whenNpmEnds } from './when-npm-ends.mjs'

/** What has to be ended, in this order, when we are told to stop. @type {(() => Promise<void>)[]} */
const endings = []
let isEnding = false

/** Ends the app, then the database; a second call ends us at once. */
async function end(/** @type {number} */ exitCode) {
  if (isEnding) process.exit(1)
  isEnding = true
  stopRunningCommands()
  for (const ending of endings) await ending()
  process.exit(exitCode)
}

async function main() {
  const options = readStartArguments(process.argv.slice(2))
  checkNodeVersion()
  await installPackages()
  const { startApp } = await import('./start-app.mjs')
  await startApp(options, { endings, onAppEnded: (code) => void end(code) })
}

process.on('SIGINT', () => void end(0))
process.on('SIGTERM', () => void end(0))
process.on('SIGHUP', () => void end(0))
whenNpmEnds(() => void end(0))
main().catch((error) => {
  if (isEnding) return
  console.error(`\n${error instanceof Error ? error.message : error}`)
  void end(1)
})
