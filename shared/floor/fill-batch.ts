import type { FloorProblem } from '@/shared/floor/floor-problem'
import { ok, type Result, refuse } from '@/shared/result/result'
import { judgeLids, type LidVerdict, type Mouth } from '@/shared/supplies/lid-age'

/** Lids of one lot as they stand before a batch is closed. */
export interface LidStock {
  readonly lot: string
  readonly mouth: Mouth
  readonly count: number
  /** Lids of the lot that are on jars already. */
  readonly used: number
  /** Date bought, `2027-08-01`; null when nobody knows. */
  readonly since: string | null
}

/** What a batch is about to give. */
export interface Filling {
  readonly jars: number
  /** The most jars that the tested recipe gives for this batch. */
  readonly high: number
  /** Somebody counted again and it is right. */
  readonly isCountedAgain: boolean
}

/**
 * Whether so many jars may be written down for a batch: more than the recipe's highest yield only when they were counted again.
 *
 * More than the recipe gives is nearly always a slip or a different recipe, and a thinned one is not the tested one.
 */
export function checkFilling({ jars, high, isCountedAgain }: Filling): Result<number, FloorProblem> {
  return jars > high && !isCountedAgain ? refuse({ kind: 'above-yield', jars, high }) : ok(jars)
}

/** Whether the lot has so many lids left, and is fit to be used on this day (`2027-08-26`). */
export function checkLids(stock: LidStock, jars: number, day: string): Result<number, FloorProblem> {
  const { lot, mouth, count, used, since } = stock
  const verdict = judgeLids({ mouth, count, since, isUsed: false }, day)
  if (!verdict.isUsable) return refuse({ kind: 'lids-not-usable', lot, why: whyNot(verdict) })
  const left = Math.max(0, count - used)
  return jars > left ? refuse({ kind: 'too-few-lids', lot, left, jars }) : ok(left - jars)
}

function whyNot(verdict: LidVerdict): string {
  if (verdict.isUsable) return ''
  if (verdict.why === 'too-old')
    return `They are ${verdict.ageMonths} months old; ${verdict.rule.mostMonths} is the most (${verdict.rule.source}).`
  return verdict.why === 'used' ? 'Flat lids are for one use.' : 'Nobody knows how old they are.'
}
