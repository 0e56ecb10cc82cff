/**
 * Ingredient lots that a recipe is likely to take, by the words they share with its ingredients: "plums" goes with "crushed plums". For a first tick in
 * a form only; whoever starts the batch decides.
 *
 * @returns ids in the order given
 */
export function lotsOfRecipe(
  lots: readonly { readonly id: string; readonly item: string }[],
  ingredients: readonly { readonly item: string }[],
): string[] {
  const wanted = new Set(ingredients.flatMap(({ item }) => plainWords(item)))
  return lots.filter(({ item }) => plainWords(item).some((word) => wanted.has(word))).map(({ id }) => id)
}

/** Words of three letters and more, in the singular. */
const plainWords = (text: string): string[] =>
  (text.toLowerCase().match(/\p{L}{3,}/gu) ?? []).map((word) => (/[^s]s$/.test(word) ? word.slice(0, -1) : word))
