/**
 * All checks, from a fresh clone: npm test [STEP …]. The last line is "N passed, N failed".
 * Runs before anything is installed, so what it imports at its head uses Node alone.
 */
import { checkNodeVersion, installPackages } from './install-packages.mjs'
import { STEPS } from './test-steps.mjs'
import { stopTestProcesses } from './test-processes.mjs'
import { whenNpmEnds } from './when-npm-ends.mjs'

/** @typedef {import('./test-reports.mjs').Count} Count */

async function main() {
  const names = process.argv.slice(2)
  const unknown = names.filter((name) => !STEPS.some((step) => step.name === name))
  if (unknown.length > 0) throw new Error(`No such step: ${unknown.join(', ')}. The steps are ${STEPS.map(({ name }) => name).join(', ')}.`)
  checkNodeVersion()
  await installPackages()

  const chosen = STEPS.filter(({ name }) => names.length === 0 || names.includes(name))
  /** @type {(Count & { name: string, seconds: string })[]} */
  const results = []
  for (const step of chosen) results.push(await runStep(step))
  return results
}

/** Runs one step; whatever goes wrong in it counts as one failure, and the next step still runs. */
async function runStep(/** @type {import('./test-steps.mjs').Step} */ step) {
  const startedAt = Date.now()
  console.log(`\n── ${step.name}: ${step.title}`)
  const count = await step.run().catch((error) => {
    console.error(error instanceof Error ? error.message : error)
    return { passed: 0, failed: 1 }
  })
  const seconds = ((Date.now() - startedAt) / 1000).toFixed(1)
  console.log(`── ${step.name}: ${count.passed} passed, ${count.failed} failed in ${seconds} s`)
  return { name: step.name, ...count, seconds }
}

function report(/** @type {Awaited<ReturnType<typeof main>>} */ results) {
  const sum = (/** @type {'passed' | 'failed'} */ what) => results.reduce((total, result) => total + result[what], 0)
  console.log('')
  for (const { name, names = [] } of results) for (const failed of names) console.log(`failed in ${name}: ${failed}`)
  for (const { name, passed, failed, seconds } of results)
    console.log(`${name.padEnd(10)} ${String(passed).padStart(5)} passed ${String(failed).padStart(4)} failed ${seconds.padStart(7)} s`)
  console.log(`${sum('passed')} passed, ${sum('failed')} failed`)
  return sum('failed') === 0 ? 0 : 1
}

async function stop() {
  await stopTestProcesses()
  process.exit(1)
}

for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) process.on(signal, () => void stop())
whenNpmEnds(() => void stop())

main()
  .then(report)
  .catch((error) => {
    console.error(error instanceof Error ? error.message : error)
    console.log('0 passed, 1 failed')
    return 1
  })
  .then((code) => process.exit(code))
