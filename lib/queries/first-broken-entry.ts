import 'server-only'
import { CHAIN_START, hashEntry } from '@/lib/commands/append-history'
import { database } from '@/lib/db/client'

/** Where a group's history stops being what was written, and how. */
export interface BrokenEntry {
  readonly groupId: string
  readonly number: bigint
  readonly why: 'missing' | 'changed' | 'not in its chain' | 'cut off'
}

const PAGE = 500

/** Reads a group's history from its first entry and computes every hash again; null when all of it stands. */
export async function firstBrokenEntry(groupId: string): Promise<BrokenEntry | null> {
  let previousHash = CHAIN_START
  let number = 0n
  for (;;) {
    const entries = await database().history.findMany({
      where: { groupId, number: { gt: number } },
      orderBy: { number: 'asc' },
      take: PAGE,
    })
    for (const entry of entries) {
      if (entry.number !== number + 1n) return { groupId, number: number + 1n, why: 'missing' }
      if (entry.previousHash !== previousHash) return { groupId, number: entry.number, why: 'not in its chain' }
      const detail = entry.detail as Record<string, unknown>
      if (hashEntry({ ...entry, detail }) !== entry.hash) return { groupId, number: entry.number, why: 'changed' }
      number = entry.number
      previousHash = entry.hash
    }
    if (entries.length < PAGE) break
  }
  const head = await database().historyHead.findUnique({ where: { groupId } })
  if (head && head.number !== number) return { groupId, number: number + 1n, why: 'cut off' }
  if (head && head.hash !== previousHash) return { groupId, number, why: 'changed' }
  return null
}
