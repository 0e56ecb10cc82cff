import { lifeCycle, type MoveTable } from '@/shared/lifecycle/life-cycle'

/**
 * The life of a canner load.
 *
 * The process clock runs in `processing` only, so it cannot start at loading. When the boil or the pressure is lost the load goes back to
 * `coming-up` and the whole time starts again; there is no move that goes on with a part of it.
 * `failed`: the jars never had their scheduled process and go to a new load or to the refrigerator.
 */
export type LoadState = 'planned' | 'loading' | 'coming-up' | 'processing' | 'cooling-down' | 'done' | 'failed'

/** What may follow what in the life of a canner load. */
export const LOAD_MOVES: MoveTable<LoadState> = {
  planned: ['loading'],
  loading: ['coming-up', 'failed'],
  'coming-up': ['processing', 'failed'],
  processing: ['coming-up', 'cooling-down', 'failed'],
  'cooling-down': ['done', 'failed'],
  done: [],
  failed: [],
}

/** The one place that says whether a canner load may change its state. */
export const loadLife = lifeCycle('canner load', LOAD_MOVES)
