import { aib1994, aibLater, michiganState, nchfp, plumPreserves } from '@/shared/process/sources'
import { buildRecipe, commonPractice, HALF_PINT_OR_PINT, type RecipeFacts } from '../build-recipe'
import type { Ingredient, JarYield, ProcessBinding, Recipe } from '../recipe'

const boilingWater = (foodId: string): ProcessBinding => ({ foodId, pack: 'hot', method: 'boiling-water', gauge: null })
const ADDED_PECTIN = boilingWater('jam-jelly-added-pectin')
const JAM_WITHOUT = boilingWater('jam-no-added-pectin')
const JELLY_WITHOUT = boilingWater('jelly-no-added-pectin')

/** Without added pectin the gel point may take 20 to 60 minutes of boiling: common practice. */
const TO_THE_GEL_POINT = commonPractice(20, 40, 60)

const cups = (item: string, amount: Ingredient['amount']): Ingredient => ({ item, amount, unit: 'us-cup' })
const halfPints = (low: number, high: number, produce: string): Recipe['batch'] => ({
  jar: 'half-pint',
  yield: jarYield(low, high),
  produce,
  producePounds: null,
})
const jarYield = (low: number, high: number): JarYield => ({ low, typical: Math.floor((low + high) / 2), high })

const NEVER_DOUBLED = 'Sugar, fruit and pectin amounts are fixed: one batch to a kettle, never doubled.'

type Fixed = 'jars' | 'defaultJar' | 'kettleUse' | 'acidFood'
const spread = (facts: Omit<RecipeFacts, Fixed>): Recipe =>
  buildRecipe({
    jars: HALF_PINT_OR_PINT,
    defaultJar: 'half-pint',
    kettleUse: 'jam',
    acidFood: true,
    ...facts,
    notes: [NEVER_DOUBLED, ...(facts.notes ?? [])],
  })

const jelly = (
  id: string,
  title: string,
  productLetter: string,
  fruit: string,
  yields: JarYield,
  sugarPerCup: Ingredient['amount'],
  waterPerPound: Ingredient['amount'],
  source: Recipe['source'],
): Recipe =>
  spread({
    id,
    title,
    productLetter,
    pattern: 'plum',
    source,
    process: JELLY_WITHOUT,
    batch: { jar: 'half-pint', yield: yields, produce: fruit, producePounds: null },
    cupsOfJuice: 4,
    kettleMinutes: TO_THE_GEL_POINT,
    ingredients: [
      cups('strained juice', 4),
      { item: 'sugar', amount: sugarPerCup, unit: 'us-cup', per: 'cup of juice' },
      { item: 'water to extract the juice', amount: waterPerPound, unit: 'us-cup', per: 'pound of fruit' },
    ],
    notes: ['One pound of fruit should give at least 1 cup of clear juice. No more than 6 to 8 cups of juice at a time.'],
  })

const JUICE_TABLE = aib1994('Making jelly without added pectin, juice table')
const GUIDE_7 = aibLater('Guide 7, Extracting juices and making jelly')

