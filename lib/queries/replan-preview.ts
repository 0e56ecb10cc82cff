import 'server-only'
import { database } from '@/lib/db/client'
import { dayClock } from '@/lib/queries/day-clock'
import type { DayHead } from '@/lib/queries/day-head'
import { type ReplanInput, readReplanInput } from '@/lib/queries/replan-input'
import { plannedAgain } from '@/lib/services/replan/planned-again'
import type { Replan } from '@/shared/planning/replan-day'
import type { Result } from '@/shared/result/result'
import type { Refusal } from '@/shared/wording/refusal'

/** What the rest of the day would be if it were planned now; nothing is saved. */
export interface ReplanPreview {
  readonly input: ReplanInput
  readonly outcome: Result<Replan, Refusal>
}

/** Plans a running day anew, to look at; null where it does not run or has no plan. A fixed number of statements. */
export async function replanPreview(groupId: string, day: DayHead, at: Date): Promise<ReplanPreview | null> {
  if (day.state !== 'running') return null
  const db = database()
  const now = Math.floor(await dayClock(db, groupId, day, at))
  const input = await readReplanInput(db, groupId, day.id, now)
  return input && { input, outcome: await plannedAgain(input) }
}
