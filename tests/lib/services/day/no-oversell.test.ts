import pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openClient } from '@/lib/db/client'
import { firstBrokenEntry } from '@/lib/queries/first-broken-entry'
import { claimJars } from '@/lib/services/day/claim-jars'
import type { Actor } from '@/shared/access/actor'
import { claimStorm, watchSums } from '@/tests/support/claim-storm'
import { freshDatabase } from '@/tests/support/fresh-database'
import { change, openEvening, saved, seedFernHollow } from '@/tests/support/open-evening'

const fresh = freshDatabase()
const groupId = 'fern-hollow'
const DATABASE = Symbol.for('lidsong.database')

/** `npm run bench claims-proof` asks for 10,000; in `npm test` each of the nine sends so few that they take seconds. */
const CLAIMS = Number(process.env.CLAIMS_IN_PROOF ?? 90)
const IS_PROOF = process.env.CLAIMS_IN_PROOF !== undefined
const HOUSEHOLDS = 64
const CALLERS = 32

const POOLS = [1, 10, 50]
const LEVELS = ['read committed', 'repeatable read', 'serializable']
const EVERY = POOLS.flatMap((connections) => LEVELS.map((level) => [connections, level] as const))

const organiser: Actor = { userId: 'storm', personId: 'storm', groupId, householdId: 'alderby', name: 'Storm', role: 'organiser' }
const households = Array.from({ length: HOUSEHOLDS }, (_, index) => `house-${index}`)

beforeAll(async () => {
  await seedFernHollow(fresh.client)
  await fresh.client.household.createMany({ data: households.map((id) => ({ groupId, id, name: id })) })
  await fresh.client.user.create({ data: { id: organiser.userId, email: 'storm@example.org' } })
  await fresh.client.person.create({
    data: { groupId, id: organiser.personId, userId: organiser.userId, householdId: 'alderby', name: organiser.name, role: 'organiser' },
  })
})

afterAll(() => Reflect.set(globalThis, DATABASE, fresh.client))

/** The whole program works on this many connections at this level, until the work is done. */
async function withPool<T>(connections: number, level: string, work: () => Promise<T>): Promise<T> {
  const client = openClient(fresh.appUrl, { connections, settings: `-c default_transaction_isolation=${level.replace(' ', '\\ ')}` })
  Reflect.set(globalThis, DATABASE, client)
  try {
    const [row] = await client.$queryRaw<{ level: string }[]>`SELECT current_setting('transaction_isolation') AS level`
    expect(row?.level).toBe(level)
    return await work()
  } finally {
    Reflect.set(globalThis, DATABASE, fresh.client)
    await client.$disconnect()
  }
}

const deadlocks = async () => {
  const { rows } = await fresh.asOwner('SELECT deadlocks::int AS count FROM pg_stat_database WHERE datname = current_database()')
  return Number(rows[0]?.count)
}

describe('many claims at once', () => {
  it.each(EVERY)(
    'on %i connections, %s: never oversell, always add up, and count each tap once',
    async (connections, level) => {
      const offered = Math.min(5_000, Math.max(20, Math.round(CLAIMS / 40)))
      const { jam, dayId } = await openEvening({ jam: offered, pickles: 1 })
      const startedAt = performance.now()
      const locked = await deadlocks()
      const stop = await watchSums(fresh.ownerUrl, jam)
      const storm = { organiser, preparationId: jam, households, claims: CLAIMS, callers: CALLERS, seed: connections + level.length }
      const report = await withPool(connections, level, () => claimStorm(storm))
      const { reads, wrong } = await stop()
      const seconds = (performance.now() - startedAt) / 1000

      expect({ wrong, different: report.different, sent: report.saved + report.refused }).toEqual({ wrong: 0, different: 0, sent: CLAIMS })
      const claims = await fresh.client.claim.findMany({ where: { preparationId: jam }, select: { householdId: true, jars: true } })
      const ledger = new Map(claims.map(({ householdId, jars }) => [householdId, jars]))
      for (const [householdId, jars] of report.last) expect(ledger.get(householdId) ?? 0, householdId).toBe(jars)
      expect(await fresh.client.history.count({ where: { dayId, command: 'claim-jars' } })).toBe(report.saved)
      expect(await deadlocks()).toBe(locked)

      // Then everybody asks for one jar more than there are for them: as many are sold as are offered, and no more.
      for (const householdId of households) await saved(claimJars, { preparationId: jam, householdId, jars: 0 })
      const each = Math.ceil((offered + 1) / HOUSEHOLDS)
      const asked = await withPool(connections, 'read committed', () =>
        Promise.all(households.flatMap((householdId) => oneByOne(jam, householdId, each))),
      )
      const { claimed } = await fresh.client.preparation.findFirstOrThrow({ where: { id: jam }, select: { claimed: true } })
      expect(asked.reduce((sum, jars) => sum + jars, 0)).toBe(claimed)
      expect(claimed).toBe(Math.min(each * HOUSEHOLDS, offered))
      expect(await firstBrokenEntry(groupId)).toBeNull()
      if (IS_PROOF) print(connections, level, { ...report, reads, seconds })
    },
    IS_PROOF ? 3_600_000 : 300_000,
  )

  it('are refused by the database itself, whatever the program does', async () => {
    const { jam } = await openEvening({ jam: 3, pickles: 1 })
    const app = new pg.Client({ connectionString: fresh.appUrl })
    await app.connect()
    const oversell = app.query('UPDATE preparation SET claimed = 4 WHERE group_id = $1 AND id = $2', [groupId, jam])
    await expect(oversell).rejects.toThrow(/preparation_is_never_oversold/)
    await app.end()
  })
})

/** Jars that a household gets when it asks for one after another until it is told that there are no more; asked again when the store is busy. */
async function oneByOne(preparationId: string, householdId: string, most: number): Promise<number> {
  for (let jars = 1; jars <= most; ) {
    const told = await change(claimJars, { preparationId, householdId, jars })
    if (told.ok) jars += 1
    else if (told.problem.status !== 503) return jars - 1
  }
  return most
}

type Figures = { saved: number; refused: number; repeated: number; reads: number; seconds: number }

function print(connections: number, level: string, { saved: done, refused, repeated, reads, seconds }: Figures): void {
  const said = `${done} saved, ${refused} refused, ${repeated} sent again; ${reads} reads, all fit; ${seconds.toFixed(0)} s`
  process.stdout.write(`  ${String(connections).padStart(2)} connections, ${level.padEnd(15)} ${said}\n`)
}
