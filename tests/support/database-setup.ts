import { mkdirSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'
import type { TestProject } from 'vitest/node'
import { applyMigrations } from '@/lib/cli/migrate.mjs'
import { prepareDatabase, superuserAddress } from '@/lib/cli/prepare-database.mjs'
import { isAlive } from '@/lib/cli/process-facts.mjs'
import { runPostgres } from '@/lib/cli/run-postgres.mjs'

/** What a test file needs to make its own database. */
export interface TestServer {
  readonly superuserUrl: string
  readonly ownerPassword: string
  readonly appPassword: string
}

declare module 'vitest' {
  export interface ProvidedContext {
    testServer: TestServer
  }
}

/** The migrated database that each test file's own is copied from. */
export const TEMPLATE = 'lidsong_template'

const FOLDER_NAME = 'lidsong-tests-'

/** Before all database tests: a PostgreSQL of their own and one migrated template. Afterwards it is stopped and removed. */
export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  removeLeftOverFolders()
  const folder = join(tmpdir(), `${FOLDER_NAME}${process.pid}`)
  mkdirSync(folder, { recursive: true, mode: 0o711 })
  const superuserPassword = 'super'
  const passwords = { ownerPassword: 'owner', appPassword: 'app' }
  const server = await runPostgres({
    folder: join(folder, 'postgres'),
    logFile: join(folder, 'postgres.log'),
    superuserPassword,
    durable: false,
  })
  const superuserUrl = superuserAddress(superuserPassword, server.port)
  const { ownerUrl } = await prepareDatabase({ ...passwords, superuserUrl, database: TEMPLATE })
  await applyMigrations(ownerUrl)
  await freezeTemplate(superuserUrl)
  project.provide('testServer', { superuserUrl, ...passwords })
  return async () => {
    await server.stop()
    rmSync(folder, { recursive: true, force: true })
  }
}

/** A copy is taken file by file, which needs a template that nobody is connected to. */
async function freezeTemplate(superuserUrl: string): Promise<void> {
  const client = new pg.Client({ connectionString: superuserUrl })
  await client.connect()
  await client.query(`ALTER DATABASE ${TEMPLATE} WITH ALLOW_CONNECTIONS false IS_TEMPLATE true`)
  await client.end()
}

function removeLeftOverFolders(): void {
  for (const name of readdirSync(tmpdir())) {
    if (name.startsWith(FOLDER_NAME) && !isAlive(Number(name.slice(FOLDER_NAME.length))))
      rmSync(join(tmpdir(), name), { recursive: true, force: true })
  }
}
