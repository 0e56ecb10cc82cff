import 'server-only'
import { database } from '@/lib/db/client'
import { noticeDay } from '@/lib/live/notice'
import { log } from '@/lib/log'

const PAUSE_MS = 150

const due = new Set<string>()

/**
 * Tells everybody who looks at the day to look again, once for all claims of a moment.
 *
 * After the commit and not with it: commits that carry a notice wait for one another, and claims come by the dozen when a window opens.
 * A notice that is lost with this process costs nothing but time, since screens also ask by themselves.
 */
export function noticeClaims(groupId: string, dayId: string): void {
  const key = `${groupId} ${dayId}`
  if (due.has(key)) return
  due.add(key)
  setTimeout(() => {
    due.delete(key)
    noticeDay(database(), { groupId, dayId, kind: 'day' }).catch((error) => log().debug({ err: error }, 'claims were not noticed'))
  }, PAUSE_MS).unref()
}
