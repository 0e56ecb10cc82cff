import { aib1994, michiganState } from '@/shared/process/sources'
import { buildRecipe, commonPractice, loadWeights, PINT_OR_QUART, prepAtRate, published, type RecipeFacts } from '../build-recipe'
import type { Recipe } from '../recipe'

type Fixed = 'jars' | 'kettleUse' | 'scaling' | 'ingredients' | 'ingredientList'
type PlainPack = Omit<RecipeFacts, Fixed> & { readonly liquid?: Recipe['ingredients'] }

/** One full canner is one batch; the kettle may hold more. */
const plainPack = ({ liquid = [], ...facts }: PlainPack): Recipe =>
  buildRecipe({
    jars: PINT_OR_QUART,
    kettleUse: 'cook',
    scaling: 'to-kettle-volume',
    ingredientList: 'complete',
    ingredients: [{ item: facts.batch.produce, amount: facts.batch.producePounds ?? 0, unit: 'lb' }, ...liquid],
    ...facts,
  })

const SEVEN = { low: 7, typical: 7, high: 7 }
const NINE = { low: 9, typical: 9, high: 9 }

/** Fruit and vegetables packed as they are, a canner load at a time. Preparation rates in pounds per person-hour are common practice. */
export const PLAIN_PACKS: readonly Recipe[] = [
  plainPack({
    id: 'tomato-halved',
    alsoKnownAs: ['tomato_halved'],
    title: 'Tomatoes, halved, packed in water',
    productLetter: 'T',
    pattern: 'tomato',
    source: michiganState('Tomatoes, whole in water (item 01600874)'),
    process: { foodId: 'tomatoes-whole-water', pack: 'hot', method: 'boiling-water', gauge: null },
    defaultJar: 'quart',
    batch: { jar: 'quart', yield: SEVEN, produce: 'tomatoes', producePounds: 21 },
    loadWeights: loadWeights(21, 13),
    prepMinutes: prepAtRate(21, 12),
    kettleMinutes: published(5),
    acidFood: true,
    notes: ['Bottled lemon juice or citric acid goes into every jar. No tomatoes from dead or frost-killed vines.'],
  }),
  plainPack({
    id: 'peach',
    title: 'Peaches, halved or sliced, light syrup',
    productLetter: 'P',
    pattern: 'peach',
    source: aib1994('Guide 2, Peaches - halved or sliced'),
    process: { foodId: 'peaches', pack: 'hot', method: 'boiling-water', gauge: null },
    defaultJar: 'quart',
    batch: { jar: 'quart', yield: SEVEN, produce: 'peaches', producePounds: 17.5 },
    loadWeights: loadWeights(17.5, 11),
    prepMinutes: prepAtRate(17.5, 8),
    kettleMinutes: published(5),
    acidFood: true,
    notes: ['Light syrup (20 % sugar) for 7 quarts: 9 cups of water and 2 1/4 cups of sugar.'],
  }),
  plainPack({
    id: 'applesauce',
    title: 'Applesauce',
    productLetter: 'A',
    pattern: 'peach',
    source: aib1994('Guide 2, Applesauce'),
    process: { foodId: 'applesauce', pack: 'hot', method: 'boiling-water', gauge: null },
    defaultJar: 'quart',
    batch: { jar: 'quart', yield: SEVEN, produce: 'apples', producePounds: 21 },
    loadWeights: loadWeights(21, 13.5),
    prepMinutes: prepAtRate(21, 12),
    kettleMinutes: commonPractice(15, 20, 30),
    acidFood: true,
  }),
  plainPack({
    id: 'green-bean',
    alsoKnownAs: ['green_bean'],
    title: 'Snap beans',
    productLetter: 'G',
    pattern: 'bean',
    source: michiganState('Beans, snap and Italian, Guide 4:9 (item 01600883)'),
    process: { foodId: 'green-beans', pack: 'raw', method: 'pressure', gauge: null },
    defaultJar: 'pint',
    batch: { jar: 'pint', yield: NINE, produce: 'snap beans', producePounds: 9 },
    loadWeights: loadWeights(14, 9),
    prepBefore: 'fill',
    liquid: [{ item: 'boiling water to cover', amount: 2, unit: 'us-qt' }],
    prepMinutes: prepAtRate(9, 8),
    kettleMinutes: commonPractice(10, 15, 20),
    acidFood: false,
    notes: ['Raw pack: the kettle only boils the water that covers the beans, about half the jar (common practice).'],
  }),
  plainPack({
    id: 'corn',
    title: 'Corn, whole kernel',
    productLetter: 'C',
    pattern: 'bean',
    source: michiganState('Corn - whole kernel, Guide 4:12 (item 01600280)'),
    process: { foodId: 'corn-whole-kernel', pack: 'hot', method: 'pressure', gauge: null },
    defaultJar: 'pint',
    batch: { jar: 'pint', yield: NINE, produce: 'corn in husk', producePounds: 20 },
    loadWeights: loadWeights(31.5, 20),
    prepMinutes: prepAtRate(20, 15),
    kettleMinutes: commonPractice(10, 15, 20),
    acidFood: false,
  }),
]
