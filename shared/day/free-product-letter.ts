import type { Recipe } from '@/shared/recipes/recipe'
import { CODE_LETTERS } from '@/shared/trace/code-alphabet'

/**
 * The letter that a product gets on jars and charts of a day where some are taken: the recipe's own, else the first free one of its title,
 * else of the alphabet; null when none is left. Letters of products already on the day never change.
 */
export function freeProductLetter(
  { productLetter, title }: Pick<Recipe, 'productLetter' | 'title'>,
  taken: ReadonlySet<string>,
): string | null {
  const wanted = [productLetter, ...title.toUpperCase(), ...CODE_LETTERS]
  return wanted.find((letter) => CODE_LETTERS.includes(letter) && !taken.has(letter)) ?? null
}
