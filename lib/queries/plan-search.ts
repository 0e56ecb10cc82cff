import 'server-only'
import { database } from '@/lib/db/client'
import { SearchSaid, SearchTrail } from '@/shared/forms/plan-search'
import type { SearchState } from '@/shared/lifecycle/search-states'

/** How the search for a day's timetable stands, without the plan itself. */
export interface SearchView {
  readonly id: string
  readonly state: SearchState
  readonly loads: number
  readonly steps: number
  /** Kitchen minutes; null while nothing is found. */
  readonly finishAt: number | null
  readonly lowerBound: number | null
  readonly trail: SearchTrail
  readonly said: SearchSaid | null
  /** The number of the plan that was saved from it. */
  readonly takenAs: number | null
  readonly createdAt: Date
  /** Seconds that it has run for, or ran. */
  readonly seconds: number
}

/** The newest search of a day; null when none was ever needed. One statement. */
export async function latestSearch(groupId: string, dayId: string): Promise<SearchView | null> {
  const row = await database().planSearch.findFirst({
    where: { groupId, dayId },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    select: {
      ...{ id: true, state: true, loads: true, steps: true, finishAt: true, lowerBound: true, trail: true, said: true, takenAs: true },
      ...{ createdAt: true, startedAt: true, aliveAt: true, endedAt: true },
    },
  })
  if (!row) return null
  const { startedAt, aliveAt, endedAt, ...view } = row
  const until = endedAt ?? aliveAt
  return {
    ...view,
    state: view.state as SearchState,
    trail: SearchTrail.parse(view.trail),
    said: view.said === null ? null : SearchSaid.parse(view.said),
    seconds: startedAt && until ? Math.max(0, Math.round((until.getTime() - startedAt.getTime()) / 1000)) : 0,
  }
}
