import { decimalOf } from '@/shared/allocation/largest-remainder'
import type { Share, ShareRule, ShareTable } from '@/shared/allocation/share-table'
import { sayNumber } from '@/shared/units/say-kitchen-amount'

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
        ? 'In proportion to the hours that each household worked, reckoned in minutes, at most what it asked for. Who worked none shares what the others leave. A tie goes to the larger claim, then by household name.'
        : 'In proportion to the pounds of the day’s produce that each household brought, as weighed in and without what was sorted out, at most what it asked for; reckoned in hundredths of a pound. Who brought none shares what the others leave. A tie goes to the larger claim, then by household name.'
    case 'by-lot':
      return `By lot: for each product an order of all who asked is drawn with a number that has stood since the day was put into the calendar (seed ${rule.seed}). In that order everybody takes one jar, round after round, at most what they asked for.`
    default:
      return rule satisfies never
  }
}

/** The order that was drawn for a product, so that anybody can redo the rounds: "drawn with seed 7: Birch, Ash". Empty under any other rule. */
export function sayDraw({ rule, shares }: ShareTable): string {
  if (rule.kind !== 'by-lot') return ''
  const drawn = shares.flatMap(({ householdName, reason }) => (reason.kind === 'drawn' ? [{ householdName, place: reason.place }] : []))
  const order = drawn.sort((a, b) => a.place - b.place).map(({ householdName }) => householdName)
  return order.length === 0 ? '' : `drawn with seed ${rule.seed}: ${order.join(', ')}`
}

/** What a household gives to the day so far, where its rule shares by that: "The rule counts what you give: 2½ h so far." Empty under any other rule. */
export function sayGiven(rule: ShareRule, given: number, isOwn: boolean): string {
  if (rule.kind !== 'by-contribution') return ''
  const amount = rule.of === 'hours' ? `${sayNumber(given / 60)} h` : `${sayNumber(given / 100)} lb of produce`
  return `The rule counts what ${isOwn ? 'you give' : 'they give'}: ${amount} so far.`
}
