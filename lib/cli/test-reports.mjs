import { existsSync, readFileSync } from 'node:fs'
import { relative } from 'node:path'
import { projectRoot } from './project-paths.mjs'

/** @typedef {{ passed: number, failed: number, names?: readonly string[] }} Count `names`: what failed, where its report could tell */

/**
 * Reads Vitest's report. A test that was left out counts as failed, and so does an end in error with no failed test to show.
 *
 * @param {string} file
 * @param {number | string} code
 * @returns {Count}
 */
export function countVitest(file, code) {
  if (!existsSync(file)) return { passed: 0, failed: 1 }
  const { numTotalTests, numPassedTests, testResults } = JSON.parse(readFileSync(file, 'utf8'))
  const failed = numTotalTests - numPassedTests
  return { passed: numPassedTests, failed: failed === 0 && code !== 0 ? 1 : failed, names: testResults.flatMap(namesOfFile) }
}

/**
 * @param {{ name: string, status: string, assertionResults: { fullName: string, status: string }[] }} result
 */
function namesOfFile({ name, status, assertionResults }) {
  const where = relative(projectRoot, name)
  const names = assertionResults.filter((test) => test.status !== 'passed').map((test) => `${where}: ${test.fullName}`)
  return names.length === 0 && status === 'failed' ? [`${where}: could not be run`] : names
}

/**
 * Reads Playwright's report; a test that was left out or passed only at a second try counts as failed.
 *
 * @param {string} file
 * @param {number | string} code
 * @returns {Count}
 */
export function countPlaywright(file, code) {
  if (!existsSync(file)) return { passed: 0, failed: 1 }
  const { stats, suites } = JSON.parse(readFileSync(file, 'utf8'))
  const failed = stats.unexpected + stats.skipped + stats.flaky
  return { passed: stats.expected, failed: failed === 0 && code !== 0 ? 1 : failed, names: suites.flatMap(namesOfSuite) }
}

/**
 * @typedef {{ title: string, file: string, line: number, tests: { status: string }[] }} Spec
 * @typedef {{ specs?: Spec[], suites?: Suite[] }} Suite
 * @param {Suite} suite
 * @returns {string[]}
 */
function namesOfSuite({ specs = [], suites = [] }) {
  const here = specs
    .filter(({ tests }) => tests.some(({ status }) => status !== 'expected'))
    .map(({ title, file, line }) => `tests/e2e/${file}:${line}: ${title}`)
  return [...here, ...suites.flatMap(namesOfSuite)]
}
