import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { countPlaywright, countVitest } from '@/lib/cli/test-reports.mjs'
import { projectRoot } from '@/lib/cli/project-paths.mjs'

const folder = mkdtempSync(join(tmpdir(), 'reports-'))
const reportOf = (report: object) => {
  const file = join(folder, 'report.json')
  writeFileSync(file, JSON.stringify(report))
  return file
}

describe('the count of a step', () => {
  it('is one failure where there is no report', () => {
    expect(countVitest(join(folder, 'none.json'), 0)).toEqual({ passed: 0, failed: 1 })
    expect(countPlaywright(join(folder, 'none.json'), 0)).toEqual({ passed: 0, failed: 1 })
  })

  it('names what failed and what was left out, each with its file', () => {
    const name = join(projectRoot, 'tests/shared/one.test.ts')
    const assertionResults = [
      { fullName: 'a jar seals', status: 'passed' },
      { fullName: 'a jar fails', status: 'failed' },
      { fullName: 'a jar waits', status: 'skipped' },
    ]
    const report = { numTotalTests: 3, numPassedTests: 1, testResults: [{ name, status: 'failed', assertionResults }] }
    expect(countVitest(reportOf(report), 1)).toEqual({
      passed: 1,
      failed: 2,
      names: ['tests/shared/one.test.ts: a jar fails', 'tests/shared/one.test.ts: a jar waits'],
    })
  })

  it('is a failure when the run ended in error, and names a file that could not be run', () => {
    const report = {
      numTotalTests: 0,
      numPassedTests: 0,
      testResults: [{ name: join(projectRoot, 'x.test.ts'), status: 'failed', assertionResults: [] }],
    }
    expect(countVitest(reportOf(report), 1)).toEqual({ passed: 0, failed: 1, names: ['x.test.ts: could not be run'] })
    expect(countPlaywright(reportOf({ stats: { expected: 2, unexpected: 0, skipped: 0, flaky: 0 }, suites: [] }), 1)).toMatchObject({
      failed: 1,
    })
  })

  it('counts a browser test that passed only at a second try as failed, and names it', () => {
    const specs = [
      { title: 'opens', file: 'day.test.ts', line: 3, tests: [{ status: 'expected' }] },
      { title: 'shuts', file: 'day.test.ts', line: 9, tests: [{ status: 'flaky' }] },
    ]
    const report = { stats: { expected: 1, unexpected: 0, skipped: 0, flaky: 1 }, suites: [{ specs: [], suites: [{ specs }] }] }
    expect(countPlaywright(reportOf(report), 0)).toEqual({ passed: 1, failed: 1, names: ['tests/e2e/day.test.ts:9: shuts'] })
  })
})
