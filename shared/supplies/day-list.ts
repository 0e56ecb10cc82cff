import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Method } from '@/shared/kitchen/methods'
import type { DayState } from '@/shared/lifecycle/day-states'
import type { NamedHousehold } from '@/shared/people/still-here'
import type { Minor } from '@/shared/reckoning/money'
import { COMMON_POOL } from '@/shared/share/pool-products'
import { acidNeeds, citricNotCounted, citricTeaspoons } from './acid-needs'
import { choosePacks, type PackPlan } from './choose-packs'
import { containerName, type ContainerLot, containersToBuy } from './containers-to-buy'
import { isSameProduce, ingredientKey } from './ingredient-words'
import { type Measured, type ProductToMake, recipeNeeds } from './recipe-needs'
import { type Had, type ItemPack, shoppingList } from './shopping-list'
import { BOX_OF } from './supplies-needed'
import { convert } from '@/shared/units/convert'
import { sayKitchenAmount } from '@/shared/units/say-kitchen-amount'
import { sayAcidOfJars } from '@/shared/wording/say-acid-of-jars'
import { sayQuantity } from '@/shared/wording/say-quantity'
import { readUnit } from '@/shared/units/read-unit'
import type { UnitId } from '@/shared/units/units'

/** A tick of the list: a receipt of the day. */
export interface BoughtRow {
  readonly id: string
  readonly item: string
  readonly packs: number
  readonly pack: string
  readonly costMinor: Minor
  readonly covers: Measured | null
  readonly householdId: string
}

/** Something left over, and who has it. */
export interface PantryRow extends Measured {
  readonly id: string
  readonly item: string
  readonly note: string
  readonly fromDayId: string | null
  readonly household: string | null
}

/** What the store says of a day's shopping. */
export interface ShoppingRows {
  readonly day: {
    readonly name: string
    readonly date: string
    readonly state: DayState
    readonly currency: string
    readonly sparePercent: number
  }
  readonly products: readonly (ProductToMake & {
    readonly method: Method
    readonly recipeId: string
    readonly notes: readonly string[]
    readonly isKeyOnly: boolean
  })[]
  readonly isPlanned: boolean
  readonly promises: readonly { readonly item: string; readonly quantity: number; readonly unit: string; readonly from: string }[]
  readonly lots: readonly {
    readonly item: string
    readonly quantity: number
    readonly unit: string
    readonly from: string
    readonly isGift: boolean
  }[]
  readonly promisedJars: Readonly<Partial<Record<JarSize, number>>>
  readonly pantry: readonly PantryRow[]
  readonly packs: readonly ItemPack[]
  readonly errands: readonly { readonly item: string; readonly householdId: string | null; readonly run: string; readonly pool: string }[]
  readonly bought: readonly BoughtRow[]
  /** Receipts that nobody has counted for a line of the list. */
  readonly untold: readonly BoughtRow[]
  readonly stock: readonly ContainerLot[]
  readonly households: readonly NamedHousehold[]
}

/** One thing to buy, as the page shows it. Amounts are in `unit`. */
export interface ShoppingItem {
  readonly key: string
  readonly sort: 'ingredient' | 'container'
  readonly unit: UnitId
  readonly products: readonly string[]
  readonly needed: number
  /** Culls of produce, or spare lids: what of the need is on top. */
  readonly onTop: number
  readonly inStock: number
  readonly given: number
  readonly boughtAmount: number
  readonly missing: number
  readonly over: number
  readonly isOptional: boolean
  readonly leftOut: number
  readonly plan: PackPlan
  readonly packs: readonly ItemPack[]
  readonly notCounted: readonly string[]
  /** What is printed of it beyond the amount, such as acid for every jar, with its source. */
  readonly printed: readonly string[]
  readonly buyer: { readonly id: string; readonly name: string } | null
  readonly run: string
  readonly pool: string
  readonly bought: readonly BoughtRow[]
  /** Receipts that may be for this line: they carry its name. */
  readonly maybe: readonly BoughtRow[]
}

/** The list of a day with everything that its page, its print and its file show. */
export interface ShoppingPage {
  readonly day: ShoppingRows['day']
  readonly isPlanned: boolean
  readonly items: readonly ShoppingItem[]
  /** What the packs still to buy come to; null when a price is not known. */
  readonly price: Minor | null
  readonly spent: Minor
  readonly notes: readonly { readonly title: string; readonly notes: readonly string[]; readonly isKeyOnly: boolean }[]
  readonly pantry: readonly PantryRow[]
  readonly households: ShoppingRows['households']
  readonly pools: readonly { readonly value: string; readonly label: string }[]
}

