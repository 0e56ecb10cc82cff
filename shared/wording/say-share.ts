import { decimalOf } from '@/shared/allocation/largest-remainder'
import type { Share, ShareRule } from '@/shared/allocation/share-table'

/** "9.58": the exact part with two decimals, for the table; empty when no sum was needed. */
export const sayQuota = ({ sum, first }: Share): string => (sum ? (first + decimalOf(sum.quota)).toFixed(2) : '')

/** The sum behind a share and what came of it, so that anybody can redo it: "10 × 46 ÷ 48 = 9.58: rounded down, larger fractions came first." */
export function sayShareReason(share: Share): string {
  const { sum, first, reason, asked } = share
  const before = first > 0 && sum ? `${first} first, then ` : ''
  const worked = sum ? `${before}${sum.weight} × ${sum.pool} ÷ ${sum.weights} = ${decimalOf(sum.quota).toFixed(2)}` : ''
  switch (reason.kind) {
    case 'asked-for-none':
      return 'Asked for none.'
    case 'allergen':
      return `None: it contains ${reason.allergens.join(', ')}, which is on the household’s list.`
    case 'all':
      return `All ${asked} that were asked for.`
    case 'exact':
      return `${worked}, a whole number.`
    case 'rounded-up':
      return `${worked}: rounded up, ${reason.isTie ? 'the fractions were equal and the name came first' : 'one of the largest fractions'}.`
    case 'rounded-down':
      return `${worked}: rounded down, ${reason.isTie ? 'the fractions were equal and other names came first' : 'larger fractions came first'}.`
    case 'one-each':
      return 'Fewer jars than households: one each, larger claims first.'
    case 'together':
      return `${worked} of this size${sayCarried(reason.carriedMillilitres)}: ${share.jars}, so that all sizes together come nearest to the part.`
    case 'drawn':
      return `By lot, in place ${reason.place}.`
    default:
      return reason satisfies never
  }
}

/** What the larger jars left over or took in advance. */
const sayCarried = (millilitres: number) =>
  millilitres === 0
    ? ''
    : millilitres > 0
      ? `, and ${millilitres} mL short in larger jars`
      : `, and ${-millilitres} mL ahead in larger jars`

/** The rule in plain words, as it was published with the day. */
export function sayShareRule(rule: ShareRule): string {
  switch (rule.kind) {
    case 'in-proportion':
      return 'Everyone gets the same part of what they asked for. First the whole jars. What is left goes, one each, to the largest fractions; a tie goes by household name.'
    case 'one-each-first':
      return 'Everyone who asked gets one jar first; the rest is shared in proportion to what is still wanted. A tie goes by household name.'
    case 'equal':
      return 'Everyone gets the same number, at most what they asked for. What is left goes, one each, to the largest claims; a tie goes by household name.'
    case 'by-contribution':
      return rule.of === 'hours'
        ? 'Shared in proportion to hours worked, at most what was asked for.'
        : 'Shared in proportion to produce brought, at most what was asked for.'
    case 'by-lot':
      return `An order was drawn by lot (seed ${rule.seed}); in that order everybody takes one jar, round after round.`
    default:
      return rule satisfies never
  }
}
