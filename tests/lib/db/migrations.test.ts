import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { applyMigrations, MigrationRefused, readMigrations } from '@/lib/cli/migrate.mjs'
import { freshDatabase } from '../../support/fresh-database'
import { deployMigrations, migrationHistory, schemaDifferences } from '../../support/schema-engine'

const fresh = freshDatabase()
const names = readMigrations('prisma/migrations').map(({ name }) => name)

let folder: string

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'lidsong-migrations-'))
  cpSync('prisma/migrations', folder, { recursive: true })
})

afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('the migrated database', () => {
  it('is what schema.prisma says', async () => {
    expect(await schemaDifferences(fresh.ownerUrl)).toBe('')
  })

  it('is seen to differ from a schema that says something else', async () => {
    const schema = readFileSync('prisma/schema.prisma', 'utf8').replace(
      /^model Household \{$/m,
      'model Household {\n  shelfCount Int @default(0)',
    )
    expect(await schemaDifferences(fresh.ownerUrl, schema)).toMatch(/ALTER TABLE "household" ADD COLUMN\s+"shelfCount"/)
  })

  it("is up to date in the eyes of Prisma's own tools, which find nothing to apply", async () => {
    expect(await migrationHistory(fresh.ownerUrl)).toEqual({
      editedMigrationNames: [],
      failedMigrationNames: [],
      hasMigrationsTable: true,
      history: null,
    })
    expect(await deployMigrations(fresh.ownerUrl)).toEqual([])
  })
})

describe('applyMigrations', () => {
  it('applies nothing twice', async () => {
    expect(await applyMigrations(fresh.ownerUrl)).toEqual([])
    const { rows } = await fresh.asOwner('SELECT migration_name FROM _prisma_migrations ORDER BY 1')
    expect(rows.map((row) => row.migration_name)).toEqual(names)
  })

  it('applies a new migration once, even when several begin at the same time', async () => {
    writeMigration('29990101000000_shelf', 'CREATE TABLE shelf (id int PRIMARY KEY); INSERT INTO shelf VALUES (1);')
    const applied = await Promise.all(Array.from({ length: 4 }, () => applyMigrations(fresh.ownerUrl, folder)))
    expect(applied.flat()).toEqual(['29990101000000_shelf'])
    expect((await fresh.asOwner('SELECT id FROM shelf')).rows).toEqual([{ id: 1 }])
  })

  it('changes nothing when a migration fails half-way, and can run again once it is put right', async () => {
    writeMigration('29990102000000_hook', 'CREATE TABLE hook (id int); SELECT 1/0;')
    await expect(applyMigrations(fresh.ownerUrl, folder)).rejects.toThrow(/29990102000000_hook failed and changed nothing/)
    expect((await fresh.asOwner("SELECT to_regclass('hook') AS hook")).rows).toEqual([{ hook: null }])

    writeMigration('29990102000000_hook', 'CREATE TABLE hook (id int);')
    expect(await applyMigrations(fresh.ownerUrl, folder)).toEqual(['29990102000000_hook'])
  })

  it('refuses a migration that was changed after it was applied', async () => {
    writeMigration('29990101000000_shelf', 'CREATE TABLE shelf (id bigint PRIMARY KEY);')
    await expect(applyMigrations(fresh.ownerUrl, folder)).rejects.toThrow(MigrationRefused)
    await expect(applyMigrations(fresh.ownerUrl, folder)).rejects.toThrow(/29990101000000_shelf was changed after it was applied/)
  })

  it('refuses a database that is newer than the program', async () => {
    await expect(applyMigrations(fresh.ownerUrl)).rejects.toThrow(/newer than the program/)
  })
})

describe('the role the app works as', () => {
  it('reads which migrations are in', async () => {
    const rows = await fresh.client.$queryRaw<{ count: number }[]>`SELECT count(*)::int AS count FROM _prisma_migrations`
    expect(rows[0]?.count).toBeGreaterThanOrEqual(names.length)
  })

  it.each([
    ['change history', `UPDATE history SET detail = '{}'`],
    ['delete history', 'DELETE FROM history'],
    ['empty history', 'TRUNCATE history'],
    ['change the schema', 'CREATE TABLE mine (id int)'],
    ['drop a table', 'DROP TABLE history'],
    ['forge a migration', 'DELETE FROM _prisma_migrations'],
    ['give itself more rights', 'ALTER ROLE lidsong_app SUPERUSER'],
  ])('may not %s', async (_, sql) => {
    const connection = new (await import('pg')).default.Client({ connectionString: fresh.appUrl })
    await connection.connect()
    try {
      await expect(connection.query(sql)).rejects.toMatchObject({ code: '42501' })
    } finally {
      await connection.end()
    }
  })
})

function writeMigration(name: string, sql: string): void {
  mkdirSync(join(folder, name), { recursive: true })
  writeFileSync(join(folder, name, 'migration.sql'), sql)
}
