/**
 * An exact part: `whole` and `over / of` more, `0 <= over < of`. Nothing is rounded, so that fractions can be compared and a table redone by hand.
 */
export interface ExactPart {
  readonly whole: number
  readonly over: number
  readonly of: number
}

/** An exact part as a decimal number, for showing only. */
export const decimalOf = (part: ExactPart): number => part.whole + part.over / part.of

/** The exact part `total × weight ÷ weights`. All are whole numbers, `weights > 0`. */
export function exactPart(total: number, weight: number, weights: number): ExactPart {
  const product = BigInt(total) * BigInt(weight)
  return { whole: Number(product / BigInt(weights)), over: Number(product % BigInt(weights)), of: weights }
}

/**
 * Shares whole things out in proportion to weights: everybody gets the whole part, and what is left goes, one each, to the largest fractions.
 *
 * Every share is its exact part rounded down or up. Ties between equal fractions go to the lowest index, so the caller's order is the tie rule.
 *
 * Source: Balinski and Young, Fair Representation (2nd ed. 2001), the method of Hamilton.
 *
 * @param total - whole number of things to share, 0 or more
 * @param weights - whole numbers, 0 or more; their sum must stay below 2^53
 * @returns shares in the order of the weights; their sum is `total`
 * @throws RangeError for fractions, negative numbers, and when there is something to share but every weight is 0
 */
export function largestRemainder(total: number, weights: readonly number[]): number[] {
  const sum = sumOfWeights(weights)
  requireWhole(total)
  if (total === 0) return weights.map(() => 0)
  if (sum === 0) throw new RangeError('Nothing to share by: every weight is 0')

  const parts = weights.map((weight) => exactPart(total, weight, sum))
  const shares = parts.map((part) => part.whole)
  const left = total - shares.reduce((given, share) => given + share, 0)
  const byFraction = parts.map((part, index) => ({ over: part.over, index })).sort((a, b) => b.over - a.over || a.index - b.index)
  for (const { index } of byFraction.slice(0, left)) shares[index] = (shares[index] ?? 0) + 1
  return shares
}

function sumOfWeights(weights: readonly number[]): number {
  let sum = 0
  for (const weight of weights) {
    requireWhole(weight)
    sum += weight
  }
  requireWhole(sum)
  return sum
}

function requireWhole(value: number): void {
  if (!Number.isSafeInteger(value) || value < 0) throw new RangeError(`Not a whole number of 0 or more: ${value}`)
}
