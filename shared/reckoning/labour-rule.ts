import type { Minor } from './money'

/** The party that surcharges go to and that lends equipment of its own; it takes no jars. */
export const FUND = { id: 'fund', name: 'Equipment fund' } as const

/**
 * How hours count: not at all; whoever gave fewer than so many minutes pays so much more into the fund; or every hour is credited at a rate.
 *
 * The figures of `surcharge` (4 hours, 25 percent) are one group's; every group says its own.
 */
export type LabourRule =
  | { readonly kind: 'none' }
  | { readonly kind: 'surcharge'; readonly leastMinutes: number; readonly percent: number }
  | { readonly kind: 'credit'; readonly rate: Minor }

/** What a household pays on top of its part, in percent. A household whose hours nobody counted gave none. */
export const surchargePercent = (rule: LabourRule, minutes: number): number =>
  rule.kind === 'surcharge' && minutes < rule.leastMinutes ? rule.percent : 0

/** What a household's hours are credited with, to the nearest minor unit, half up. */
export const creditForHours = (rule: LabourRule, minutes: number): Minor =>
  rule.kind === 'credit' ? Math.floor((minutes * rule.rate + 30) / 60) : 0
