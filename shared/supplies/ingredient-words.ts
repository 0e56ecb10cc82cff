/** The name under which one ingredient is summed over recipes: lower case, single spaces, "vinegar, 5 %" and "vinegar 5%" alike. */
export const ingredientKey = (item: string): string =>
  item
    .toLowerCase()
    .replace(/\s*%/g, '%')
    .replace(/,\s*(?=\d+%)/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()

/**
 * Whether somebody who says `said` may mean `wanted`: every word of it stands in the other name, "cucumbers" in "pickling cucumbers, 3-5 in.".
 *
 * For produce alone, where a gift is named by its crop. "Salt" also stands in "canning salt" and is another thing.
 */
export function isSameProduce(said: string, wanted: string): boolean {
  const words = plainWords(said)
  const known = new Set(plainWords(wanted))
  return words.length > 0 && words.every((word) => known.has(word))
}

/** Whether two names share a word. */
export function sharesWord(one: string, other: string): boolean {
  const known = new Set(plainWords(one))
  return plainWords(other).some((word) => known.has(word))
}

/** Words of three letters and more, in the singular: "tomatoes", "peaches" and "berries" are "tomato", "peach" and "berry". */
const plainWords = (text: string): string[] => (text.toLowerCase().match(/\p{L}{3,}/gu) ?? []).map(singular)

function singular(word: string): string {
  if (word.endsWith('ies')) return `${word.slice(0, -3)}y`
  if (/(?:[^aeiou]o|ch|sh|x)es$/.test(word)) return word.slice(0, -2)
  return /[^s]s$/.test(word) ? word.slice(0, -1) : word
}
