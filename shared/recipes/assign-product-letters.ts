import { CODE_LETTERS } from '@/shared/trace/code-alphabet'
import type { Recipe } from './recipe'

/**
 * One letter for each recipe of a day, no letter twice: its own where still free, else the first free letter of its title, else of the alphabet.
 *
 * Recipes are served in the order given, so the same day always gets the same letters.
 *
 * @throws RangeError when there are more recipes than letters
 */
export function assignProductLetters(recipes: readonly Pick<Recipe, 'id' | 'title' | 'productLetter'>[]): ReadonlyMap<string, string> {
  const letters = new Map<string, string>()
  const taken = new Set<string>()
  for (const { id, title, productLetter } of recipes) {
    const wanted = [productLetter, ...title.toUpperCase(), ...CODE_LETTERS]
    const letter = wanted.find((each) => CODE_LETTERS.includes(each) && !taken.has(each))
    if (letter === undefined) throw new RangeError(`A day has at most ${CODE_LETTERS.length} recipes`)
    taken.add(letter)
    letters.set(id, letter)
  }
  return letters
}
