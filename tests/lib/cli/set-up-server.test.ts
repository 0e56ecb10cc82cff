import { randomUUID } from 'node:crypto'
import pg from 'pg'
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest'
import { readMigrations } from '@/lib/cli/migrate.mjs'
import { addressFor } from '@/lib/cli/prepare-database.mjs'
import { setUpServer } from '@/lib/cli/set-up-server.mjs'

const { superuserUrl, ownerPassword, appPassword } = inject('testServer')

let database: string

beforeEach(() => {
  database = `set_up_${randomUUID().replaceAll('-', '')}`
})

afterEach(() => ask(superuserUrl, `DROP DATABASE IF EXISTS ${database} WITH (FORCE)`))

async function ask(url: string, sql: string): Promise<unknown[]> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    return (await client.query(sql)).rows
  } finally {
    await client.end()
  }
}

const setUp = () =>
  setUpServer({
    NODE_ENV: 'production',
    SUPERUSER_URL: superuserUrl,
    OWNER_PASSWORD: ownerPassword,
    APP_PASSWORD: appPassword,
    DATABASE_NAME: database,
  })

describe('setUpServer', () => {
  it('makes roles, database and tables, and does nothing the second time', async () => {
    expect(await setUp()).toEqual(readMigrations('prisma/migrations').map(({ name }) => name))
    expect(await setUp()).toEqual([])
  })

  it('gives the app a role that owns nothing and may do no more than work on rows', async () => {
    await setUp()
    const appUrl = addressFor(superuserUrl, 'lidsong_app', appPassword, database)
    expect(await ask(appUrl, 'SELECT count(*)::int AS groups FROM "group"')).toEqual([{ groups: 0 }])
    expect(
      await ask(
        appUrl,
        `SELECT rolsuper, rolcreaterole, rolcreatedb, rolbypassrls,
                (SELECT count(*)::int FROM pg_class WHERE relowner = pg_roles.oid) AS owned
           FROM pg_roles WHERE rolname = current_user`,
      ),
    ).toEqual([{ rolsuper: false, rolcreaterole: false, rolcreatedb: false, rolbypassrls: false, owned: 0 }])
    await expect(ask(appUrl, 'CREATE TABLE mine (id int)')).rejects.toMatchObject({ code: '42501' })
  })

  it("limits the app's sessions on the server itself", async () => {
    await setUp()
    const appUrl = addressFor(superuserUrl, 'lidsong_app', appPassword, database)
    const rows = await ask(appUrl, "SELECT current_setting('statement_timeout') AS statement, current_setting('lock_timeout') AS lock")
    expect(rows).toEqual([{ statement: '3s', lock: '2s' }])
  })

  it('says what it needs when it is not told', async () => {
    await expect(setUpServer({ NODE_ENV: 'production' })).rejects.toThrow(/SUPERUSER_URL.*OWNER_PASSWORD.*APP_PASSWORD/)
  })
})
