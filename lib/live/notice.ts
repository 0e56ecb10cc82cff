import 'server-only'
import type { Tx } from '@/lib/db/in-transaction'

/** The channel of PostgreSQL over which every process hears of every day. */
export const LIVE_CHANNEL = 'lidsong_day'

/** `day`: something of the day was changed. `search`: a search for its timetable has come further. */
export const NOTICE_KINDS = ['day', 'search'] as const
export type NoticeKind = (typeof NOTICE_KINDS)[number]

/** "Look again", and nothing of what is to be seen: that is asked for by each screen, with the rights of whoever looks. */
export interface Notice {
  readonly groupId: string
  readonly dayId: string
  readonly kind: NoticeKind
}

/** Tells all processes, with the commit of the transaction under way, and nobody after a rollback. */
export async function noticeDay(tx: Tx, { groupId, dayId, kind }: Notice): Promise<void> {
  await tx.$executeRaw`SELECT pg_notify(${LIVE_CHANNEL}, ${JSON.stringify([groupId, dayId, kind])})`
}

/** What `noticeDay` sent; null for anything else on the channel. */
export function readNotice(payload: string | undefined): Notice | null {
  try {
    const [groupId, dayId, kind] = JSON.parse(payload ?? '') as unknown[]
    if (typeof groupId !== 'string' || typeof dayId !== 'string') return null
    const known = NOTICE_KINDS.find((each) => each === kind)
    return known ? { groupId, dayId, kind: known } : null
  } catch {
    return null
  }
}
