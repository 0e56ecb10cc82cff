import 'server-only'
import { database } from '@/lib/db/client'
import type { NamedHousehold } from '@/shared/people/still-here'
import type { Pledge, Purchase, SettlementMark } from '@/lib/db/generated/client'
import { hoursOfDay } from '@/lib/queries/given-to-day'
import { namedHouseholds } from '@/lib/queries/named-households'
import { recipesOfDay } from '@/lib/stores/recipes'
import type { Actor } from '@/shared/access/actor'
import { reachOf } from '@/shared/access/policy'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { type Outlay, type Reckoning, type ReckonProblem, reckonDay } from '@/shared/reckoning/reckon-day'
import { creditedQuantities } from '@/shared/reckoning/credited-gifts'
import { creditForHours, FUND, type LabourRule, surchargePercent } from '@/shared/reckoning/labour-rule'
import { afterPayments, type Payment, type PaymentMark, paymentsOf } from '@/shared/reckoning/payments'
import { settle, type Transfer } from '@/shared/reckoning/settle'
import { isoDate } from '@/shared/time/calendar-date'
import type { CountedHours } from '@/shared/share/given-to-day'
import { COMMON_POOL, type PooledProduct, poolProducts } from '@/shared/share/pool-products'

/** One line of the receipts and gifts, as the screen shows it. */
export interface OutlayLine extends Outlay {
  readonly id: string
  readonly householdName: string
  readonly pack: string
}

/** Equipment whose price is spread over its life, and what this day carries of it. */
export interface DayEquipment {
  readonly id: string
  readonly name: string
  readonly priceMinor: number
  readonly years: number
  readonly daysAYear: number
  readonly householdId: string
  readonly charge: number | null
}

/** The money of a day as one person may see it. */
export interface ReckoningPage {
  readonly dayName: string
  readonly dayState: string
  readonly currency: string
  readonly products: readonly PooledProduct[]
  readonly households: readonly NamedHousehold[]
  readonly outlays: readonly OutlayLine[]
  readonly pools: readonly { readonly id: string; readonly productIds: readonly string[] }[]
  readonly reckoning: Reckoning | null
  readonly problem: ReckonProblem | null
  readonly transfers: readonly Transfer[]
  /** Whether fewer payments are proved to be impossible. */
  readonly isFewest: boolean
  readonly date: string
  readonly sizes: Readonly<Record<string, JarSize>>
  readonly rule: LabourRule
  /** Whether the jars of the day are shared by hours, so that they must be counted. */
  readonly sharesByHours: boolean
  readonly hours: readonly CountedHours[]
  readonly payments: readonly Payment[]
  readonly equipment: readonly DayEquipment[]
  /** True when the whole group's money is shown, false when only the person's own household. */
  readonly isWhole: boolean
}

