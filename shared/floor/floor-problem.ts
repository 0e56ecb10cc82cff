import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { KitchenTime } from '@/shared/time/kitchen-time'

/** Why an entry of the floor was not taken. Times are kitchen minutes; the words are in shared/wording/floor-refusal. */
export type FloorProblem =
  /** The day is not in a state in which this is done. */
  | { readonly kind: 'day-not-open'; readonly state: string; readonly open: readonly string[] }
  /** Before the key turns, or after the day is over. */
  | { readonly kind: 'outside-the-day'; readonly at: KitchenTime; readonly from: KitchenTime; readonly until: KitchenTime }
  /** Later than the clock on the wall. */
  | { readonly kind: 'not-yet'; readonly at: KitchenTime; readonly now: KitchenTime }
  /** Before something that has to come first. */
  | { readonly kind: 'out-of-order'; readonly at: KitchenTime; readonly after: string; readonly afterAt: KitchenTime }
  /** The batch, the load or the jar has moved on. */
  | { readonly kind: 'wrong-state'; readonly of: string; readonly name: string; readonly state: string; readonly to: string }
  /** The published time is not over. */
  | {
      readonly kind: 'process-too-short'
      readonly at: KitchenTime
      readonly notBefore: KitchenTime
      readonly minutes: number
      readonly since: KitchenTime
    }
  | { readonly kind: 'nothing-to-load' }
  /** A batch without a process: its jars are kept cold. */
  | { readonly kind: 'keeps-cold'; readonly batch: string }
  /** The group's own recipe, and nobody has confirmed this of the process it borrows. */
  | { readonly kind: 'conditions-open'; readonly statements: readonly string[] }
  | { readonly kind: 'too-few-waiting'; readonly asked: number; readonly waiting: number }
  | { readonly kind: 'canner-too-small'; readonly canner: string; readonly jars: number; readonly holds: number; readonly jarSize: JarSize }
  | { readonly kind: 'canner-busy'; readonly canner: string; readonly load: string }
  | { readonly kind: 'canner-out-of-use'; readonly canner: string; readonly why: string }
  | { readonly kind: 'mixed-load'; readonly what: 'jar sizes' | 'packs' | 'methods' | 'minutes' | 'processes' }
  /** `isRelief`: for the canner of a load that is under way. */
  | { readonly kind: 'operator-too-young'; readonly operator: string; readonly isRelief?: boolean }
  | { readonly kind: 'operator-unskilled'; readonly operator: string; readonly skill: string; readonly isRelief?: boolean }
  | { readonly kind: 'jars-need-boiling'; readonly minutes: number }
  | { readonly kind: 'above-yield'; readonly jars: number; readonly high: number }
  | { readonly kind: 'too-few-lids'; readonly lot: string; readonly left: number; readonly jars: number }
  | { readonly kind: 'lids-not-usable'; readonly lot: string; readonly why: string }
  | { readonly kind: 'seal-too-early'; readonly at: KitchenTime; readonly notBefore: KitchenTime }
  | { readonly kind: 'too-late-to-keep'; readonly hours: number; readonly deadline: KitchenTime }
  | { readonly kind: 'raw-pack-not-again' }
  | { readonly kind: 'still-open'; readonly what: readonly string[] }

/** The floor's own names of moments, for the order they come in. */
export type FloorMoment = { readonly what: string; readonly at: KitchenTime | null }
