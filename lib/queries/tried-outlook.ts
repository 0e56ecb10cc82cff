import 'server-only'
import type { DayOutlook } from '@/lib/queries/day-outlook'
import { readDayProblem } from '@/lib/queries/day-problem'
import { changedOnce, orNull, plannedForPage } from '@/lib/services/day/remembered-plans'
import { readPlanChange } from '@/shared/day/apply-plan-change'
import { isSearchedApart } from '@/shared/day/day-size'

/** What the day would be with a change, planned and not saved; null for a change that the day does not have. A fixed number of statements. */
export async function triedOutlook(groupId: string, dayId: string, text: string): Promise<DayOutlook | null> {
  const change = readPlanChange(text)
  const read = change && (await readDayProblem(groupId, dayId))
  // A surer plan is found by planning the day many times over: not while a page waits for a large one.
  if (read && change.kind === 'surer' && isSearchedApart(read.problem)) return null
  if (!read) return null
  const changed = await orNull(changedOnce(read.problem, change))
  if (changed === null) return { problem: read.problem, outcome: null, stored: null, isOutdated: false, isOfOffer: false }
  if (!changed.ok) return null
  return { problem: changed.value, outcome: await plannedForPage(changed.value), stored: null, isOutdated: false, isOfOffer: false }
}
