/**
 * From a checkout to a served app: packages, database, migrations, build, demo day, server.
 * Runs before anything is installed, so this file and what it imports at its head use Node alone.
 */
import { checkNodeVersion, installPackages } from './install-packages.mjs'
import { stopRunningCommands } from './run-logged.mjs'
import { readStartArguments } from './start-arguments.mjs'
import { whenNpmEnds } from './when-npm-ends.mjs'

/** A terminal, npm and a shell may each pass on the same Ctrl-C. */
const SAME_SIGNAL_MS = 500

/** What has to be ended, in this order, when we are told to stop. @type {(() => Promise<void>)[]} */
const endings = []
let endingSince = 0

/** Ends the app, then the database. */
async function end(/** @type {number} */ exitCode) {
  if (endingSince) return
  endingSince = Date.now()
  stopRunningCommands()
  for (const ending of endings) await ending()
  process.exit(exitCode)
}

/** The first signal ends us in good order, a second one at once. */
function onSignal() {
  if (endingSince && Date.now() - endingSince > SAME_SIGNAL_MS) process.exit(1)
  void end(0)
}

async function main() {
  const options = readStartArguments(process.argv.slice(2))
  checkNodeVersion()
  await installPackages()
  const { startApp } = await import('./start-app.mjs')
  await startApp(options, { endings, onAppEnded: (code) => void end(code) })
}

for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) process.on(signal, onSignal)
whenNpmEnds(() => void end(0))
main().catch((error) => {
  if (endingSince) return
  console.error(`\n${error instanceof Error ? error.message : error}`)
  void end(1)
})
