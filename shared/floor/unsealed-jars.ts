import type { FloorProblem } from '@/shared/floor/floor-problem'
import type { Pack } from '@/shared/kitchen/methods'
import { ok, type Result, refuse } from '@/shared/result/result'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** A published rule that a screen shows with its source. */
export interface KeepingRule {
  readonly hours: number
  readonly words: string
  readonly source: string
}

/**
 * Jars cool untouched at room temperature for 12 to 24 hours; only then is a lid called sealed.
 *
 * Source: USDA Complete Guide to Home Canning, AIB No. 539 (later text), Cooling jars and testing jar seals.
 */
export const COOLING: KeepingRule = {
  hours: 12,
  words: 'Cool 12 to 24 hours at room temperature, then take the bands off and test the seals.',
  source: 'USDA Complete Guide to Home Canning, AIB No. 539, later text, Cooling jars and testing jar seals',
}

/**
 * A jar that did not seal, processed for the whole time: within 24 hours chilled, frozen or processed again; found later it is thrown out.
 *
 * Source: NC State University Extension, consumer food-safety answers (2004), Unsealed jars; Michigan State University Extension, Preserving Food
 * Safely (1997), Reprocessing unsealed jars (item 01600593).
 */
export const AFTER_A_WHOLE_PROCESS: KeepingRule = {
  hours: 24,
  words: 'Within 24 hours of processing: chill it, or process it again with a new lid. Found later: throw it out.',
  source: 'NC State University Extension, consumer food-safety answers (2004), Unsealed jars',
}

/**
 * A jar whose process was not completed: 2 hours, then it is lost.
 *
 * Source: University of Nebraska-Lincoln Extension, Saving Home-Canned Food: Jars Did Not Seal. The stricter of the published figures.
 */
export const AFTER_A_FAILED_PROCESS: KeepingRule = {
  hours: 2,
  words: 'Not wholly processed: chill it or begin a whole new process within 2 hours, or throw it out.',
  source: 'University of Nebraska-Lincoln Extension, Saving Home-Canned Food: Jars Did Not Seal',
}

/** What may become of a jar that has no seal. */
export const UNSEALED_WAYS = ['fridge', 'again', 'discard'] as const
export type UnsealedWay = (typeof UNSEALED_WAYS)[number]

/** What is known of a jar that has no seal. */
export interface UnsealedJar {
  readonly pack: Pack
  /** True when its load met the scheduled process. */
  readonly wasProcessed: boolean
  /** When its process ended, or when its failed load was given up. */
  readonly since: KitchenTime
}

/** Which rule's clock runs for a jar, and until when. */
export function keepingDeadline(jar: UnsealedJar): { readonly rule: KeepingRule; readonly until: KitchenTime } {
  const rule = jar.wasProcessed ? AFTER_A_WHOLE_PROCESS : AFTER_A_FAILED_PROCESS
  return { rule, until: jar.since + rule.hours * 60 }
}

/**
 * Whether a jar may go that way now.
 *
 * A second process is a hot-pack process: a raw-packed jar that was processed once is not processed again, because its food is cooked by then and
 * no raw-pack row fits it (Kansas State University Extension, You Asked It, Reprocessing: without a tested hot-pack process do not reprocess). A
 * raw-packed jar of a failed load is chilled for the same reason.
 */
export function settleUnsealed(jar: UnsealedJar, way: UnsealedWay, at: KitchenTime): Result<UnsealedWay, FloorProblem> {
  const { rule, until } = keepingDeadline(jar)
  if (way === 'discard') return ok(way)
  if (at > until) return refuse({ kind: 'too-late-to-keep', hours: rule.hours, deadline: until })
  return way === 'again' && jar.pack === 'raw' ? refuse({ kind: 'raw-pack-not-again' }) : ok(way)
}

/** Whether a lid may be called sealed now. */
export function checkSeal(emptiedAt: KitchenTime, at: KitchenTime): Result<KitchenTime, FloorProblem> {
  const notBefore = emptiedAt + COOLING.hours * 60
  return at < notBefore ? refuse({ kind: 'seal-too-early', at, notBefore }) : ok(at)
}
