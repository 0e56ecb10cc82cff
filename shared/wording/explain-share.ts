import { decimalOf } from '@/shared/allocation/largest-remainder'
import type { Share, ShareSum, ShareTable } from '@/shared/allocation/share-table'
import { sayShareReason } from './say-share'

/**
 * A household's share in whole sentences, to read on a phone and to redo on paper.
 *
 * "You asked for 10 of 48. 46 sealed. 10 × 46 ÷ 48 = 9.58, so 9 jars. 4 jars were left over; .75, .75, .67 and .67 came before .58."
 */
export function explainShare(table: ShareTable, share: Share): string {
  const { reason, asked, jars } = share
  if (reason.kind === 'asked-for-none') return 'You asked for none.'
  if (reason.kind === 'allergen') return `None for you: it contains ${join(reason.allergens)}, which is on your household’s list.`

  const opening = `You asked for ${asked} of ${table.asked}. ${table.sealed} sealed.`
  if (reason.kind === 'all') return `${opening} You get all ${asked}.`
  if (reason.kind === 'drawn') {
    return `${opening} The order was drawn by lot and you are number ${reason.place}. One jar each in that order, round after round: ${countJars(jars)} for you.`
  }
  if (reason.kind === 'one-each') {
    return `${opening} There are fewer jars than households, so one each to the largest claims: ${countJars(jars)} for you.`
  }
  if (reason.kind === 'together') return `${opening} ${sayShareReason(share)}`
  return share.sum ? `${opening} ${explainSum(table, share, share.sum)}` : opening
}

function explainSum(table: ShareTable, share: Share, sum: ShareSum): string {
  const first = share.first > 0 ? `One jar first, then ` : ''
  const worked = `${first}${sum.weight} × ${sum.pool} ÷ ${sum.weights} = ${decimalOf(sum.quota).toFixed(2)}`
  if (share.reason.kind === 'exact') return `${worked}: ${countJars(share.jars)} for you.`
  return `${worked}, so ${countJars(share.jars)}. ${explainRounding(table, share, sum)}`
}

/** Who was rounded up, as fractions: those of the same sum, largest first. */
function explainRounding(table: ShareTable, share: Share, sum: ShareSum): string {
  const ups = table.shares
    .filter((each) => each.reason.kind === 'rounded-up' && each.sum?.pool === sum.pool && each.sum.weights === sum.weights)
    .map((each) => each.sum?.quota.over ?? 0)
    .sort((a, b) => b - a)
  const left = `${ups.length === 1 ? '1 jar was' : `${ups.length} jars were`} left over`
  const own = fraction(sum, sum.quota.over)
  const isTie = 'isTie' in share.reason && share.reason.isTie
  const tie = isTie ? ' Equal fractions go by household name, larger claims first where the rule says so.' : ''
  if (share.reason.kind === 'rounded-up') return `${left}, and your ${own} was one of the largest fractions.${tie}`
  const before = isTie ? ups.filter((over) => over > sum.quota.over) : ups
  const came =
    before.length > 0 ? `${join(before.map((over) => fraction(sum, over)))} came before ${own}` : `your ${own} stood level with others`
  return `${left}; ${came}.${tie}`
}

/** ".58": to two places, at most .99, so that a part of a jar never reads as a whole one. */
const fraction = (sum: ShareSum, over: number) => `.${String(Math.min(99, Math.round((over / sum.weights) * 100))).padStart(2, '0')}`

const countJars = (jars: number) => (jars === 1 ? '1 jar' : jars === 0 ? 'no jar' : `${jars} jars`)

const join = (items: readonly string[]) => (items.length > 1 ? `${items.slice(0, -1).join(', ')} and ${items.at(-1)}` : (items[0] ?? ''))
