/** Things that are counted, by what one of them is called; measures such as "lb" or "qt" stay as they are. */
const COUNTED: Readonly<Record<string, string>> = {
  bag: 'bags',
  basket: 'baskets',
  bottle: 'bottles',
  box: 'boxes',
  bunch: 'bunches',
  bushel: 'bushels',
  can: 'cans',
  crate: 'crates',
  head: 'heads',
  hour: 'hours',
  jar: 'jars',
  packet: 'packets',
  piece: 'pieces',
  pouch: 'pouches',
  tub: 'tubs',
}

const ONE = new Map(Object.entries(COUNTED).map(([one, many]) => [many, one]))

/**
 * A quantity with its unit, as one says it: "6 pouches", "1 tub", "12 lb".
 *
 * @param quantity - how many, of the unit
 * @param unit - as it was typed, one or many
 */
export function sayQuantity(quantity: number, unit: string): string {
  const one = ONE.get(unit) ?? unit
  return `${quantity} ${quantity === 1 ? one : (COUNTED[one] ?? unit)}`
}
