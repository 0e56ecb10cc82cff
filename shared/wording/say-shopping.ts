import type { PackChoice } from '@/shared/supplies/choose-packs'
import type { ShoppingItem } from '@/shared/supplies/day-list'
import { sayKitchenAmount, sayNumber } from '@/shared/units/say-kitchen-amount'
import { UNITS, type UnitId } from '@/shared/units/units'

/** "2 × 4 lb bag, 1 × 25 lb sack" */
export const sayPacks = ({ packs }: PackChoice): string => packs.map(({ pack, packs: count }) => `${count} × ${pack.label}`).join(', ')

/** "46 cups (10.9 L)", "56 heads", "80": an amount of the list. Weights and volumes to the tenth, as one buys them. */
export function sayAmount(amount: number, unit: UnitId): string {
  const rounded = UNITS[unit].dimension === 'count' ? Math.ceil(amount - 1e-6) : Math.ceil(amount * 10 - 1e-6) / 10
  return sayKitchenAmount(rounded, unit)
}

/** "for plum jam and dill pickles" */
export const sayFor = (products: readonly string[]): string =>
  products.length === 0 ? '' : `for ${products.map((title) => title.toLowerCase()).join(' and ')}`

/** Where the amount still to buy comes from, so that it can be redone: "46 cups needed, 6 in stock, 0 given, 10 bought". */
export function sayReckoning({ needed, onTop, inStock, given, boughtAmount, unit, sort }: ShoppingItem): string {
  const parts = [`${sayAmount(needed, unit)} needed`]
  if (onTop > 0) parts.push(`${sayNumber(onTop)} of it ${sort === 'container' ? 'spare' : 'for culls'}`)
  if (inStock > 0) parts.push(`${sayNumber(inStock)} in stock`)
  if (given > 0) parts.push(`${sayNumber(given)} ${sort === 'container' ? 'promised' : 'given'}`)
  if (boughtAmount > 0) parts.push(`${sayNumber(boughtAmount)} bought`)
  return parts.join(', ')
}

/** What one buys when nobody has said how it is sold: the missing amount by its own unit. */
export function loosePack(item: Pick<ShoppingItem, 'missing' | 'unit'>): { readonly label: string; readonly packs: number } {
  const isCount = UNITS[item.unit].dimension === 'count'
  const packs = isCount ? Math.ceil(item.missing - 1e-6) : Math.ceil(item.missing * 10 - 1e-6) / 10
  return { label: UNITS[item.unit].symbol || 'piece', packs }
}
