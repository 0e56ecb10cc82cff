import { spawnSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const root = process.cwd()
const biome = join(root, 'node_modules', '@biomejs', 'biome', 'bin', 'biome')

let house: string

beforeAll(() => {
  house = mkdtempSync(join(tmpdir(), 'lidsong-rules-'))
  mkdirSync(join(house, 'tests'), { recursive: true })
  cpSync(join(root, 'tests', 'config'), join(house, 'tests', 'config'), { recursive: true })
  for (const file of ['tsconfig.json', 'package.json']) cpSync(join(root, file), join(house, file))
})

afterAll(() => rmSync(house, { recursive: true, force: true }))

/** Lints these files alone, in an empty house under our rules, and answers what was said. */
function lint(files: Record<string, string>): { passed: boolean; said: string } {
  for (const room of ['app', 'lib', 'shared', 'prisma']) rmSync(join(house, room), { recursive: true, force: true })
  for (const [path, source] of Object.entries(files)) {
    mkdirSync(dirname(join(house, path)), { recursive: true })
    writeFileSync(join(house, path), source)
  }
  const args = [biome, 'lint', '--config-path', join('tests', 'config', 'rules.json'), '--error-on-warnings', ...Object.keys(files)]
  const { status, stdout, stderr } = spawnSync(process.execPath, args, { cwd: house, encoding: 'utf8' })
  return { passed: status === 0, said: stdout + stderr }
}

const importing = (from: string) => `import { thing } from '${from}'\nexport const kept = thing\n`

/** Each rule of the house, broken once. */
const BROKEN: [rule: string, path: string, source: string, message: RegExp][] = [
  ['shared/ imports lib/', 'shared/kitchen/jar.ts', importing('@/lib/env'), /noRestrictedImports/],
  ['shared/ imports app/', 'shared/kitchen/jar.ts', importing('@/app/_ui/button'), /noRestrictedImports/],
  ['shared/ climbs out to lib/', 'shared/kitchen/jar.ts', importing('../../lib/env'), /noRestrictedImports/],
  ['shared/ imports a package', 'shared/kitchen/jar.ts', importing('pdfkit'), /may import only itself/],
  ['shared/ imports zod outside forms/', 'shared/kitchen/jar.ts', importing('zod'), /may import only itself/],
  ['shared/ imports Node', 'shared/kitchen/jar.ts', importing('node:fs'), /may import only itself/],
  ['shared/forms/ imports another package', 'shared/forms/claim.ts', importing('react'), /only shared\/ and zod/],
  ['shared/ reads the clock', 'shared/kitchen/jar.ts', 'export const now = () => Date.now()\n', /no clock/],
  ['shared/ asks for today', 'shared/kitchen/jar.ts', 'export const now = () => new Date()\n', /no clock/],
  ['shared/ throws dice', 'shared/kitchen/jar.ts', 'export const die = () => Math.random()\n', /no chance/],
  ['shared/ asks the network', 'shared/kitchen/jar.ts', "export const ask = () => fetch('/api')\n", /noRestrictedGlobals/],
  ['lib/ imports app/', 'lib/queries/list-days.ts', importing('@/app/_ui/button'), /app → lib → shared/],
  ['lib/ climbs out to app/', 'lib/queries/list-days.ts', importing('../../app/_ui/button'), /app → lib → shared/],
  ['lib/ imports tests/', 'lib/queries/list-days.ts', importing('@/tests/support/builders'), /app → lib → shared/],
  ['app/ imports the database client', 'app/page.tsx', importing('@/lib/db/client'), /never speaks to the database/],
  ['app/ imports Prisma', 'app/page.tsx', importing('@prisma/client'), /never speaks to the database/],
  ['app/_ui/ imports lib/', 'app/_ui/button.tsx', importing('@/lib/env'), /no word of our trade/],
  ['app/_ui/ imports shared/', 'app/_ui/button.tsx', importing('@/shared/kitchen/jar'), /no word of our trade/],
  ['app/_ui/ imports another room of app/', 'app/_ui/button.tsx', importing('@/app/_shell/frame'), /no word of our trade/],
  [
    'lib/ reads the environment outside lib/env.ts',
    'lib/queries/list-days.ts',
    'export const url = process.env.DATABASE_URL\n',
    /noProcessEnv/,
  ],
  ['app/ reads the environment', 'app/page.tsx', 'export const url = process.env.DATABASE_URL\n', /noProcessEnv/],
  ['SQL is made of text', 'lib/queries/list-days.ts', 'export const ask = (db, text) => db.$queryRawUnsafe(text)\n', /SQL made of text/],
  ['SQL is run from text', 'lib/queries/list-days.ts', 'export const run = (db, text) => db.$executeRawUnsafe(text)\n', /SQL made of text/],
  ['SQL from text hides in brackets', 'lib/queries/list-days.ts', "export const ask = (db) => db['$queryRawUnsafe']\n", /SQL made of text/],
  ['a type is switched off', 'lib/queries/list-days.ts', 'export const anything: any = 1\n', /noExplicitAny/],
]

/** What the rules must let through, so that none of them refuses everything. */
const ALLOWED: [what: string, path: string, source: string][] = [
  ['shared/ imports itself', 'shared/kitchen/jar.ts', importing('@/shared/result/result')],
  ['shared/ imports its neighbour', 'shared/kitchen/jar.ts', importing('./lid')],
  ['shared/ turns a number into a date', 'shared/kitchen/jar.ts', 'export const at = (ms: number) => new Date(ms)\n'],
  ['shared/forms/ imports zod', 'shared/forms/claim.ts', importing('zod')],
  [
    'lib/ imports lib/ and shared/',
    'lib/queries/list-days.ts',
    importing('@/lib/db/client') + importing('@/shared/a').replaceAll('thing', 'other').replace('kept', 'also'),
  ],
  ['lib/env.ts reads the environment', 'lib/env.ts', 'export const url = process.env.DATABASE_URL\n'],
  ['lib/cli/ reads the environment', 'lib/cli/start.mjs', 'export const url = process.env.DATABASE_URL\n'],
  [
    'app/ imports lib/ and _ui/',
    'app/page.tsx',
    importing('@/lib/queries/list-days') + importing('@/app/_ui/button').replaceAll('thing', 'other').replace('kept', 'also'),
  ],
  [
    'app/_ui/ imports itself and React',
    'app/_ui/button.tsx',
    importing('@/app/_ui/glyph') + importing('react').replaceAll('thing', 'other').replace('kept', 'also'),
  ],
  ['SQL is a tagged template', 'lib/queries/list-days.ts', 'export const ask = (db) => db.$queryRaw`SELECT 1`\n'],
]

describe('the rules of the house', () => {
  it.each(BROKEN)('refuse when %s', (_, path, source, message) => {
    const { passed, said } = lint({ [path]: source })
    expect(said).toMatch(message)
    expect(passed).toBe(false)
  })

  it.each(ALLOWED)('let through when %s', (_, path, source) => {
    const { passed, said } = lint({ [path]: source })
    expect(said).not.toMatch(/lint\/|plugin/)
    expect(passed).toBe(true)
  })

  it('refuse two files that import each other', () => {
    const { passed, said } = lint({
      'shared/kitchen/jar.ts': "import { lid } from '@/shared/kitchen/lid'\nexport const jar = () => lid()\n",
      'shared/kitchen/lid.ts': "import { jar } from '@/shared/kitchen/jar'\nexport const lid = () => jar()\n",
    })
    expect(said).toMatch(/noImportCycles/)
    expect(passed).toBe(false)
  })
})
