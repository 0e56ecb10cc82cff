import { earliestEnd, type LoadClock } from '@/shared/floor/process-clock'
import type { Method } from '@/shared/kitchen/methods'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/**
 * Minutes to wait before jars are lifted out of boiling water, heat off and lid off: 5.
 *
 * Source: University of Florida IFAS Extension FCS8277 (USDA Extension Service), Table 1 footnote.
 */
export const REST_MINUTES = 5

/**
 * Longest wait of filled jars before they are loaded: 15 min, so that a hot pack goes in hot. Common practice, no published figure was found.
 */
export const FILLED_WAIT_MINUTES = 15

/** What a load wants next, and from when it may be done. */
export type LoadStep =
  | { readonly kind: 'load' }
  | { readonly kind: 'reach' }
  | { readonly kind: 'finish'; readonly notBefore: KitchenTime }
  /** `notBefore` is null where no publication gives one: a pressure canner is opened when its pressure is gone. */
  | { readonly kind: 'empty'; readonly notBefore: KitchenTime | null }
  | { readonly kind: 'nothing' }

/** The next thing to do at a canner. */
export function nextStep(clock: LoadClock, method: Method): LoadStep {
  switch (clock.state) {
    case 'planned':
      return { kind: 'load' }
    case 'loading':
    case 'coming-up':
      return { kind: 'reach' }
    case 'processing': {
      const notBefore = earliestEnd(clock)
      return notBefore === null ? { kind: 'reach' } : { kind: 'finish', notBefore }
    }
    case 'cooling-down':
      return { kind: 'empty', notBefore: restEnd(clock.processedAt, method) }
    case 'done':
    case 'failed':
      return { kind: 'nothing' }
    default:
      return clock.state satisfies never
  }
}

const restEnd = (processedAt: KitchenTime | null, method: Method): KitchenTime | null =>
  processedAt === null || method !== 'boiling-water' ? null : processedAt + REST_MINUTES

/** Minutes of the process that are over at `now`, 0 to its whole length; 0 while no clock runs. */
export function minutesDone(clock: LoadClock, now: KitchenTime): number {
  if (clock.atTemperatureAt === null || clock.processMinutes === null) return 0
  return Math.min(clock.processMinutes, Math.max(0, Math.floor(now - clock.atTemperatureAt)))
}
