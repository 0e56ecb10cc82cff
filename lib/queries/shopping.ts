import 'server-only'
import { database } from '@/lib/db/client'
import { namedHouseholds } from '@/lib/queries/named-households'
import { recipesOfDay } from '@/lib/stores/recipes'
import type { Actor } from '@/shared/access/actor'
import { productName } from '@/shared/day/product-name'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import type { Method } from '@/shared/kitchen/methods'
import type { DayState } from '@/shared/lifecycle/day-states'
import { acidOfRow } from '@/shared/process/acid-of-row'
import type { Recipe } from '@/shared/recipes/recipe'
import { yieldInJars } from '@/shared/recipes/yield-in-jars'
import { readPromisedJars } from '@/shared/supplies/promised-jars'
import type { ProductToMake } from '@/shared/supplies/recipe-needs'
import type { ItemPack } from '@/shared/supplies/shopping-list'
import { isoDate } from '@/shared/time/calendar-date'
import type { UnitId } from '@/shared/units/units'
import { type BoughtRow, type ShoppingPage, type ShoppingRows, writeList } from '@/shared/supplies/day-list'

/** The shopping list of a day; null when the group has no such day. A fixed number of statements. */
export async function shoppingPage({ groupId }: Actor, dayId: string): Promise<ShoppingPage | null> {
  const db = database()
  const where = { groupId, dayId }
  const day = await db.day.findUnique({
    where: { groupId_id: { groupId, id: dayId } },
    select: { name: true, date: true, state: true, sparePercent: true, group: { select: { currency: true } } },
  })
  if (!day) return null
  const [recipes, preparations, batches, pledges, lots, pantry, packs, errands, purchases, stock, households] = await Promise.all([
    recipesOfDay(db, groupId, dayId),
    db.preparation.findMany({
      where,
      orderBy: { letter: 'asc' },
      select: { id: true, recipeId: true, jarSize: true, method: true, processRowKey: true, claimed: true, spareJars: true },
    }),
    db.kettleBatch.groupBy({
      by: ['preparationId'],
      where: { ...where, state: { not: 'abandoned' } },
      _count: true,
      _sum: { plannedJars: true },
    }),
    db.pledge.findMany({
      where: { ...where, kind: { in: ['produce', 'jars'] } },
      select: { kind: true, item: true, quantity: true, unit: true, household: { select: { name: true } } },
    }),
    db.ingredientLot.findMany({
      where,
      select: { item: true, quantity: true, unit: true, source: true, household: { select: { name: true } } },
    }),
    db.pantryLot.findMany({
      where: { groupId },
      orderBy: [{ item: 'asc' }, { id: 'asc' }],
      select: { id: true, item: true, amount: true, unit: true, note: true, fromDayId: true, household: { select: { name: true } } },
    }),
    db.shoppingPack.findMany({ where: { groupId }, orderBy: [{ item: 'asc' }, { label: 'asc' }] }),
    db.shoppingLine.findMany({ where, select: { item: true, householdId: true, run: true, pool: true } }),
    db.purchase.findMany({
      where,
      orderBy: { id: 'asc' },
      select: {
        ...{
          id: true,
          item: true,
          shoppingItem: true,
          packs: true,
          pack: true,
          costMinor: true,
          covers: true,
          coversUnit: true,
          householdId: true,
        },
      },
    }),
    db.supplyLot.findMany({
      where: { groupId, count: { gt: 0 } },
      select: { kind: true, jarSize: true, mouth: true, count: true, chipped: true, isShopJar: true, boughtOn: true },
    }),
    namedHouseholds(groupId),
  ])
  const rows: ShoppingRows = {
    day: {
      ...{ name: day.name, date: isoDate(day.date), state: day.state as DayState, currency: day.group.currency },
      sparePercent: day.sparePercent,
    },
    products: preparations.flatMap((preparation) =>
      productOf(
        preparation,
        recipes.of(preparation.id),
        batches.find((each) => each.preparationId === preparation.id),
      ),
    ),
    isPlanned: batches.length > 0,
    promises: pledges
      .filter(({ kind }) => kind === 'produce')
      .map(({ quantity, household, ...pledge }) => ({
        ...{ item: pledge.item, quantity: Number(quantity), unit: pledge.unit, from: household.name },
      })),
    lots: lots.map(({ quantity, household, source, item, unit }) => ({
      ...{ item, unit, quantity: Number(quantity), from: household?.name ?? source, isGift: household !== null },
    })),
    promisedJars: readPromisedJars(
      pledges.filter(({ kind }) => kind === 'jars').map(({ item, quantity }) => ({ item, quantity: Number(quantity) })),
    ),
    pantry: pantry.map(({ amount, unit, household, ...lot }) => ({
      ...{ ...lot, amount: Number(amount), unit: unit as UnitId, household: household?.name ?? null },
    })),
    packs: packs.map(
      ({ id, item, label, holds, unit, priceMinor, isShort }): ItemPack => ({
        ...{ id, item, label, holds: Number(holds), unit: unit as UnitId, price: priceMinor, isShort },
      }),
    ),
    errands,
    bought: purchases.flatMap((row) => (row.shoppingItem === null ? [] : [boughtRow(row, row.shoppingItem)])),
    untold: purchases.flatMap((row) => (row.shoppingItem === null ? [boughtRow(row, row.item)] : [])),
    stock: stock.map(({ boughtOn, ...lot }) => ({ ...lot, boughtOn: boughtOn && isoDate(boughtOn) })),
    households,
  }
  return writeList(rows)
}

interface PurchaseRow {
  readonly id: string
  readonly packs: unknown
  readonly pack: string
  readonly costMinor: number
  readonly covers: unknown
  readonly coversUnit: string | null
  readonly householdId: string
}

const boughtRow = ({ id, packs, pack, costMinor, covers, coversUnit, householdId }: PurchaseRow, item: string): BoughtRow => ({
  ...{ id, item, packs: Number(packs), pack, costMinor, householdId },
  covers: covers === null ? null : { amount: Number(covers), unit: coversUnit as UnitId },
})

interface PreparationRow {
  readonly id: string
  readonly recipeId: string
  readonly jarSize: string
  readonly method: string | null
  readonly processRowKey: string | null
  readonly claimed: number
  readonly spareJars: number
}

/** What is planned, or what the claims come to in whole batches while nothing is. */
function productOf(
  { recipeId, jarSize, method, processRowKey, claimed, spareJars }: PreparationRow,
  recipe: Recipe,
  planned: { readonly _count: number; readonly _sum: { readonly plannedJars: number | null } } | undefined,
): (ProductToMake & {
  readonly method: Method
  readonly recipeId: string
  readonly notes: readonly string[]
  readonly isKeyOnly: boolean
})[] {
  const size = jarSize as JarSize
  const typical = Math.max(1, yieldInJars(recipe, size).typical)
  const wanted = claimed + spareJars
  const batches = planned?._count ?? Math.ceil(wanted / typical)
  const jars = planned?._sum.plannedJars ?? (recipe.scaling === 'to-kettle-volume' ? wanted : batches * typical)
  const facts = {
    recipeId,
    notes: recipe.notes,
    acid: processRowKey === null ? null : acidOfRow(processRowKey),
    isKeyOnly: recipe.ingredientList === 'key-only', // What goes to the fridge or the freezer is under no pressure.
    method: (method ?? 'boiling-water') as Method,
  }
  return [{ title: productName(recipe.title), recipe, jarSize: size, batches, jars, ...facts }]
}
