import { convert } from '@/shared/units/convert'
import { type Dimension, UNITS, type UnitId } from '@/shared/units/units'
import type { AcidOfJars } from './acid-needs'
import { choosePacks, type Pack, type PackPlan } from './choose-packs'
import { ingredientKey, isSameProduce } from './ingredient-words'
import type { Measured, RecipeNeed } from './recipe-needs'

/**
 * Raw produce to buy beyond what the recipes weigh, in percent: culls are 5 to 15 %.
 *
 * Common practice; the middle of the range.
 */
export const CULL_PERCENT = 10

/** Something of an ingredient that is there or will be: in somebody's pantry, promised or brought as a gift, or bought already. */
export interface Had extends Measured {
  readonly kind: 'stock' | 'gift' | 'bought'
  readonly item: string
  /** Whose, or from where. */
  readonly from: string
  /** As it was typed, where that names no unit of ours: "2 crates". It is shown and not counted. */
  readonly said?: string
}

/** A way in which one item is sold. */
export interface ItemPack extends Pack {
  readonly item: string
}

/** One line of the list. Amounts are in `unit`. */
export interface ListLine {
  /** The item's name, and how it is measured where two recipes measure it differently. Unique in the list. */
  readonly key: string
  readonly unit: UnitId
  readonly products: readonly string[]
  /** With culls on top, where it is produce. */
  readonly needed: number
  readonly culls: number
  readonly inStock: number
  readonly given: number
  readonly bought: number
  /** Still to buy, 0 or more. */
  readonly missing: number
  /** What is there beyond the need once everything on the way has come, packs not bought yet aside. */
  readonly over: number
  readonly isOptional: boolean
  /** What of the need is acid for jars. */
  readonly acids: readonly AcidOfJars[]
  readonly plan: PackPlan
  /** What is there and cannot be told in this line's unit: bushels for pounds. */
  readonly notCounted: readonly Had[]
}

/**
 * From what recipes take to what somebody buys: one line an ingredient over all recipes, less what is in stock and what is given, in whole packs.
 *
 * A volume and a weight of the same thing stay two lines, because one becomes the other only by a density nobody measured. Units are told apart by
 * their ids (a US cup from an imperial and a metric one) and added exactly.
 *
 * @param packs - matched by `ingredientKey`
 */
export function shoppingList(
  needs: readonly RecipeNeed[],
  had: readonly Had[],
  packs: readonly ItemPack[],
  cullPercent = CULL_PERCENT,
): ListLine[] {
  const groups = new Map<string, RecipeNeed[]>()
  for (const need of needs) {
    const id = `${need.item}\n${UNITS[need.unit].dimension}`
    groups.set(id, [...(groups.get(id) ?? []), need])
  }
  const items = [...groups.values()].map(([first]) => first?.item ?? '')
  return [...groups.values()]
    .map((group) => {
      const item = group[0]?.item ?? ''
      const isMeasuredTwice = items.filter((each) => each === item).length > 1
      return lineOf(group, isMeasuredTwice, had, packs, cullPercent)
    })
    .sort((a, b) => (a.key < b.key ? -1 : 1))
}

const BY: Readonly<Record<Dimension, string>> = {
  volume: 'by volume',
  mass: 'by weight',
  count: 'by count',
  length: 'by length',
  pressure: 'by pressure',
}

function lineOf(
  group: readonly RecipeNeed[],
  isMeasuredTwice: boolean,
  had: readonly Had[],
  packs: readonly ItemPack[],
  cullPercent: number,
): ListLine {
  const [first] = group
  if (!first) throw new Error('A line without a need')
  const unit = largest(group.map((need) => need.unit))
  const inUnit = (measured: Measured) => amountIn(measured, unit)
  const plain = group.reduce((sum, need) => sum + (inUnit(need) ?? 0), 0)
  const culls = group.some(({ isProduce }) => isProduce) ? (plain * cullPercent) / 100 : 0
  const needed = tidy(plain + culls)

  const isProduce = group.some((need) => need.isProduce)
  const own = had.filter((each) => isOf(each, first.item, isProduce))
  const sum = (kind: Had['kind']) =>
    tidy(own.filter((each) => each.kind === kind && each.said === undefined).reduce((total, each) => total + (inUnit(each) ?? 0), 0))
  const [inStock, given, bought] = [sum('stock'), sum('gift'), sum('bought')]
  const balance = tidy(needed - inStock - given - bought)
  const missing = Math.max(0, balance)
  return {
    key: isMeasuredTwice ? `${first.item}, ${BY[UNITS[unit].dimension]}` : first.item,
    unit,
    products: [...new Set(group.map(({ product }) => product))],
    ...{ needed, culls: tidy(culls), inStock, given, bought, missing, over: Math.max(0, -balance) },
    isOptional: group.every((need) => need.isOptional),
    acids: group.flatMap(({ acid }) => acid ?? []),
    plan: choosePacks(
      missing,
      unit,
      packs.filter((pack) => ingredientKey(pack.item) === first.item),
    ),
    notCounted: own.filter((each) => each.said !== undefined || inUnit(each) === null),
  }
}

/** A gift may be named by the crop alone; what is in stock or was bought for the list carries the list's own name. */
const isOf = (had: Had, item: string, isProduce: boolean) =>
  ingredientKey(had.item) === item || (isProduce && had.kind !== 'stock' && isSameProduce(had.item, item))

function amountIn({ amount, unit }: Measured, wanted: UnitId): number | null {
  const converted = convert(amount, unit, wanted)
  return converted.ok ? converted.value : null
}

/** The largest unit that a recipe uses, so that tablespoons of sugar join cups of it. */
function largest(units: readonly UnitId[]): UnitId {
  const size = (unit: UnitId) => Number(UNITS[unit].factor[0]) / Number(UNITS[unit].factor[1])
  return units.reduce((best, unit) => (size(unit) > size(best) ? unit : best))
}

const tidy = (amount: number) => Math.round(amount * 10_000) / 10_000
