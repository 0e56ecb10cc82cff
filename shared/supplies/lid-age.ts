/** Mouths that jars, lids and bands are made for. */
export type Mouth = 'regular' | 'wide'

/** How old unused lids may be, by whose guidance. */
export interface LidAgeRule {
  readonly id: 'three-years' | 'five-years'
  readonly mostMonths: number
  readonly source: string
}

/**
 * Unused lids up to three years old: the stricter of the published figures, and the default.
 *
 * Source: Utah State University Extension, Canning Lid Shortage: What Are My Options? (lids stored up to three years may still seal).
 */
export const THREE_YEARS: LidAgeRule = {
  id: 'three-years',
  mostMonths: 36,
  source: 'Utah State University Extension, Canning Lid Shortage: What Are My Options?',
}

/**
 * Unused lids up to five years from the date they were made.
 *
 * Source: Michigan State University Extension, Home canning equipment shortages; Ohio State University Extension, Canning Basics.
 */
export const FIVE_YEARS: LidAgeRule = {
  id: 'five-years',
  mostMonths: 60,
  source: 'Michigan State University Extension, Home canning equipment shortages',
}

/** Lids of one purchase. */
export interface LidLot {
  readonly mouth: Mouth
  readonly count: number
  /** The date made if it is on the box, else the date bought, `2024-06-01`; null when nobody knows. */
  readonly since: string | null
  /** Flat lids are for one use: the sealing compound keeps the dent of the first rim. */
  readonly isUsed: boolean
}

/** Whether a lot of lids may go on jars, and why. */
export type LidVerdict =
  | { readonly isUsable: true; readonly ageMonths: number; readonly rule: LidAgeRule }
  | { readonly isUsable: false; readonly why: 'too-old'; readonly ageMonths: number; readonly rule: LidAgeRule }
  | { readonly isUsable: false; readonly why: 'used' | 'age-unknown' }

/**
 * Judges a lot of lids for a canning day. Age is counted in whole months begun, so a lot is out the day after its last allowed one.
 *
 * Single use: Utah State University Extension, Canning Lid Shortage: What Are My Options?
 *
 * @param day - the canning day, `2027-08-26`
 */
export function judgeLids(lot: LidLot, day: string, rule: LidAgeRule = THREE_YEARS): LidVerdict {
  if (lot.isUsed) return { isUsable: false, why: 'used' }
  if (lot.since === null) return { isUsable: false, why: 'age-unknown' }
  const ageMonths = monthsBegun(lot.since, day)
  return ageMonths <= rule.mostMonths ? { isUsable: true, ageMonths, rule } : { isUsable: false, why: 'too-old', ageMonths, rule }
}

function monthsBegun(from: string, to: string): number {
  const [fromYear = 0, fromMonth = 0, fromDay = 0] = from.split('-').map(Number)
  const [toYear = 0, toMonth = 0, toDay = 0] = to.split('-').map(Number)
  return Math.max(0, (toYear - fromYear) * 12 + (toMonth - fromMonth) + (toDay > fromDay ? 1 : 0))
}
