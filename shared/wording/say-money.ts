import type { LabourRule } from '@/shared/reckoning/labour-rule'
import { sayNumber } from '@/shared/units/say-kitchen-amount'

/** How hours count, as it is published with the day. */
export function sayLabourRule(rule: LabourRule, money: (minor: number) => string): string {
  switch (rule.kind) {
    case 'none':
      return 'Hours do not count in the money.'
    case 'surcharge':
      return `A household that gives fewer than ${sayNumber(rule.leastMinutes / 60)} hours pays ${rule.percent} % more, into the equipment fund.`
    case 'credit':
      return `Every hour is credited with ${money(rule.rate)}; every jar carries its part of it.`
    default:
      return rule satisfies never
  }
}
