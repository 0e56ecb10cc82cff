import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'
import { canonicalJson, sha256 } from './canonical-json'
import type { HistoryLine } from './command'

/** The hash that the first entry of every chain leans on. */
export const CHAIN_START = '0'.repeat(64)

export interface HistoryEntry extends HistoryLine {
  readonly groupId: string
  readonly command: string
  readonly actorId: string
  readonly actorName: string
  readonly recordedAt: Date
}

/**
 * Adds entries to the group's chain: each carries SHA-256 of the one before and of itself in canonical JSON.
 *
 * Locks the head row first, so two transactions of one group take their turns and no number is given twice.
 */
export async function appendHistory(tx: Tx, entries: readonly HistoryEntry[]): Promise<void> {
  const groupId = entries[0]?.groupId
  if (!groupId) return
  const head = (await lockHead(tx, groupId)) ?? (await makeHead(tx, groupId))
  await addToChain(tx, groupId, chain(head, entries))
}

interface Head {
  readonly number: bigint
  readonly hash: string
}

async function lockHead(tx: Tx, groupId: string): Promise<Head | undefined> {
  const [head] = await tx.$queryRaw<Head[]>`SELECT number, hash FROM history_head WHERE group_id = ${groupId} FOR UPDATE`
  return head
}

/** The head of a group that has no history yet; whoever comes second waits here and takes the first one's. */
async function makeHead(tx: Tx, groupId: string): Promise<Head> {
  await tx.$executeRaw`INSERT INTO history_head (group_id, number, hash) VALUES (${groupId}, 0, ${CHAIN_START}) ON CONFLICT DO NOTHING`
  const head = await lockHead(tx, groupId)
  if (!head) throw new Error(`history of group ${groupId} has no head`)
  return head
}

/** Writes the entries and moves the head to the last, in one statement. */
async function addToChain(tx: Tx, groupId: string, rows: ReturnType<typeof chain>): Promise<void> {
  const last = rows.at(-1)
  if (!last) return
  const sent = JSON.stringify(rows, (_, value) => (typeof value === 'bigint' ? value.toString() : value))
  await tx.$executeRaw`
    WITH added AS (
      INSERT INTO history (group_id, number, day_id, command, subject, detail, actor_id, actor_name, recorded_at, previous_hash, hash)
      SELECT ${groupId}, number, "dayId", command, subject, detail, "actorId", "actorName", "recordedAt", "previousHash", hash
      FROM jsonb_to_recordset(${sent}::jsonb) AS r(
        number bigint, "dayId" text, command text, subject text, detail jsonb, "actorId" text, "actorName" text,
        "recordedAt" timestamptz, "previousHash" text, hash text))
    UPDATE history_head SET number = ${last.number}, hash = ${last.hash} WHERE group_id = ${groupId}`
}

/** The hash of one entry: what `npm run audit:verify` computes again. */
export function hashEntry(entry: Omit<HistoryEntry, 'dayId'> & { number: bigint; dayId: string | null; previousHash: string }): string {
  const { groupId, number, dayId, command, subject, detail, actorId, actorName, recordedAt, previousHash } = entry
  const row = {
    groupId,
    number: number.toString(),
    dayId,
    command,
    subject,
    detail,
    actorId,
    actorName,
    recordedAt: recordedAt.toISOString(),
  }
  return sha256(previousHash + canonicalJson(row))
}

function chain(head: { number: bigint; hash: string }, entries: readonly HistoryEntry[]) {
  let { number, hash } = head
  return entries.map((entry) => {
    number += 1n
    // Round-trip through JSON now: what is hashed is exactly what the database gives back.
    const detail = JSON.parse(JSON.stringify(entry.detail)) as Record<string, unknown>
    const row = { ...entry, detail, dayId: entry.dayId ?? null, number, previousHash: hash }
    hash = hashEntry(row)
    return { ...row, hash }
  })
}
