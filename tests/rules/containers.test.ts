import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'

interface Service {
  readonly image: string
  readonly build?: { readonly context: string; readonly dockerfile: string }
  readonly command?: readonly string[]
  readonly environment: Readonly<Record<string, string>>
  readonly healthcheck: { readonly test?: readonly string[]; readonly disable?: boolean }
  readonly volumes?: readonly string[]
  readonly depends_on?: Readonly<Record<string, { readonly condition: string }>>
}

const composeText = readFileSync('docker-compose.yml', 'utf8')
const compose: { services: Record<'database' | 'set-up' | 'app', Service>; volumes: Record<string, null> } = parse(composeText, {
  strict: true,
  uniqueKeys: true,
  merge: true,
})
const { database, 'set-up': setUp, app } = compose.services

const instructions = readFileSync('lib/cli/Dockerfile', 'utf8')
  .replaceAll(/\\\n\s*/g, ' ')
  .split('\n')
  .filter((line) => line !== '' && !line.startsWith('#'))
  .map((line) => ({ verb: line.slice(0, line.indexOf(' ')), rest: line.slice(line.indexOf(' ') + 1) }))
const rests = (verb: string) => instructions.filter((each) => each.verb === verb).map(({ rest }) => rest)

describe('docker-compose.yml', () => {
  it('runs a supported PostgreSQL with checksums, kept in a volume', () => {
    expect(database.image).toBe('postgres:18')
    expect(database.environment.POSTGRES_INITDB_ARGS).toContain('--data-checksums')
    expect(database.volumes).toEqual(['database:/var/lib/postgresql'])
    expect(Object.keys(compose.volumes)).toEqual(['database', 'app'])
  })

  it('starts the app after a healthy database and a finished set-up', () => {
    expect(setUp.depends_on?.database?.condition).toBe('service_healthy')
    expect(app.depends_on).toEqual({
      database: { condition: 'service_healthy' },
      'set-up': { condition: 'service_completed_successfully' },
    })
  })

  it('checks the health of what keeps running', () => {
    expect(database.healthcheck.test).toContain('pg_isready')
    expect(app.healthcheck.test?.join(' ')).toContain('/api/health/ready')
  })

  it("gives the app its own role's password and no other", () => {
    expect(app.environment.DATABASE_URL).toMatch(/^postgresql:\/\/lidsong_app:/)
    expect(JSON.stringify(app)).not.toMatch(/OWNER_PASSWORD|SUPERUSER_PASSWORD/)
  })

  it('holds no secret itself: every password has to be set', () => {
    const asked = [...composeText.matchAll(/\$\{(\w+)(:?[?-])?/g)].map(([, name, rule]) => ({ name, rule }))
    const secrets = asked.filter(({ name }) => /PASSWORD|SECRET/.test(name ?? ''))
    expect(new Set(secrets.map(({ name }) => name))).toEqual(
      new Set(['SUPERUSER_PASSWORD', 'OWNER_PASSWORD', 'APP_PASSWORD', 'NEXTAUTH_SECRET']),
    )
    expect(secrets.filter(({ rule }) => rule !== ':?')).toEqual([])
  })

  it('runs scripts and builds from files that exist', () => {
    const scripts = [setUp, app].flatMap(({ command }) => command ?? []).filter((word) => word.endsWith('.mjs'))
    for (const file of [...scripts, app.build?.dockerfile ?? 'no Dockerfile']) expect(existsSync(file), file).toBe(true)
    expect(scripts.length).toBeGreaterThan(0)
    expect(setUp.build).toEqual(app.build)
  })
})

describe('the container image', () => {
  it('is built in stages on a supported Node', () => {
    expect(rests('FROM').length).toBeGreaterThan(1)
    for (const image of rests('FROM')) expect(image).toMatch(/^node:24-/)
  })

  it('runs as an ordinary user, without the packages of development', () => {
    const last = instructions.map(({ verb }) => verb).lastIndexOf('FROM')
    expect(instructions.slice(last).filter(({ verb }) => verb === 'USER')).toEqual([{ verb: 'USER', rest: 'node' }])
    expect(rests('RUN').join('\n')).toContain('npm ci --omit=dev')
  })

  it('copies only what exists', () => {
    const made = ['node_modules', '.next']
    const copied = rests('COPY').flatMap((rest) => {
      const words = rest.split(' ').filter((word) => !word.startsWith('--'))
      return words.slice(0, -1).map((word) => word.replace(/^\/app\//, ''))
    })
    for (const path of copied) expect(made.includes(path) || existsSync(path), path).toBe(true)
  })

  it('takes everything along that the served app and its tools read', () => {
    const copied = rests('COPY').join(' ')
    for (const path of ['.next', 'lib', 'shared', 'prisma', 'next.config.ts', 'package.json']) expect(copied).toContain(path)
    if (existsSync('public')) expect(copied).toContain('public')
  })

  it('has commands in the form that receives signals', () => {
    for (const command of rests('CMD')) expect(Array.isArray(JSON.parse(command))).toBe(true)
  })
})
