import 'server-only'
import { database } from '@/lib/db/client'
import type { Pledge, Purchase } from '@/lib/db/generated/client'
import { recipesOfDay } from '@/lib/stores/recipes'
import type { Actor } from '@/shared/access/actor'
import { reachOf } from '@/shared/access/policy'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { type Outlay, type Reckoning, type ReckonProblem, reckonDay } from '@/shared/reckoning/reckon-day'
import { settle, type Transfer } from '@/shared/reckoning/settle'
import { COMMON_POOL, type PooledProduct, poolProducts } from '@/shared/share/pool-products'

/** One line of the receipts and gifts, as the screen shows it. */
export interface OutlayLine extends Outlay {
  readonly id: string
  readonly householdName: string
  readonly pack: string
}

/** The money of a day as one person may see it. */
export interface ReckoningPage {
  readonly dayName: string
  readonly dayState: string
  readonly currency: string
  readonly products: readonly PooledProduct[]
  readonly households: readonly { readonly id: string; readonly name: string }[]
  readonly outlays: readonly OutlayLine[]
  readonly pools: readonly { readonly id: string; readonly productIds: readonly string[] }[]
  readonly reckoning: Reckoning | null
  readonly problem: ReckonProblem | null
  readonly transfers: readonly Transfer[]
  /** True when the whole group's money is shown, false when only the person's own household. */
  readonly isWhole: boolean
}

/** Reads receipts, gifts and jars of a day and reckons them; null when there is no such day. A fixed number of statements. */
export async function reckoningPage(actor: Actor, dayId: string): Promise<ReckoningPage | null> {
  const { groupId } = actor
  const db = database()
  const day = await db.day.findFirst({
    where: { groupId, id: dayId },
    select: { name: true, state: true, group: { select: { currency: true } } },
  })
  if (!day) return null
  const { currency } = day.group
  const [households, preparations, purchases, pledges, awards, recipes] = await Promise.all([
    db.household.findMany({ where: { groupId }, select: { id: true, name: true }, orderBy: { name: 'asc' } }),
    db.preparation.findMany({
      where: { groupId, dayId },
      select: { id: true, recipeId: true, letter: true, jarSize: true },
      orderBy: { letter: 'asc' },
    }),
    db.purchase.findMany({ where: { groupId, dayId }, orderBy: [{ pool: 'asc' }, { item: 'asc' }] }),
    db.pledge.findMany({ where: { groupId, dayId, creditMinor: { not: null } }, orderBy: [{ pool: 'asc' }, { item: 'asc' }] }),
    db.award.findMany({ where: { groupId, preparation: { dayId } }, select: { preparationId: true, householdId: true, jars: true } }),
    recipesOfDay(db, groupId, dayId),
  ])
  const products = preparations.map(({ id, recipeId, letter }) => ({
    id,
    recipeId,
    letter,
    title: recipes.of(id).title,
  }))
  const sizes = new Map(preparations.map(({ id, jarSize }) => [id, jarSize as JarSize]))
  const outlays = [...purchases.map(paidLine), ...pledges.map(givenLine)].map((line) => ({
    ...line,
    currency,
    householdName: households.find(({ id }) => id === line.partyId)?.name ?? '',
  }))
  const pools = [...new Set([COMMON_POOL, ...outlays.map(({ poolId }) => poolId)])].map((id) => ({
    id,
    productIds: poolProducts(id, products),
  }))
  const reckoned = reckonDay({
    currency,
    parties: households.map(({ id, name }) => ({ householdId: id, householdName: name })),
    pools: pools.map(({ id, productIds }) => ({ id, products: productIds, by: 'jars' })),
    outlays,
    taken: awards.map(({ householdId, preparationId, jars }) => ({
      ...{ partyId: householdId, product: preparationId, jars },
      size: sizes.get(preparationId) ?? 'pint',
    })),
  })
  const reckoning = reckoned.ok ? reckoned.value : null
  const page = { dayName: day.name, dayState: day.state, currency, products, households, outlays, pools, reckoning }
  const whole = { ...page, problem: reckoned.ok ? null : reckoned.problem, transfers: transfersOf(reckoning), isWhole: true }
  return reachOf(actor, 'see-reckoning') === 'any' ? whole : onlyOwn(whole, actor.householdId)
}

type BareLine = Omit<OutlayLine, 'currency' | 'householdName'>

const paidLine = ({ id, item, packs, pack, pool, costMinor, householdId }: Purchase): BareLine => ({
  ...{ kind: 'paid', id, item, partyId: householdId, poolId: pool, amount: costMinor },
  pack: `${Number(packs)} × ${pack}`,
})

const givenLine = ({ id, item, quantity, unit, pool, creditMinor, householdId }: Pledge): BareLine => ({
  ...{ kind: 'credited', id, item, partyId: householdId, poolId: pool, amount: Math.round(Number(quantity) * (creditMinor ?? 0)) },
  pack: `${Number(quantity)} ${unit}`,
})

function transfersOf(reckoning: Reckoning | null): readonly Transfer[] {
  if (!reckoning) return []
  const settled = settle(reckoning.parties.map(({ householdId: id, householdName: name, balance }) => ({ id, name, balance })))
  return settled.ok ? settled.value.transfers : []
}

/** What a household may see: the pools that its share comes from, its own receipts and its own line. */
function onlyOwn(page: ReckoningPage, householdId: string): ReckoningPage {
  const own = (of: { readonly partyId: string }) => of.partyId === householdId
  const { reckoning } = page
  const parties = reckoning?.parties.filter((party) => party.householdId === householdId) ?? []
  return {
    ...page,
    isWhole: false,
    outlays: page.outlays.filter(own),
    reckoning: reckoning && { ...reckoning, parties },
    transfers: page.transfers.filter(({ fromId, toId }) => fromId === householdId || toId === householdId),
  }
}
