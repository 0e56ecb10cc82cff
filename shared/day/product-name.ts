/**
 * "Plum jam" out of "Plum jam with liquid pectin": a recipe's title without what only the cook needs.
 *
 * Cut before " with ", a comma or a bracket; the full title stays where the recipe itself is meant.
 */
export const productName = (title: string): string => title.split(/ with |,| \(/)[0] ?? title

/** "jam" out of "Plum jam with liquid pectin": the word that follows "half-pints of". */
export const productNoun = (title: string): string => productName(title).split(' ').at(-1)?.toLowerCase() ?? title
