import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'

const FOURTEEN_HOURS_MS = 14 * 60 * 60 * 1000
const END_OF_TIME = '9999-12-31'

/** The latest date that it is anywhere on earth at this moment (UTC+14): a later one has come nowhere. */
export const lastDateAnywhere = (now: Date): string => new Date(now.getTime() + FOURTEEN_HOURS_MS).toISOString().slice(0, 10)

/** The latest date that something can have happened on in this group; a demo group lives at any date it likes. */
export async function lastPossibleDate(tx: Tx, groupId: string, now: Date): Promise<string> {
  const { isDemo } = await tx.group.findUniqueOrThrow({ where: { id: groupId }, select: { isDemo: true } })
  return isDemo ? END_OF_TIME : lastDateAnywhere(now)
}
