import { largestRemainder } from '@/shared/allocation/largest-remainder'
import { ok, type Result, refuse } from '@/shared/result/result'

/** An amount of money in whole minor units of its currency (cents for USD, yen for JPY), so that sums are exact. */
export type Minor = number

/** The largest amount that is reckoned with, in minor units. */
export const MOST_MINOR: Minor = 1_000_000_000_00

/** The largest amount that somebody may type, in minor units: what a column of 32 bits holds, rounded down. */
export const MOST_TYPED_MINOR: Minor = 2_000_000_000

/** Why a typed amount was not read. */
export type MoneyProblem =
  | { readonly kind: 'not-an-amount'; readonly text: string }
  | { readonly kind: 'too-fine'; readonly text: string; readonly digits: number }
  | { readonly kind: 'amount-out-of-range'; readonly text: string }
  | { readonly kind: 'not-a-currency'; readonly text: string }

/**
 * How many digits stand after the point in a currency: 2 for USD, 0 for JPY, 3 for KWD.
 *
 * Source: ISO 4217, as the runtime carries it.
 *
 * @param currency - three capital letters
 */
export function currencyDigits(currency: string): number {
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2
}

/**
 * Reads "12.50", "12", ".5" or "12,50" of 0 or more. A comma with three digits behind it is refused: it may divide thousands, also in a currency of three
 * digits, where only a point divides what is less than one.
 */
export function parseMoney(text: string, currency: string): Result<Minor, MoneyProblem> {
  if (!/^[A-Z]{3}$/.test(currency)) return refuse({ kind: 'not-a-currency', text: currency })
  const match = /^(\d*)(?:([.,])(\d+))?$/.exec(text.trim())
  const [, whole = '', divider, fraction = ''] = match ?? []
  if (!match || whole + fraction === '') return refuse({ kind: 'not-an-amount', text })

  const digits = currencyDigits(currency)
  if (fraction.length === digits && digits === 3 && divider === ',') return refuse({ kind: 'not-an-amount', text })
  if (fraction.length > digits) return refuse({ kind: 'too-fine', text, digits })
  if (whole.length > 15) return refuse({ kind: 'amount-out-of-range', text })
  const minor = Number(whole + fraction.padEnd(digits, '0'))
  return minor > MOST_TYPED_MINOR ? refuse({ kind: 'amount-out-of-range', text }) : ok(minor)
}

/** "$12.50", "-$0.05": an amount with the sign and the digits of its currency. */
export function formatMoney(minor: Minor, currency: string, locale = 'en-US'): string {
  return new Intl.NumberFormat(locale, { style: 'currency', currency }).format(minor / 10 ** currencyDigits(currency))
}

/** "12.50": an amount without its sign of currency, for tables and files. */
export function plainMoney(minor: Minor, currency: string): string {
  return (minor / 10 ** currencyDigits(currency)).toFixed(currencyDigits(currency))
}

/** "Type an amount like 18.00, in USD.", with the digits of the currency. */
export const askForAmount = (example: number, currency: string): string =>
  `Type an amount like ${plainMoney(Math.round(example * 10 ** currencyDigits(currency)), currency)}, in ${currency}.`

/**
 * Splits an amount by weights so that the parts add up to it: largest remainders, ties to the lower index.
 *
 * A refund (below 0) is split as its absolute amount and turned round, so that it undoes a payment exactly.
 *
 * @param weights - whole numbers, 0 or more, not all 0 unless the amount is 0
 */
export function splitMoney(minor: Minor, weights: readonly number[]): Minor[] {
  const parts = largestRemainder(Math.abs(minor), weights)
  return minor < 0 ? parts.map((part) => (part === 0 ? 0 : -part)) : parts
}
