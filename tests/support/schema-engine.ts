import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { PrismaPg } from '@prisma/adapter-pg'
import { bindMigrationAwareSqlAdapterFactory, ColumnTypeEnum, type SqlQuery } from '@prisma/driver-adapter-utils'
import * as engine from '@prisma/schema-engine-wasm/schema_engine_bg'
import type pg from 'pg'
import { readMigrations } from '@/lib/cli/migrate.mjs'

const NO_FILTER = { externalTables: [], externalEnums: [] }
const SCHEMA_FILE = 'prisma/schema.prisma'

/** PostgreSQL's type "char", one byte, in its catalogues. */
const CHAR_TYPE = 18
const TEXT_TYPE = 25

/**
 * The SQL that would turn this database into what schema.prisma says, by Prisma's own schema engine; empty when they agree.
 *
 * @param schema - the text of a schema, schema.prisma's own if none is given
 */
export async function schemaDifferences(databaseUrl: string, schema = readFileSync(SCHEMA_FILE, 'utf8')): Promise<string> {
  const { stdout } = await withEngine(databaseUrl, (open) =>
    open.diff({
      from: { tag: 'schemaDatasource', files: [{ path: SCHEMA_FILE, content: schema }], configDir: 'prisma' },
      to: { tag: 'schemaDatamodel', files: [{ path: SCHEMA_FILE, content: schema }] },
      script: true,
      exitCode: null,
      filters: NO_FILTER,
    }),
  )
  return (stdout ?? '').replace(/^-- This is an empty migration\.\s*/, '').trim()
}

/** What `prisma migrate status` would find: null history means that the table and the folder agree. */
export function migrationHistory(databaseUrl: string) {
  return withEngine(databaseUrl, (open) =>
    open.diagnoseMigrationHistory({ migrationsList: migrationsOnDisk(), optInToShadowDatabase: false, filters: NO_FILTER }),
  )
}

/** Does what `prisma migrate deploy` does, and answers the names it applied. */
export async function deployMigrations(databaseUrl: string): Promise<string[]> {
  const { appliedMigrationNames } = await withEngine(databaseUrl, (open) =>
    open.applyMigrations({ migrationsList: migrationsOnDisk(), filters: NO_FILTER }),
  )
  return appliedMigrationNames
}

function migrationsOnDisk() {
  const baseDir = 'prisma/migrations'
  const migrationDirectories = readMigrations(baseDir).map(({ name, sql }) => ({
    path: name,
    migrationFile: { path: 'migration.sql', content: { tag: 'ok' as const, value: sql } },
  }))
  const lockfile = { path: 'migration_lock.toml', content: readFileSync(`${baseDir}/migration_lock.toml`, 'utf8') }
  return { baseDir, lockfile, shadowDbInitScript: '', migrationDirectories }
}

/** Opens the engine on a database for one question, and lets go of its connections, which hold the migration lock. */
async function withEngine<T>(connectionString: string, ask: (open: engine.SchemaEngine) => Promise<T>): Promise<T> {
  await loadEngine()
  const connections = new CataloguePg({ connectionString })
  const open = await engine.SchemaEngine.new({ datamodels: undefined }, () => {}, bindMigrationAwareSqlAdapterFactory(connections))
  try {
    return await ask(open)
  } finally {
    await connections.disposeAll()
  }
}

let loading: Promise<void> | undefined

/** The engine is WebAssembly: Node needs it handed over by hand. */
function loadEngine(): Promise<void> {
  loading ??= (async () => {
    const file = createRequire(import.meta.url)
      .resolve('@prisma/schema-engine-wasm')
      .replace(/schema_engine\.js$/, 'schema_engine_bg.wasm')
    const { instance } = await WebAssembly.instantiate(readFileSync(file), {
      './schema_engine_bg.js': engine as unknown as WebAssembly.ModuleImports,
    })
    Reflect.get(engine, '__wbg_set_wasm')(instance.exports)
    const start = instance.exports.__wbindgen_start
    if (typeof start === 'function') start()
  })()
  return loading
}

/** The adapter knows no column of type "char", which the engine's questions to the catalogues answer with, and cuts scripts at each ";". */
class CataloguePg extends PrismaPg {
  readonly #opened: Adapter[] = []

  async disposeAll(): Promise<void> {
    for (const adapter of this.#opened) await adapter.dispose()
  }

  override async connect() {
    const adapter = await super.connect()
    this.#opened.push(adapter)
    const ask: (query: SqlQuery) => Promise<pg.QueryArrayResult> = Reflect.get(adapter, 'performIO').bind(adapter)
    adapter.queryRaw = async (query) => {
      const { fields, rows } = await ask(query)
      const known = fields.map((field) => (field.dataTypeID === CHAR_TYPE ? { ...field, dataTypeID: TEXT_TYPE } : field))
      const answer = await readAs(adapter, known, rows)
      const columnTypes = answer.columnTypes.map((type, column) =>
        fields[column]?.dataTypeID === CHAR_TYPE ? ColumnTypeEnum.Character : type,
      )
      return { ...answer, columnTypes }
    }
    adapter.executeScript = async (script) => {
      await adapter.underlyingDriver().query(script)
    }
    return adapter
  }
}

type Adapter = Awaited<ReturnType<PrismaPg['connect']>>

/** The adapter's own reading of an answer, with the columns' types as given. */
function readAs(adapter: Adapter, fields: pg.FieldDef[], rows: unknown[][]): ReturnType<Adapter['queryRaw']> {
  const reader = Object.create(adapter, { performIO: { value: async () => ({ fields, rows }) } })
  return Object.getPrototypeOf(Object.getPrototypeOf(adapter)).queryRaw.call(reader, { sql: '', args: [], argTypes: [] })
}
