import { randomUUID } from 'node:crypto'
import { setTimeout as sleep } from 'node:timers/promises'
import pg from 'pg'
import type { Answer } from '@/lib/commands/answer-once'
import { canonicalJson } from '@/lib/commands/canonical-json'
import { runCommand } from '@/lib/commands/run-command'
import { DatabaseUnavailable } from '@/lib/db/database-unavailable'
import { claimJars } from '@/lib/services/day/claim-jars'
import { claimTheShortWay } from '@/lib/services/day/claim-short-way'
import type { Actor } from '@/shared/access/actor'
import { rolesFor } from '@/shared/access/policy'
import type { Result } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'

/** One offer that many want, and who sends their claims. */
export interface Storm {
  readonly organiser: Actor
  readonly preparationId: string
  readonly households: readonly string[]
  /** How many claims, changes and releases in all, and how many are under way at once. */
  readonly claims: number
  readonly callers: number
  readonly seed: number
}

/** What came of it. */
export interface StormReport {
  /** By household: what its last saved claim says. */
  readonly last: ReadonlyMap<string, number>
  readonly saved: number
  readonly refused: number
  /** Sent once more with the same key: on purpose, or because the store was busy. */
  readonly repeated: number
  /** Answers to repeated taps that did not say the same as the first. */
  readonly different: number
}

/**
 * Sends claims as the phones of many households do: each household one after another, all households at once; each claim up to three times
 * in parallel with its key, and again with it for as long as the store says that it is busy.
 */
export async function claimStorm(storm: Storm): Promise<StormReport> {
  const last = new Map(storm.households.map((id) => [id, 0]))
  const counted = { saved: 0, refused: 0, repeated: 0, different: 0 }
  let left = storm.claims
  const callers = Array.from({ length: storm.callers }, async (_, caller) => {
    const chance = random(storm.seed * 1_000 + caller)
    const own = storm.households.filter((__, place) => place % storm.callers === caller)
    while (left > 0) {
      left -= 1
      const householdId = own[Math.floor(chance() * own.length)] ?? ''
      const before = last.get(householdId) ?? 0
      // Most want one more; some give up all, some a part.
      const kind = chance()
      const jars = kind < 0.7 ? before + 1 : kind < 0.85 ? 0 : Math.floor(before / 2)
      const told = await tapOften(storm, householdId, jars, chance() < 0.25 ? 3 : 1, counted)
      // A refusal is not kept: of taps with one key that find a full offer, a later one is saved when jars came free between them.
      const replies = new Set(told.flatMap((each) => (each.ok ? [canonicalJson(each.value.reply)] : [])))
      if (replies.size > 1) counted.different += 1
      if (replies.size > 0) last.set(householdId, jars)
      counted[replies.size > 0 ? 'saved' : 'refused'] += 1
    }
  })
  await Promise.all(callers)
  return { last, ...counted }
}

type Told = Result<Answer, Refusal>

async function tapOften(storm: Storm, householdId: string, jars: number, times: number, counted: { repeated: number }): Promise<Told[]> {
  const key = randomUUID()
  counted.repeated += times - 1
  return Promise.all(Array.from({ length: times }, () => tapUntilTold(storm, householdId, jars, key, counted)))
}

/** What the HTTP door does with a claim, and what a phone does when the answer is "not saved" or "not sure". */
async function tapUntilTold(storm: Storm, householdId: string, jars: number, key: string, counted: { repeated: number }): Promise<Told> {
  const { organiser, preparationId } = storm
  const input = { preparationId, householdId, jars }
  for (;;) {
    const told = await once(organiser, key, input)
    if (told.ok || told.problem.status !== 503) return told
    counted.repeated += 1
    await sleep(20 + Math.random() * 80)
  }
}

async function once(organiser: Actor, key: string, input: object): Promise<Told> {
  const { userId, groupId } = organiser
  try {
    const tap = { key, userId, sessionVersion: 1, groupId, roles: rolesFor('claim-jars'), input, mostAMinute: 1_000_000, now: new Date() }
    const reply = await claimTheShortWay(tap)
    return reply
      ? { ok: true, value: { reply, replayed: false } }
      : await runCommand(claimJars, { actor: organiser, idempotencyKey: key, input })
  } catch (error) {
    if (!(error instanceof DatabaseUnavailable)) throw error
    return { ok: false, problem: { code: 'not-saved', status: 503, what: 'Not saved.', instead: 'Send it again.' } }
  }
}

/** Reads the sum and the ledger in one statement, over and over, until it is told to stop; each read must fit. */
export async function watchSums(url: string, preparationId: string): Promise<() => Promise<{ reads: number; wrong: number }>> {
  const connection = new pg.Client({ connectionString: url })
  await connection.connect()
  let isOver = false
  let [reads, wrong] = [0, 0]
  const watching = (async () => {
    while (!isOver) {
      const { rows } = await connection.query(
        `SELECT p.offered, p.claimed, (SELECT coalesce(sum(c.jars), 0)::int FROM claim c WHERE c.group_id = p.group_id AND c.preparation_id = p.id) AS ledger
         FROM preparation p WHERE p.id = $1`,
        [preparationId],
      )
      const [row] = rows
      reads += 1
      if (!row || row.claimed !== row.ledger || row.claimed > row.offered) wrong += 1
      await sleep(5)
    }
    await connection.end()
  })()
  return async () => {
    isOver = true
    await watching
    return { reads, wrong }
  }
}

/** Numbers from 0 to 1 that are the same for the same seed (mulberry32, public domain). */
function random(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}