/** Reads receipts, gifts and jars of a day and reckons them; null when there is no such day. A fixed number of statements. */
export async function reckoningPage(actor: Actor, dayId: string): Promise<ReckoningPage | null> {
  const { groupId } = actor
  const db = database()
  const day = await db.day.findFirst({
    where: { groupId, id: dayId },
    select: {
      ...{
        name: true,
        date: true,
        state: true,
        shareRule: true,
        labourRule: true,
        labourMinutes: true,
        labourPercent: true,
        labourRateMinor: true,
      },
      group: { select: { currency: true } },
    },
  })
  if (!day) return null
  const { currency } = day.group
  const [households, preparations, purchases, pledges, came, awards, recipes, hours, equipment, marks] = await Promise.all([
    namedHouseholds(groupId),
    db.preparation.findMany({
      where: { groupId, dayId },
      select: { id: true, recipeId: true, letter: true, jarSize: true },
      orderBy: { letter: 'asc' },
    }),
    db.purchase.findMany({ where: { groupId, dayId }, orderBy: [{ pool: 'asc' }, { item: 'asc' }] }),
    db.pledge.findMany({
      where: { groupId, dayId, OR: [{ creditMinor: { not: null } }, { kind: 'produce' }] },
      orderBy: [{ pool: 'asc' }, { item: 'asc' }, { id: 'asc' }],
    }),
    db.ingredientLot.findMany({
      where: { groupId, dayId, householdId: { not: null } },
      orderBy: { code: 'asc' },
      select: { householdId: true, item: true, quantity: true, unit: true },
    }),
    db.award.findMany({
      where: { groupId, preparation: { dayId } },
      select: { preparationId: true, householdId: true, jars: true, asked: true },
    }),
    recipesOfDay(db, groupId, dayId),
    hoursOfDay(db, groupId, dayId),
    db.equipmentItem.findMany({
      where: { groupId },
      orderBy: { name: 'asc' },
      select: {
        ...{ id: true, name: true, priceMinor: true, years: true, daysAYear: true, householdId: true },
        charges: { where: { dayId }, select: { chargeMinor: true, pool: true } },
      },
    }),
    db.settlementMark.findMany({ where: { groupId, dayId }, orderBy: [{ markedAt: 'asc' }, { id: 'asc' }] }),
  ])
  const rule = ruleOf(day)
  const products = preparations.map(({ id, recipeId, letter }) => ({
    id,
    recipeId,
    letter,
    title: recipes.of(id).title,
  }))
  const sizes = new Map(preparations.map(({ id, jarSize }) => [id, jarSize as JarSize]))
  const outlays = [
    ...purchases.map(paidLine),
    ...pledges.filter(isCredited).map(givenLine(creditedOf(pledges, came, OVER.includes(day.state)))),
    ...equipment.flatMap(chargeLine),
    ...hours.flatMap(hoursLine(rule)),
  ].map((line) => ({
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
    parties: [
      ...households.map(({ id, name }) => ({ householdId: id, householdName: name, surchargePercent: surchargeOf(rule, hours, id) })),
      ...(rule.kind === 'surcharge' ? [{ householdId: FUND.id, householdName: FUND.name }] : []),
    ],
    ...(rule.kind === 'surcharge' ? { fundId: FUND.id } : {}),
    pools: pools.map(({ id, productIds }) => ({ id, products: productIds, by: 'jars' })),
    outlays,
    taken: awards.map(({ householdId, preparationId, jars, asked }) => ({
      ...{ partyId: householdId, product: preparationId, jars, asked },
      size: sizes.get(preparationId) ?? 'pint',
    })),
  })
  const reckoning = reckoned.ok ? reckoned.value : null
  const payments = paymentsOf(marks.map(markOf))
  const page = {
    ...{ dayName: day.name, date: isoDate(day.date), dayState: day.state, currency, products, households, outlays, pools, reckoning },
    ...{ rule, sharesByHours: day.shareRule === 'by-hours', hours, payments, sizes: Object.fromEntries(sizes) },
    equipment: equipment.map(({ charges, ...item }) => ({ ...item, charge: charges[0]?.chargeMinor ?? null })),
  }
  const { transfers, isFewest } = transfersOf(reckoning, payments)
  const whole = { ...page, problem: reckoned.ok ? null : reckoned.problem, transfers, isFewest, isWhole: true }
  return reachOf(actor, 'see-reckoning') === 'any' ? whole : onlyOwn(whole, actor.householdId)
}

interface RuleColumns {
  readonly labourRule: string
  readonly labourMinutes: number
  readonly labourPercent: number
  readonly labourRateMinor: number
}

function ruleOf({ labourRule, labourMinutes, labourPercent, labourRateMinor }: RuleColumns): LabourRule {
  if (labourRule === 'surcharge') return { kind: 'surcharge', leastMinutes: labourMinutes, percent: labourPercent }
  return labourRule === 'credit' ? { kind: 'credit', rate: labourRateMinor } : { kind: 'none' }
}

const surchargeOf = (rule: LabourRule, hours: readonly CountedHours[], id: string) =>
  surchargePercent(rule, hours.find(({ householdId }) => householdId === id)?.minutes ?? 0)

type BareLine = Omit<OutlayLine, 'currency' | 'householdName'>

const paidLine = ({ id, item, packs, pack, pool, costMinor, householdId }: Purchase): BareLine => ({
  ...{ kind: 'paid', id, item, partyId: householdId, poolId: pool, amount: costMinor },
  pack: `${Number(packs)} × ${pack}`,
})

/** From then on nothing more comes in. */
const OVER = ['resting', 'closed', 'cancelled']

const isCredited = ({ creditMinor }: Pledge) => creditMinor !== null

/** Produce is credited by what came; anything else as it was promised. What came beyond a promise with a credit fills one that was given for nothing. */
const creditedOf = (
  pledges: readonly Pledge[],
  came: readonly { householdId: string | null; item: string; quantity: unknown; unit: string }[],
  isOver: boolean,
) =>
  creditedQuantities(
    [...pledges.filter(isCredited), ...pledges.filter((pledge) => !isCredited(pledge))]
      .filter(({ kind }) => kind === 'produce')
      .map((pledge) => ({ ...pledge, quantity: Number(pledge.quantity) })),
    came.map((lot) => ({ ...lot, quantity: Number(lot.quantity) })),
    isOver,
  )

const givenLine =
  (credited: ReadonlyMap<string, number>) =>
  ({ id, item, quantity, unit, pool, creditMinor, householdId }: Pledge): BareLine => {
    const promised = Number(quantity)
    const given = credited.get(id) ?? promised
    return {
      ...{ kind: 'credited', id, item, partyId: householdId, poolId: pool, amount: Math.round(given * (creditMinor ?? 0)) },
      pack: given === promised ? `${given} ${unit}` : `${given} ${unit} came, ${promised} ${unit} promised`,
    }
  }

interface ChargedItem {
  readonly id: string
  readonly name: string
  readonly years: number
  readonly daysAYear: number
  readonly householdId: string
  readonly charges: readonly { readonly chargeMinor: number; readonly pool: string }[]
}

const chargeLine = ({ id, name, years, daysAYear, householdId, charges }: ChargedItem): BareLine[] =>
  charges.map(({ chargeMinor, pool }) => ({
    ...{ kind: 'credited', id, item: name, partyId: householdId, poolId: pool, amount: chargeMinor },
    pack: `one day of ${years * daysAYear}`,
  }))

const hoursLine =
  (rule: LabourRule) =>
  ({ householdId, minutes }: CountedHours): BareLine[] => {
    const amount = creditForHours(rule, minutes ?? 0)
    const line = { kind: 'credited', id: `hours-${householdId}`, item: 'hours of work', partyId: householdId, poolId: COMMON_POOL } as const
    return amount > 0 ? [{ ...line, amount, pack: `${(minutes ?? 0) / 60} h` }] : []
  }

const markOf = ({ id, fromPartyId, toPartyId, amountMinor, side, by, note, markedAt, undoes }: SettlementMark): PaymentMark => ({
  ...{ id, fromId: fromPartyId, toId: toPartyId, amount: amountMinor, side: side as PaymentMark['side'], by, note, undoes },
  at: markedAt.toISOString(),
})

/** What is still to be paid, once the payments that were received are counted. */
function transfersOf(reckoning: Reckoning | null, payments: readonly Payment[]): { transfers: readonly Transfer[]; isFewest: boolean } {
  if (!reckoning) return { transfers: [], isFewest: true }
  const balances = reckoning.parties.map(({ householdId: id, householdName: name, balance }) => ({ id, name, balance }))
  const settled = settle(afterPayments(balances, payments))
  return settled.ok ? settled.value : { transfers: [], isFewest: true }
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
    hours: page.hours.filter((each) => each.householdId === householdId),
    payments: page.payments.filter(({ fromId, toId }) => fromId === householdId || toId === householdId),
    equipment: page.equipment.filter((each) => each.householdId === householdId),
    reckoning: reckoning && { ...reckoning, parties },
    transfers: page.transfers.filter(({ fromId, toId }) => fromId === householdId || toId === householdId),
  }
}
