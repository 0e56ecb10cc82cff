import type { Minor } from '@/shared/reckoning/money'

/**
 * Years that jars and canners are counted to last when their price is spread over days.
 *
 * Source: New Mexico State University, home canning cost worksheet (jars 10 years, canners 20 years).
 */
export const EQUIPMENT_YEARS = { jars: 10, canner: 20 } as const

/**
 * What one canning day carries of a piece of equipment: its price over its years and the days it is used in a year, rounded up, so that the fund can
 * replace it.
 *
 * @param price - minor units
 * @param years - above 0
 * @param daysAYear - above 0
 */
export function equipmentCharge(price: Minor, years: number, daysAYear: number): Minor {
  if (!(price >= 0 && years > 0 && daysAYear > 0)) throw new RangeError('A price of 0 or more, over more than 0 years and days')
  return Math.ceil(price / (years * daysAYear))
}
