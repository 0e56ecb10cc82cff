import { randomUUID } from 'node:crypto'
import pg from 'pg'
import { afterAll, beforeAll, inject } from 'vitest'
import { addressFor } from '@/lib/cli/prepare-database.mjs'
import { openClient } from '@/lib/db/client'
import type { PrismaClient } from '@/lib/db/generated/client'
import { TEMPLATE } from './database-setup'

/** A migrated database that holds nothing yet, for one test file alone. */
export interface FreshDatabase {
  /** The app's client: role lidsong_app, the app's limits. `database()` answers it too. */
  readonly client: PrismaClient
  readonly appUrl: string
  readonly ownerUrl: string
  /** For tampering: may do anything. */
  readonly superuserUrl: string
  /** Runs one statement as the owner of the tables. */
  readonly asOwner: (sql: string, values?: unknown[]) => Promise<pg.QueryResult>
}

/**
 * Call it at the head of a test file. The database exists from the first test on; it is dropped after the last.
 * Code under test that asks `database()` or `env()` gets this database.
 */
export function freshDatabase(): FreshDatabase {
  let made: (FreshDatabase & { drop: () => Promise<void> }) | undefined
  beforeAll(async () => {
    made = await makeFreshDatabase()
    process.env.DATABASE_URL = made.appUrl
    process.env.NEXTAUTH_URL ??= 'http://localhost:3000'
    process.env.NEXTAUTH_SECRET ??= 'a secret that only the tests know of'
    Reflect.set(globalThis, Symbol.for('lidsong.database'), made.client)
  })
  afterAll(async () => made?.drop())
  return new Proxy({} as FreshDatabase, {
    get(_, name) {
      if (!made) throw new Error('The fresh database exists only inside tests and hooks.')
      return Reflect.get(made, name)
    },
  })
}

async function makeFreshDatabase() {
  const server = inject('testServer')
  const name = `test_${randomUUID().replaceAll('-', '')}`
  await once(server.superuserUrl, `CREATE DATABASE ${name} TEMPLATE ${TEMPLATE} STRATEGY FILE_COPY OWNER lidsong_owner`)
  await once(server.superuserUrl, `ALTER DATABASE ${name} WITH ALLOW_CONNECTIONS true`)
  const appUrl = addressFor(server.superuserUrl, 'lidsong_app', server.appPassword, name)
  const ownerUrl = addressFor(server.superuserUrl, 'lidsong_owner', server.ownerPassword, name)
  const client = openClient(appUrl)
  return {
    client,
    appUrl,
    ownerUrl,
    superuserUrl: server.superuserUrl.replace(/[^/]*$/, name),
    asOwner: (sql: string, values?: unknown[]) => once(ownerUrl, sql, values),
    drop: async () => {
      await client.$disconnect()
      await once(server.superuserUrl, `DROP DATABASE ${name} WITH (FORCE)`)
    },
  }
}

async function once(url: string, sql: string, values?: unknown[]): Promise<pg.QueryResult> {
  const connection = new pg.Client({ connectionString: url })
  await connection.connect()
  try {
    return await connection.query(sql, values)
  } finally {
    await connection.end()
  }
}
