import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { projectRoot } from '@/lib/cli/project-paths.mjs'
import { COVERING, STEPS } from '@/lib/cli/test-steps.mjs'
import settings from '../config/vitest.config'

const names = STEPS.map(({ name }) => name)

describe('the steps of npm test', () => {
  it('are these, in this order: what fails fast goes first', () => {
    expect(names).toEqual(['types', 'lint', 'unit', 'published', 'coverage', 'database', 'build', 'browser'])
  })

  it('are the ones that the guides and the scripts of the package name', () => {
    const scripts = JSON.parse(readFileSync(join(projectRoot, 'package.json'), 'utf8')).scripts as Record<string, string>
    const guides = ['README.md', 'DEVELOPERS.md', 'tests/README.md'].map((file) => readFileSync(join(projectRoot, file), 'utf8'))
    const named = [
      ...guides.flatMap((guide) => [...guide.matchAll(/`npm test ([^`]+)`/g)].map(([, steps]) => String(steps))),
      ...Object.values(scripts).flatMap((script) => script.match(/test\.mjs (.+)/)?.[1] ?? []),
    ].flatMap((steps) => steps.split(' '))
    expect(named.length).toBeGreaterThan(5)
    expect(named.filter((name) => !names.includes(name))).toEqual([])
  })

  it('let no branch of process, process clock and trace go without a test of its own room', () => {
    expect(settings.test?.coverage).toMatchObject({
      include: expect.arrayContaining(['shared/process/**', 'shared/trace/**', 'shared/floor/process-clock.ts']),
      thresholds: { 100: true },
    })
    expect(COVERING.filter((path) => !existsSync(join(projectRoot, path)))).toEqual([])
  })
})
