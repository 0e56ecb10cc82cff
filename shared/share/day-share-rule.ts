import { seedOf } from '@/shared/allocation/draw-order'
import { DEFAULT_SHARE_RULE, type ShareRule } from '@/shared/allocation/share-table'

/**
 * The rule of a day as it is stored with it; a day without one shares in proportion.
 *
 * The seed of a lot is made from the day's id. That stands before anybody has asked for a jar, so nobody can draw until they like what they see.
 */
export function dayShareRule(stored: string, dayId: string): ShareRule {
  switch (stored) {
    case 'one-each-first':
    case 'equal':
      return { kind: stored }
    case 'by-hours':
      return { kind: 'by-contribution', of: 'hours' }
    case 'by-produce':
      return { kind: 'by-contribution', of: 'produce' }
    case 'by-lot':
      return { kind: 'by-lot', seed: seedOf(dayId) }
    default:
      return DEFAULT_SHARE_RULE
  }
}

/** The rule as it holds for one product: a lot is drawn for each anew, so that nobody is first every time. */
export const productRule = (rule: ShareRule, { recipeId, jarSize }: { readonly recipeId: string; readonly jarSize: string }): ShareRule =>
  rule.kind === 'by-lot' ? { kind: 'by-lot', seed: seedOf(`${rule.seed} ${recipeId} ${jarSize}`) } : rule