/** Jams, jellies, preserves and marmalade. */
export const JAMS_AND_JELLIES: readonly Recipe[] = [
  spread({
    id: 'plum-jam',
    alsoKnownAs: ['plum_jam'],
    title: 'Plum jam with liquid pectin',
    productLetter: 'J',
    pattern: 'plum',
    source: nchfp('Plum jam with liquid pectin'),
    process: ADDED_PECTIN,
    batch: { jar: 'half-pint', yield: { low: 7, typical: 8, high: 8 }, produce: 'plums', producePounds: 2.5 },
    ingredients: [cups('crushed plums', 4.5), cups('sugar', 7.5), { item: 'liquid pectin', amount: 1, unit: 'pouch' }],
    ingredientList: 'complete',
    // Cutting and crushing; washing jars and writing labels are counted a jar.
    prepMinutes: commonPractice(12, 12, 12),
    kettleMinutes: commonPractice(20, 20, 20),
  }),
  spread({
    id: 'jam-apricot',
    title: 'Apricot jam, no added pectin',
    productLetter: 'A',
    pattern: 'peach',
    source: michiganState('Making jams without added pectin (item 01600890)'),
    process: JAM_WITHOUT,
    batch: halfPints(5, 6, 'apricots'),
    kettleMinutes: TO_THE_GEL_POINT,
    ingredients: [cups('crushed apricots', { low: 4, high: 4.5 }), cups('sugar', 4), { item: 'lemon juice', amount: 2, unit: 'us-tbsp' }],
    ingredientList: 'complete',
  }),
  spread({
    id: 'jam-berry',
    title: 'Berry or strawberry jam, no added pectin',
    productLetter: 'B',
    pattern: 'plum',
    source: michiganState('Making jams without added pectin (item 01600890)'),
    process: JAM_WITHOUT,
    batch: halfPints(3, 4, 'berries or strawberries'),
    kettleMinutes: TO_THE_GEL_POINT,
    ingredients: [cups('crushed berries', 4), cups('sugar', 4)],
    ingredientList: 'complete',
    notes: ['The table prints no lemon juice for this one.'],
  }),
  spread({
    id: 'jam-peach',
    title: 'Peach jam, no added pectin',
    productLetter: 'P',
    pattern: 'peach',
    source: michiganState('Making jams without added pectin (item 01600890)'),
    process: JAM_WITHOUT,
    batch: halfPints(6, 7, 'peaches'),
    kettleMinutes: TO_THE_GEL_POINT,
    ingredients: [
      cups('crushed peaches', { low: 5.5, high: 6 }),
      cups('sugar', { low: 4, high: 5 }),
      { item: 'lemon juice', amount: 2, unit: 'us-tbsp' },
    ],
    ingredientList: 'complete',
  }),
  withLemon(jelly('jelly-apple', 'Apple jelly, no added pectin', 'A', 'apples', jarYield(4, 5), 0.75, 1, JUICE_TABLE)),
  jelly(
    'jelly-blackberry',
    'Blackberry jelly, no added pectin',
    'B',
    'blackberries',
    jarYield(7, 8),
    { low: 0.75, high: 1 },
    { low: 0, high: 0.25 },
    JUICE_TABLE,
  ),
  jelly('jelly-crab-apple', 'Crab apple jelly, no added pectin', 'C', 'crab apples', jarYield(4, 5), 1, 1, JUICE_TABLE),
  jelly(
    'jelly-grape',
    'Grape jelly, no added pectin',
    'G',
    'grapes',
    jarYield(8, 9),
    { low: 0.75, high: 1 },
    { low: 0, high: 0.25 },
    GUIDE_7,
  ),
  jelly('jelly-plum', 'Plum jelly, no added pectin', 'P', 'plums', jarYield(8, 9), 0.75, 0.5, GUIDE_7),
  spread({
    id: 'pear-apple-jam',
    title: 'Pear-apple jam',
    productLetter: 'P',
    pattern: 'peach',
    source: aibLater('Guide 7, Pear-apple jam'),
    process: boilingWater('pear-apple-jam'),
    batch: halfPints(7, 8, 'pears and apples'),
    ingredients: [
      cups('pears, chopped', 2),
      cups('apples, chopped', 1),
      cups('sugar', 6.5),
      cups('bottled lemon juice', 1 / 3),
      { item: 'liquid pectin', amount: 6, unit: 'us-floz' },
    ],
  }),
  spread({
    id: 'blueberry-spice-jam',
    title: 'Blueberry-spice jam',
    productLetter: 'B',
    pattern: 'plum',
    source: aibLater('Guide 7, Blueberry-spice jam'),
    process: boilingWater('blueberry-spice-jam'),
    batch: halfPints(5, 5, 'blueberries'),
    ingredients: [
      { item: 'blueberries', amount: 2.5, unit: 'us-pt' },
      { item: 'lemon juice', amount: 1, unit: 'us-tbsp' },
      cups('sugar', 5.5),
      cups('water', 0.75),
      { item: 'powdered pectin', amount: 1.75, unit: 'oz' },
    ],
  }),
  spread({
    id: 'grape-plum-jelly',
    title: 'Grape-plum jelly',
    productLetter: 'G',
    pattern: 'plum',
    source: aibLater('Guide 7, Grape-plum jelly'),
    process: boilingWater('grape-plum-jelly'),
    batch: { jar: 'half-pint', yield: { low: 10, typical: 10, high: 10 }, produce: 'plums and grapes', producePounds: 6.5 },
    cupsOfJuice: 6.5,
    ingredients: [
      { item: 'plums', amount: 3.5, unit: 'lb' },
      { item: 'grapes', amount: 3, unit: 'lb' },
      cups('juice used', 6.5),
      cups('sugar', 8.5),
      { item: 'powdered pectin', amount: 1.75, unit: 'oz' },
      { item: 'water to extract the juice', amount: 1, unit: 'us-cup' },
    ],
  }),
  spread({
    id: 'plum-preserves',
    title: 'Plum preserves',
    productLetter: 'P',
    pattern: 'plum',
    source: plumPreserves('Ingredients'),
    process: boilingWater('plum-preserves'),
    batch: { jar: 'half-pint', yield: { low: 5, typical: 5, high: 5 }, produce: 'tart plums', producePounds: 2.5 },
    kettleMinutes: TO_THE_GEL_POINT,
    ingredients: [cups('tart plums, pitted', 5), cups('sugar', 4), cups('water', 1)],
    ingredientList: 'complete',
  }),
  spread({
    id: 'orange-marmalade',
    title: 'Orange marmalade',
    productLetter: 'M',
    pattern: 'peach',
    source: nchfp('Orange marmalade, Ingredients'),
    process: null,
    batch: halfPints(7, 8, 'oranges and lemon'),
    ingredients: [cups('orange peel, sliced', 4), cups('orange pulp', 4), cups('lemon, sliced', 1), cups('water', 6), cups('sugar', 6)],
    notes: ['No verified process is held: ask a cooperative extension office, or keep the jars in the fridge or freezer.'],
  }),
]

/** The one juice of the table that prints lemon juice, as optional. */
function withLemon(recipe: Recipe): Recipe {
  const lemon: Ingredient = { item: 'lemon juice', amount: 1.5, unit: 'us-tsp', per: 'cup of juice', optional: true }
  return { ...recipe, ingredients: [...recipe.ingredients, lemon] }
}
