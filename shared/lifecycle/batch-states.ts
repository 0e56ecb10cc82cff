import { lifeCycle, type MoveTable } from '@/shared/lifecycle/life-cycle'

/**
 * The life of a kettle batch.
 *
 * `abandoned` can be reached until the last jar is filled: a scorched kettle, a day that runs out of time. Jars that were filled from it before keep
 * their own life.
 */
export type BatchState = 'planned' | 'prepping' | 'cooking' | 'filling' | 'filled' | 'abandoned'

/** What may follow what in the life of a kettle batch. */
export const BATCH_MOVES: MoveTable<BatchState> = {
  planned: ['prepping', 'abandoned'],
  prepping: ['cooking', 'abandoned'],
  cooking: ['filling', 'abandoned'],
  filling: ['filled', 'abandoned'],
  filled: [],
  abandoned: [],
}

/** The one place that says whether a kettle batch may change its state. */
export const batchLife = lifeCycle('kettle batch', BATCH_MOVES)
