import { lifeCycle, type MoveTable } from '@/shared/lifecycle/life-cycle'

/**
 * The life of a search for a day's timetable.
 *
 * `queued` waits for a process that has room; `running` in a thread of its own; back to `queued` when that process is told to end; `stopped` by
 * somebody who took what there was, or because the day was asked for anew; `done` came to its end; `failed` broke off, and what it had found stays.
 */
export type SearchState = 'queued' | 'running' | 'stopped' | 'done' | 'failed'

/** What may follow what in the life of a search. */
export const SEARCH_MOVES: MoveTable<SearchState> = {
  queued: ['running', 'stopped', 'failed'],
  running: ['queued', 'stopped', 'done', 'failed'],
  stopped: [],
  done: [],
  failed: [],
}

/** The one place that says whether a search may change its state. */
export const searchLife = lifeCycle('search', SEARCH_MOVES)
