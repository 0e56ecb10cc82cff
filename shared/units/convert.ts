import { ok, type Result, refuse } from '@/shared/result/result'
import { UNITS, type UnitId } from './units'

/** The two units measure different things, or are counts. */
export type ConversionProblem = { readonly kind: 'different-dimensions'; readonly from: UnitId; readonly to: UnitId }

/**
 * The same quantity in another unit of the same dimension. The ratio is reduced as a fraction first, so that 3 teaspoons are 1 tablespoon
 * and not a hair less.
 *
 * Volume never becomes mass: that needs a density with its own source. A count converts only to itself.
 */
export function convert(value: number, from: UnitId, to: UnitId): Result<number, ConversionProblem> {
  if (from === to) return ok(value)
  const { dimension } = UNITS[from]
  if (dimension !== UNITS[to].dimension || dimension === 'count') return refuse({ kind: 'different-dimensions', from, to })

  const [numerator, denominator] = UNITS[from].factor
  const [toNumerator, toDenominator] = UNITS[to].factor
  const top = numerator * toDenominator
  const bottom = denominator * toNumerator
  const common = greatestCommonDivisor(top, bottom)
  return ok((value * Number(top / common)) / Number(bottom / common))
}

function greatestCommonDivisor(a: bigint, b: bigint): bigint {
  return b === 0n ? a : greatestCommonDivisor(b, a % b)
}

/** Celsius from Fahrenheit: C = (F - 32) x 5/9. Source: NIST SP 811, Appendix B. */
export const celsiusFromFahrenheit = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9

/** Fahrenheit from Celsius: F = C x 9/5 + 32. Source: NIST SP 811, Appendix B. */
export const fahrenheitFromCelsius = (celsius: number): number => (celsius * 9) / 5 + 32
