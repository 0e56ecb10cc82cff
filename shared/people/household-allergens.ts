/**
 * What a household does not eat: what stands on its own list and on the lists of its people, each once, in that order.
 *
 * @param own - the household's own list
 * @param people - its people with theirs
 */
export const householdAllergens = (own: readonly string[], people: readonly { readonly allergies: readonly string[] }[]): string[] => [
  ...new Set([...own, ...people.flatMap(({ allergies }) => allergies)]),
]
