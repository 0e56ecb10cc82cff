/**
 * How fast it is: npm run bench [pure|served]. Bounded in count and time, on loopback only; prints figures and fails on none of them.
 * npm run bench planning prints what the planner reaches on published files and as days grow; planning=FOLDER takes files of one's own.
 * npm run bench claims-proof sends 10,000 claims at each pool size and isolation level, and fails when a single jar is sold twice.
 */
import { join } from 'node:path'
import { packagePath } from './project-paths.mjs'
import { checkNodeVersion, installPackages } from './install-packages.mjs'
import { scriptArguments } from './script-arguments.mjs'
import { runTestCommand, stopTestProcesses } from './test-processes.mjs'
import { whenNpmEnds } from './when-npm-ends.mjs'

const PARTS = ['pure', 'served', 'planning', 'claims-proof']
/** The others take long and are run by name only. */
const USUAL = ['pure', 'served']
const CLAIMS_IN_PROOF = '10000'
const script = join('tests', 'bench', 'bench.ts')
const planning = join('tests', 'bench', 'planning-bench.ts')

async function main() {
  const asked = process.argv.slice(2).map((part) => part.split('=')[0] ?? '')
  const folder = process.argv.find((part) => part.startsWith('planning='))?.slice('planning='.length)
  const unknown = asked.filter((part) => !PARTS.includes(part))
  if (unknown.length > 0) throw new Error(`No such part: ${unknown.join(', ')}. The parts are ${PARTS.join(', ')}.`)
  checkNodeVersion()
  await installPackages()
  const parts = asked.length > 0 ? asked : USUAL
  const { TEST_BASE_URL: _, TEST_DATA_DIR: __, ...env } = process.env
  if (parts.includes('pure')) expectDone(await runTestCommand(scriptArguments(script, []), env))
  if (parts.includes('planning'))
    expectDone(await runTestCommand(scriptArguments(planning, []), folder ? { ...env, PLANNING_FOLDER: folder } : env))
  if (parts.includes('claims-proof')) expectDone(await runTestCommand(proofArguments(), { CLAIMS_IN_PROOF, ...env }))
  if (!parts.includes('served')) return
  const { withServedApp } = await import('./with-served-app.mjs')
  expectDone(await withServedApp((served) => runTestCommand(scriptArguments(script, []), { ...env, ...served })))
}

/** The test of the same name, with as many claims as the proof asks for. */
const proofArguments = () => [
  packagePath('vitest', 'vitest.mjs'),
  ...[
    'run',
    '--config',
    join('tests', 'config', 'vitest.config.ts'),
    '--project',
    'database',
    join('tests', 'lib', 'services', 'day', 'no-oversell.test.ts'),
  ],
]

function expectDone(/** @type {number | string} */ code) {
  if (code !== 0) throw new Error(`The measuring broke off (${code}).`)
}

async function stop() {
  await stopTestProcesses()
  process.exit(1)
}

for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) process.on(signal, () => void stop())
whenNpmEnds(() => void stop())

main()
  .then(() => process.exit(0))
  .catch((error) => {
    console.error(error instanceof Error ? error.message : error)
    process.exit(1)
  })
