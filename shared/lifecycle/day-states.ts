import { lifeCycle, type MoveTable } from '@/shared/lifecycle/life-cycle'

/**
 * The life of a canning day.
 *
 * `draft` being put together; `claiming` households ask for jars; `planned` the claims are closed and the timetable stands; `running` people are at
 * work; `resting` the jars cool untouched and wait for the seal check; `closed` shared out, settled, balanced.
 * A day that has begun to run cannot be cancelled: there is food in jars, and every jar has to be accounted for.
 */
export type DayState = 'draft' | 'claiming' | 'planned' | 'running' | 'resting' | 'closed' | 'cancelled'

/** What may follow what in the life of a canning day. */
export const DAY_MOVES: MoveTable<DayState> = {
  draft: ['claiming', 'cancelled'],
  claiming: ['planned', 'cancelled'],
  planned: ['running', 'cancelled'],
  running: ['resting'],
  resting: ['closed'],
  closed: [],
  cancelled: [],
}

/** The one place that says whether a canning day may change its state. */
export const dayLife = lifeCycle('canning day', DAY_MOVES)