/** Works the list out of the rows. */
export function writeList(rows: ShoppingRows): ShoppingPage {
  const { day, products, packs } = rows
  const had = hadOf(rows)
  const inRecipes = recipeNeeds(products)
  const needs = [...inRecipes, ...acidNeeds(products, Math.max(0, citricTeaspoons(had) - citricTeaspoons(inRecipes)))]
  const lines = shoppingList(needs, had, packs)
  const ingredients = lines.map(
    (line): Bare => ({
      ...line,
      ...{ sort: 'ingredient', onTop: line.culls, boughtAmount: line.bought, leftOut: 0 },
      packs: packs.filter(({ item }) => ingredientKey(item) === line.key.replace(/, by (?:volume|weight|count)$/, '')),
      notCounted: [...line.notCounted, ...(line.acids.length > 0 ? citricNotCounted(had) : [])].map(sayHad),
      printed: line.acids.map(sayAcidOfJars),
      pool: poolOf(products, line.products),
    }),
  )
  const items = [...ingredients, ...containerLines(rows)].map((line) => withErrand(line, rows))
  const open = items.filter(({ missing, isOptional }) => missing > 0 && !isOptional)
  return {
    ...{ day, isPlanned: rows.isPlanned, items, pantry: rows.pantry, households: rows.households },
    price: open.reduce<Minor | null>((sum, { plan: { choice } }) => addKnown(sum, choice?.price ?? null), 0),
    spent: rows.bought.reduce((sum, { costMinor }) => sum + costMinor, 0),
    notes: products.map(({ title, notes, isKeyOnly }) => ({ title, notes, isKeyOnly })),
    pools: [
      { value: COMMON_POOL, label: 'every jar of the day' },
      ...products.map(({ recipeId, title }) => ({ value: recipeId, label: `jars of ${title.toLowerCase()}` })),
    ],
  }
}

const sayHad = ({ said, amount, unit, item, from }: Had) => `${said ?? sayKitchenAmount(amount, unit)} of ${item} from ${from}`

type Bare = Omit<ShoppingItem, 'buyer' | 'run' | 'bought' | 'maybe'>

const addKnown = (sum: Minor | null, price: Minor | null) => (sum === null || price === null ? null : sum + price)

/** A cost that one product alone causes is carried by its jars. */
function poolOf(products: ShoppingRows['products'], titles: readonly string[]): string {
  const using = products.filter(({ title }) => titles.includes(title))
  const [only] = using
  return only && new Set(using.map(({ recipeId }) => recipeId)).size === 1 ? only.recipeId : COMMON_POOL
}

/**
 * What is there: stock, gifts, and what was bought. A gift that came in counts by its own weight and no longer as a promise; what came in from a shop counts
 * where nobody ticked the line.
 */
function hadOf({ pantry, promises, lots, bought }: ShoppingRows): Had[] {
  const measured = (quantity: number, typed: string): Measured & { said?: string } => {
    const unit = readUnit(typed)
    return unit ? { amount: quantity, unit } : { amount: quantity, unit: 'each', said: sayQuantity(quantity, typed) }
  }
  const isSameGift = (promise: { item: string; from: string }, lot: { item: string; from: string }) =>
    promise.from === lot.from && (ingredientKey(promise.item) === ingredientKey(lot.item) || isSameProduce(promise.item, lot.item))
  const gifts = lots.filter(({ isGift }) => isGift)
  const due = promises.filter((promise) => !gifts.some((lot) => isSameGift(promise, lot)))
  const ticked = bought.flatMap(({ item, covers }) => (covers ? [{ kind: 'bought' as const, item, from: 'the shop', ...covers }] : []))
  const untold = lots.filter(({ isGift, item }) => !isGift && !bought.some((row) => isSameProduce(item, row.item)))
  return [
    ...pantry.map(({ item, amount, unit, household }) => ({ kind: 'stock' as const, item, amount, unit, from: household ?? 'the group' })),
    ...[...gifts, ...due].map(({ item, quantity, unit, from }) => ({ kind: 'gift' as const, item, from, ...measured(quantity, unit) })),
    ...untold.map(({ item, quantity, unit, from }) => ({ kind: 'bought' as const, item, from, ...measured(quantity, unit) })),
    ...ticked,
  ]
}

/** Jars, lids and bands as lines: bought by the box, twelve to a box where nobody has said otherwise. */
function containerLines({ products, stock, day, promisedJars, packs, bought }: ShoppingRows): Bare[] {
  const planned = products.map(({ jarSize, jars, method }) => ({ size: jarSize, jars, method }))
  const needs = containersToBuy(planned, stock, { date: day.date, sparePercent: day.sparePercent, promised: promisedJars })
  return needs.map((need) => {
    const key = containerName(need)
    const own = packs.filter(({ item }) => item === key)
    const box: ItemPack = { id: '', item: key, label: `box of ${BOX_OF}`, holds: BOX_OF, unit: 'each', price: null, isShort: false }
    const ticked = bought.filter(({ item }) => item === key).reduce((sum, { covers }) => sum + inPieces(covers), 0)
    const missing = Math.max(0, need.missing - ticked)
    return {
      ...{ key, sort: 'container', unit: 'each', products: [], needed: need.withSpare, onTop: need.withSpare - need.planned },
      ...{ inStock: need.usable - need.promised, given: need.promised, boughtAmount: ticked, missing },
      ...{ over: Math.max(0, need.usable + ticked - need.withSpare), isOptional: false, leftOut: need.leftOut },
      plan: choosePacks(missing, 'each', own.length > 0 ? own : [box]),
      ...{ packs: own, notCounted: [], printed: [], pool: COMMON_POOL },
    }
  })
}

function inPieces(covers: Measured | null): number {
  const pieces = covers && convert(covers.amount, covers.unit, 'each')
  return pieces?.ok ? Math.round(pieces.value) : 0
}

function withErrand(line: Bare, { errands, households, bought, untold }: ShoppingRows): ShoppingItem {
  const errand = errands.find(({ item }) => item === line.key)
  return {
    ...line,
    buyer: households.find(({ id }) => id === errand?.householdId) ?? null,
    run: errand?.run ?? '',
    pool: errand?.pool ?? line.pool,
    bought: bought.filter(({ item }) => item === line.key),
    maybe: line.missing > 0 ? untold.filter(({ item }) => isSameProduce(item, line.key)) : [],
  }
}
