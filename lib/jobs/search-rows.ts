import 'server-only'
import { database } from '@/lib/db/client'
import { inTransaction } from '@/lib/db/in-transaction'
import { noticeDay } from '@/lib/live/notice'
import { SavedDayProblem } from '@/shared/forms/saved-plan'
import type { SearchSaid } from '@/shared/forms/plan-search'
import type { DayProblem } from '@/shared/planning/day-problem'
import { wakeSearch } from './add-job'
import type { Progress } from './search-thread'

/** A search that this process has taken up: nobody else writes to its row as long as `runner` stands in it. */
export interface TakenSearch {
  readonly groupId: string
  readonly id: string
  readonly dayId: string
  readonly askedBy: string
  readonly runner: string
  readonly seed: number
  readonly problem: DayProblem
  readonly isComplete: boolean
  /** How often its runner was lost before. */
  readonly tries: number
  readonly hasPlan: boolean
}

/** A runner writes each second; one that was not heard of for so long is gone. */
export const LOST_AFTER_MS = 20_000

/**
 * Takes up a search that waits, or one whose runner is gone; null when it is another's, or has ended.
 *
 * @param runner - a mark that no other process and no earlier try has
 */
export async function takeUpSearch(groupId: string, id: string, runner: string): Promise<TakenSearch | null> {
  const [row] = await database().$queryRaw<(Omit<TakenSearch, 'groupId' | 'id' | 'runner' | 'problem'> & { problem: unknown })[]>`
    UPDATE plan_search SET state = 'running', runner = ${runner}, alive_at = now(), started_at = coalesce(started_at, now()),
      tries = tries + (state = 'running')::int
    WHERE group_id = ${groupId} AND id = ${id}
      AND (state = 'queued' OR (state = 'running' AND alive_at < now() - make_interval(secs => ${LOST_AFTER_MS / 1000})))
    RETURNING day_id AS "dayId", asked_by AS "askedBy", seed, problem, is_complete AS "isComplete", tries, plan IS NOT NULL AS "hasPlan"`
  return row ? { ...row, groupId, id, runner, problem: SavedDayProblem.parse(row.problem) } : null
}

interface Written {
  readonly progress: Progress
  /** The best plan is sent along only where it is new. */
  readonly isNewBest: boolean
  readonly isWorthSaying: boolean
  /** The search has come to its end; its plan may be taken. */
  readonly complete?: { readonly said: SearchSaid | null }
}

/** Keeps how far the search has come and says so; false when the search is no longer this runner's, so that it should end. */
export function writeProgress(search: TakenSearch, { progress, isNewBest, isWorthSaying, complete }: Written): Promise<boolean> {
  const { groupId, id, dayId, runner } = search
  const { steps, lowerBound, best, trail } = progress
  const plan = isNewBest && best ? JSON.stringify(best) : null
  const said = complete?.said ? JSON.stringify(complete.said) : null
  return inTransaction(async (tx) => {
    // After a lost runner the search begins anew: until it is better than what was found before, that stays.
    const written = await tx.$executeRaw`
      UPDATE plan_search SET alive_at = now(), steps = ${steps}, lower_bound = coalesce(${lowerBound}::int, lower_bound),
        plan = CASE WHEN ${plan}::jsonb IS NOT NULL AND (finish_at IS NULL OR ${best?.finishAt ?? null}::int <= finish_at)
          THEN ${plan}::jsonb ELSE plan END,
        finish_at = least(finish_at, CASE WHEN ${plan}::jsonb IS NOT NULL THEN ${best?.finishAt ?? null}::int END),
        trail = ${JSON.stringify(trail)}::jsonb, said = ${said}::jsonb, is_complete = ${complete !== undefined}
      WHERE group_id = ${groupId} AND id = ${id} AND runner = ${runner} AND state = 'running'`
    if (written === 1 && isWorthSaying) await noticeDay(tx, { groupId, dayId, kind: 'search' })
    return written === 1
  })
}

/** Ends a search that broke off, with what there is to say. */
export function failSearch({ groupId, id, dayId, runner }: TakenSearch, said: SearchSaid): Promise<void> {
  return inTransaction(async (tx) => {
    await tx.$executeRaw`
      UPDATE plan_search SET state = 'failed', runner = NULL, ended_at = now(), said = ${JSON.stringify(said)}::jsonb
      WHERE group_id = ${groupId} AND id = ${id} AND runner = ${runner} AND state = 'running'`
    await noticeDay(tx, { groupId, dayId, kind: 'search' })
  })
}

/** Hands a search back to the queue, for another process: this one was told to end. */
export function handBackSearch({ groupId, id, runner }: TakenSearch): Promise<void> {
  return inTransaction(async (tx) => {
    const back = await tx.$executeRaw`
      UPDATE plan_search SET state = 'queued', runner = NULL
      WHERE group_id = ${groupId} AND id = ${id} AND runner = ${runner} AND state = 'running'`
    if (back === 1) await wakeSearch(tx, { groupId, searchId: id })
  })
}

/** Wakes every search that waits without being taken up, or whose runner is gone. Asked by every process when it begins, and each minute. */
export async function wakeLostSearches(): Promise<void> {
  const lost = await database().$queryRaw<{ groupId: string; id: string }[]>`
    SELECT group_id AS "groupId", id FROM plan_search
    WHERE (state = 'running' AND alive_at < now() - make_interval(secs => ${LOST_AFTER_MS / 1000}))
      OR (state = 'queued' AND coalesce(alive_at, created_at) < now() - make_interval(secs => ${LOST_AFTER_MS / 1000}))
    ORDER BY created_at LIMIT 100`
  for (const { groupId, id } of lost) await inTransaction((tx) => wakeSearch(tx, { groupId, searchId: id }))
}
