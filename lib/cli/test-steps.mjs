import { mkdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { dataFolder, packagePath, projectRoot } from './project-paths.mjs'
import { runTestCommand } from './test-processes.mjs'
import { countPlaywright, countVitest } from './test-reports.mjs'

/**
 * @typedef {object} Step
 * @property {string} name
 * @property {string} title
 * @property {() => Promise<import('./test-reports.mjs').Count>} run
 */

/** @type {readonly Step[]} */
export const STEPS = [
  { name: 'types', title: 'the types fit', run: checkTypes },
  { name: 'lint', title: 'form, import rule, unsafe code', run: checkLint },
  { name: 'unit', title: 'pure code and the rules of the house', run: () => runVitest('unit') },
  { name: 'published', title: 'against published tables and instances', run: () => runVitest('published') },
  {
    name: 'coverage',
    title: 'every branch of process, process clock and trace is walked by the tests of its own room',
    run: checkCoverage,
  },
  { name: 'database', title: 'on a real PostgreSQL', run: () => runVitest('database') },
  { name: 'build', title: 'the app builds', run: checkBuild },
  { name: 'browser', title: 'what people do, in Chromium', run: checkBrowser },
]

const PASSED = { passed: 1, failed: 0 }
const FAILED = { passed: 0, failed: 1 }
const reports = join(projectRoot, 'reports')

async function checkTypes() {
  await generate()
  const typegen = await runTestCommand([packagePath('next', 'dist', 'bin', 'next'), 'typegen'], {
    ...process.env,
    NEXT_TELEMETRY_DISABLED: '1',
  })
  const types = await runTestCommand([packagePath('typescript', 'bin', 'tsc'), '--noEmit'])
  return typegen === 0 && types === 0 ? PASSED : FAILED
}

async function checkLint() {
  const args = [
    packagePath('@biomejs', 'biome', 'bin', 'biome'),
    'check',
    '--error-on-warnings',
    '--config-path',
    'tests/config/rules.json',
  ]
  return (await runTestCommand(args)) === 0 ? PASSED : FAILED
}

async function runVitest(/** @type {string} */ project) {
  await generate()
  const file = freshReport(`${project}.json`)
  const args = [packagePath('vitest', 'vitest.mjs'), 'run', '--config', 'tests/config/vitest.config.ts', '--project', project]
  const code = await runTestCommand([...args, '--reporter=default', '--reporter=json', `--outputFile.json=${file}`])
  return countVitest(file, code)
}

/** Only what lies beside these rooms, so that it costs seconds; the limits, all of them 100, stand in the settings of Vitest. */
export const COVERING = [
  ...['tests/shared/process', 'tests/shared/trace', 'tests/shared/floor'],
  ...['tests/published/process-rows.test.ts', 'tests/published/check-characters.test.ts', 'tests/published/longer-prints.test.ts'],
]

async function checkCoverage() {
  const args = [packagePath('vitest', 'vitest.mjs'), 'run', '--config', 'tests/config/vitest.config.ts', '--coverage']
  const code = await runTestCommand([...args, '--project', 'unit', '--project', 'published', ...COVERING])
  return code === 0 ? PASSED : FAILED
}

async function checkBuild() {
  await generate()
  const { buildApp } = await import('./build-app.mjs')
  await buildApp()
  return PASSED
}

async function checkBrowser() {
  const { findChromium } = await import('./find-chromium.mjs')
  const { withServedApp } = await import('./with-served-app.mjs')
  const chromium = await findChromium()
  const file = freshReport('browser.json')
  const args = [packagePath('@playwright', 'test', 'cli.js'), 'test', '--config', 'tests/config/playwright.config.ts']
  const { DATABASE_URL: _, DATABASE_OWNER_URL: __, ...env } = process.env // the journeys' database is the served app's own
  const code = await withServedApp((served) =>
    runTestCommand(args, { ...env, ...served, CHROMIUM_PATH: chromium, PLAYWRIGHT_JSON_OUTPUT_FILE: file }),
  )
  return countPlaywright(file, code)
}

async function generate() {
  const { generateClient } = await import('./generate-client.mjs')
  mkdirSync(dataFolder, { recursive: true, mode: 0o711 })
  await generateClient()
}

function freshReport(/** @type {string} */ name) {
  const file = join(reports, name)
  mkdirSync(reports, { recursive: true })
  rmSync(file, { force: true })
  return file
}
