import { ok, type Result, refuse } from '@/shared/result/result'
import type { Acidity } from './published-row'
import { PUBLISHED_ROWS } from './published-rows'
import { UNVERIFIED_ROWS } from './unverified-rows'

/** A food of the tables. */
export type Food = { readonly id: string; readonly name: string; readonly acidity: Acidity }

/** All foods of the tables, those without a verified row too, by id. */
export const FOODS: ReadonlyMap<string, Food> = new Map(
  [...PUBLISHED_ROWS, ...UNVERIFIED_ROWS].map((row) => [row.foodId, { id: row.foodId, name: row.food, acidity: row.acidity }]),
)

/** Why a name picks no food: nothing like it, several foods, or one that is never canned at home. */
export type FoodNameProblem =
  | { readonly kind: 'unknown'; readonly nearest: readonly string[] }
  | { readonly kind: 'ambiguous'; readonly candidates: readonly string[] }
  | { readonly kind: 'pureed-squash' }
  | { readonly kind: 'dairy' }

/** Everyday names that mean exactly one food of the tables. */
export const ALSO_CALLED: Readonly<Record<string, string>> = {
  apples: 'apples-sliced',
  'apple sauce': 'applesauce',
  berries: 'berries-whole',
  blueberries: 'berries-whole',
  currants: 'berries-whole',
  elderberries: 'berries-whole',
  gooseberries: 'berries-whole',
  huckleberries: 'berries-whole',
  grapes: 'grapes-whole',
  'grapefruit sections': 'citrus-sections',
  'orange sections': 'citrus-sections',
  'added pectin jam': 'jam-jelly-added-pectin',
  'jam with added pectin': 'jam-jelly-added-pectin',
  'jelly with added pectin': 'jam-jelly-added-pectin',
  'jam with pectin': 'jam-jelly-added-pectin',
  'jelly with pectin': 'jam-jelly-added-pectin',
  'jam without pectin': 'jam-no-added-pectin',
  'jelly without pectin': 'jelly-no-added-pectin',
  marmalade: 'orange-marmalade',
  'crushed tomatoes': 'tomatoes-crushed',
  'tomatoes in water': 'tomatoes-whole-water',
  'tomatoes in tomato juice': 'tomatoes-whole-juice',
  'tomatoes in juice': 'tomatoes-whole-juice',
  'raw tomatoes without liquid': 'tomatoes-raw-no-liquid',
  ketchup: 'tomato-ketchup',
  catsup: 'tomato-ketchup',
  'spaghetti sauce with meat': 'spaghetti-sauce-meat',
  'spaghetti sauce without meat': 'spaghetti-sauce-meatless',
  'dill pickles': 'dill-pickles-fresh-pack',
  'fresh pack dill pickles': 'dill-pickles-fresh-pack',
  'bread and butter pickles': 'bread-and-butter-pickles',
  'corn relish': 'corn-relish',
  'green tomato relish': 'green-tomato-relish',
  'dilly beans': 'dilled-beans',
  'green beans': 'green-beans',
  'snap beans': 'green-beans',
  'string beans': 'green-beans',
  'italian beans': 'green-beans',
  'lima beans': 'lima-beans',
  'butter beans': 'lima-beans',
  'dry beans': 'dry-beans-peas',
  'dried beans': 'dry-beans-peas',
  'dry peas': 'dry-beans-peas',
  'dried peas': 'dry-beans-peas',
  'corn kernels': 'corn-whole-kernel',
  'whole kernel corn': 'corn-whole-kernel',
  'cream corn': 'corn-cream-style',
  'cream style corn': 'corn-cream-style',
  'creamed corn': 'corn-cream-style',
  'green peas': 'peas-green',
  'english peas': 'peas-green',
  peas: 'peas-green',
  potatoes: 'potatoes-white',
  'white potatoes': 'potatoes-white',
  pumpkin: 'pumpkin-winter-squash',
  'winter squash': 'pumpkin-winter-squash',
  spinach: 'greens',
  soup: 'soups',
  'seafood soup': 'soups-seafood',
  stock: 'meat-stock',
  broth: 'meat-stock',
  'chicken stock': 'meat-stock',
  'beef stock': 'meat-stock',
  'ground meat': 'meat-ground',
  'ground beef': 'meat-ground',
  'boneless chicken': 'chicken-rabbit-boneless',
  'chicken without bones': 'chicken-rabbit-boneless',
  'chicken with bones': 'chicken-rabbit-bone-in',
  'rabbit without bones': 'chicken-rabbit-boneless',
  'rabbit with bones': 'chicken-rabbit-bone-in',
  salmon: 'fish-pints',
  trout: 'fish-pints',
  mackerel: 'fish-pints',
  fish: 'fish-pints',
  chili: 'chile-con-carne',
  'chili con carne': 'chile-con-carne',
}

/**
 * Names that an item prints under its title and that mean no row by themselves: one animal is put up in pieces or ground, and some berries
 * are printed for the raw pack alone. They suggest and never pick.
 *
 * Sources: Michigan State University Extension, Preserving Food Safely (1997), Berries, whole (item 01600304), and Strips, cubes or chunks of
 * meat, Guide 5:6-7 (item 01600849); USDA AIB No. 539 (1994), Guide 5, Ground or chopped meat.
 */
