/**
 * "Plum jam" out of "Plum jam with liquid pectin", "Dill pickles" out of "Fresh-pack dill pickles": a recipe's title without what only the
 * cook needs.
 *
 * Cut before " with ", a comma or a bracket, and after the way of packing; the full title stays where the recipe itself is meant.
 */
export function productName(title: string): string {
  const short = (title.split(/ with |,| \(/)[0] ?? title).replace(/^(?:fresh-pack|quick fresh-pack|raw-pack|hot-pack) /i, '')
  return `${short.charAt(0).toUpperCase()}${short.slice(1)}`
}

/** "jam" out of "Plum jam with liquid pectin": the word that follows "half-pints of". */
export const productNoun = (title: string): string => productName(title).split(' ').at(-1)?.toLowerCase() ?? title