const SUGGESTS: ReadonlyMap<string, readonly string[]> = new Map<string, readonly string[]>([
  ...['bear', 'beef', 'lamb', 'pork', 'veal', 'venison'].map((name) => [name, ['meat-strips-cubes', 'meat-ground']] as const),
  ...['blackberry', 'dewberry', 'loganberry', 'mulberry', 'raspberry'].map((name) => [name, ['berries-whole']] as const),
])

/** Foods for which guidance says: not by any method. */
const NEVER_CANNED: ReadonlyMap<string, 'pureed-squash' | 'dairy'> = new Map([
  ...['pumpkin butter', 'pumpkin puree', 'mashed pumpkin', 'pureed pumpkin'].map((name) => [name, 'pureed-squash'] as const),
  ...['squash puree', 'mashed squash', 'pureed squash', 'mashed winter squash', 'pureed winter squash'].map(
    (name) => [name, 'pureed-squash'] as const,
  ),
  ...['butter', 'milk', 'cheese'].map((name) => [name, 'dairy'] as const),
])

/** First words that one name of the tables happens to own but that people use for several foods. */
const MEANS_MORE_THAN_ONE: ReadonlySet<string> = new Set(['bean', 'bean or pea', 'strip'])

const BY_NAME = namesToFoods()

/**
 * The food that an id or a plain name stands for. Only whole names count: a part of a name never picks a food, it only suggests some.
 *
 * @param text - process id ("figs--boiling-water"), food id ("figs") or name in any case ("Dill pickles")
 */
export function findFood(text: string): Result<Food, FoodNameProblem> {
  const exact = BY_NAME.get(text)
  if (exact !== undefined) return ok(exact)

  const name = plain(text)
  const never = NEVER_CANNED.get(name)
  if (never !== undefined) return refuse({ kind: never })
  const found = BY_NAME.get(name)
  return found === undefined ? refuse(suggest(name)) : ok(found)
}

/** Lower case, accents off, words only, each in its singular: "Plums, halved" and "plum halved" are one name. */
function plain(text: string): string {
  const words = text
    .normalize('NFKD')
    .replaceAll(/\p{M}/gu, '')
    .toLowerCase()
    .split(/[^a-z0-9]+/)
  return words
    .filter((word) => word !== '')
    .map(singular)
    .join(' ')
}

function singular(word: string): string {
  if (/.{2}ies$/.test(word)) return `${word.slice(0, -3)}y`
  if (/(?:oes|shes|ches)$/.test(word)) return word.slice(0, -2)
  return /[^s]s$/.test(word) ? word.slice(0, -1) : word
}

function namesToFoods(): Map<string, Food> {
  const names = headNames()
  for (const food of FOODS.values()) {
    const ids = [...PUBLISHED_ROWS, ...UNVERIFIED_ROWS].filter(({ foodId }) => foodId === food.id).map(({ id }) => id)
    const everyday = Object.keys(ALSO_CALLED).filter((name) => ALSO_CALLED[name] === food.id)
    for (const name of [food.id, ...ids, ...[food.id, food.name, ...everyday].map(plain)]) names.set(name, food)
  }
  return names
}

/** "Apples" of "Apples, sliced", where one food alone begins so and the word does not mean others as well. */
function headNames(): Map<string, Food> {
  const heads = new Map<string, Food>()
  const shared = new Set(MEANS_MORE_THAN_ONE)
  for (const food of FOODS.values()) {
    const head = plain(food.name.replace(/[,(].*/, ''))
    if (heads.has(head)) shared.add(head)
    heads.set(head, food)
  }
  for (const head of shared) heads.delete(head)
  return heads
}

/** Words that join others and mean no food. */
const JOINING: ReadonlySet<string> = new Set(['a', 'and', 'in', 'no', 'not', 'of', 'or', 'the', 'to', 'with', 'without'])

/** Foods whose words meet the name: candidates when they hold every word of it, else the nearest five. */
function suggest(name: string): FoodNameProblem {
  const meant = SUGGESTS.get(name)
  if (meant !== undefined)
    return { kind: 'ambiguous', candidates: [...FOODS.values()].filter(({ id }) => meant.includes(id)).map((food) => food.name) }

  const asked = name.split(' ').filter((word) => !JOINING.has(word))
  const scored = [...FOODS.values()]
    .map((food) => ({ name: food.name, shared: sharedWords(asked, food) }))
    .filter(({ shared }) => shared > 0)
    .sort((a, b) => b.shared - a.shared || a.name.localeCompare(b.name, 'en'))
  const candidates = scored.filter(({ shared }) => shared === asked.length)
  if (candidates.length > 0) return { kind: 'ambiguous', candidates: candidates.map((each) => each.name) }
  return { kind: 'unknown', nearest: scored.slice(0, 5).map((each) => each.name) }
}

function sharedWords(asked: readonly string[], food: Food): number {
  const words = new Set(`${plain(food.name)} ${plain(food.id)}`.split(' '))
  return asked.filter((word) => words.has(word)).length
}
