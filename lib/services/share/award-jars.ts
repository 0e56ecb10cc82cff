import 'server-only'
import { randomUUID } from 'node:crypto'
import { type CommandContext, defineCommand } from '@/lib/commands/command'
import { hoursOfDay } from '@/lib/queries/given-to-day'
import { type ShareInput, shareInput, TO_HAND_OVER, tablesOf } from '@/lib/queries/share-input'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { inHouseholdOrder } from '@/shared/allocation/in-household-order'
import type { ShareRule, ShareTable } from '@/shared/allocation/share-table'
import { AwardJars } from '@/shared/forms/share'
import { ok, refuse } from '@/shared/result/result'
import { dayShareRule } from '@/shared/share/day-share-rule'
import { pickJars } from '@/shared/share/pick-jars'
import { sayFloorProblem } from '@/shared/wording/floor-refusal'
import { notNow } from '@/shared/wording/refusal'
import { sayQuota, sayShareReason } from '@/shared/wording/say-share'

/**
 * Shares the sealed jars, and those that are kept cold, by the day's published rule and says which jar is whose. May be done again until the first
 * jar is handed over.
 *
 * Under the day's lock and out of the jars that are sealed at that moment, so it never gives more than there are; a household gets nothing that contains
 * what is on its list.
 */
export const awardJars = defineCommand({
  name: 'award-jars',
  summary: 'Share the jars out',
  act: 'award-jars',
  schema: AwardJars,
  async run(context, { dayId }) {
    const { tx, actor } = context
    const { groupId } = actor
    const day = await lockFloorDay(context, dayId, ['resting'])
    if (!day.ok) return day
    const gone = await tx.award.count({ where: { groupId, preparation: { dayId }, handedOverAt: { not: null } } })
    if (gone > 0) return refuse(HANDED_OVER)
    const rule = dayShareRule(day.value.shareRule, dayId)
    const products = await shareInput(tx, groupId, dayId, rule)
    const unchecked = products.filter((product) => product.unchecked > 0)
    if (unchecked.length > 0) {
      const what = unchecked.map(({ title, unchecked: jars }) => `${title}: ${jars} jars are not checked`)
      return refuse(sayFloorProblem({ kind: 'still-open', what }))
    }

    const uncounted = await uncountedHours(context, dayId, rule, products)
    if (uncounted.length > 0) return refuse(countFirst(uncounted))

    const tables = tablesOf(products, rule).map(({ table }) => table)
    await writeAwards(context, dayId, products, tables)
    const given = tables.reduce((sum, table) => sum + table.given, 0)
    const left = tables.reduce((sum, table) => sum + table.left, 0)
    const detail = {
      rule: day.value.shareRule,
      products: products.map(({ letter, sealed }, index) => ({
        ...{ letter, sealed: sealed.length, shares: sharesOf(tables[index]) },
        ...seedOf(tables[index]),
      })),
    }
    return ok({ reply: { dayId, given, left }, history: [{ subject: `shares of day ${dayId}`, detail, dayId }] })
  },
})

/** Names of those who claim, and whose hours nobody counted, where jars are shared by hours: nobody is taken to have given none. */
async function uncountedHours({ tx, actor: { groupId } }: CommandContext, dayId: string, rule: ShareRule, products: readonly ShareInput[]) {
  if (rule.kind !== 'by-contribution' || rule.of !== 'hours') return []
  const hours = await hoursOfDay(tx, groupId, dayId)
  const counted = new Set(hours.flatMap(({ householdId, minutes }) => (minutes === null ? [] : [householdId])))
  const claims = products.flatMap((product) => product.claims).filter(({ jars, householdId }) => jars > 0 && !counted.has(householdId))
  return [...new Set(inHouseholdOrder(claims).map(({ householdName }) => householdName))]
}

const countFirst = (names: readonly string[]) =>
  notNow(
    'hours-not-counted',
    'Not shared: jars are shared by hours, and not all are counted.',
    `Nobody has counted the hours of ${names.join(', ')}.`,
    'Count them on the page of the costs; 0 counts too.',
  )

/** Writes the tables in place of any earlier ones, and whose each sealed jar is: four statements, however many jars there are. */
async function writeAwards(
  { tx, actor: { groupId } }: CommandContext,
  dayId: string,
  products: readonly ShareInput[],
  tables: readonly ShareTable[],
): Promise<void> {
  await tx.award.deleteMany({ where: { groupId, preparation: { dayId } } })
  await tx.award.createMany({ data: products.flatMap(({ preparationId }, index) => awardRows(groupId, preparationId, tables[index])) })
  const owners = products.flatMap((product, index) => ownersOf(product, tables[index]))
  await tx.jar.updateMany({ where: { groupId, dayId, OR: TO_HAND_OVER }, data: { householdId: null } })
  await tx.$executeRaw`
    UPDATE jar SET household_id = owner.household
    FROM unnest(${owners.map(({ jarId }) => jarId)}::text[], ${owners.map(({ householdId }) => householdId)}::text[]) AS owner (jar, household)
    WHERE jar.group_id = ${groupId} AND jar.id = owner.jar AND jar.state IN ('sealed', 'unsealed')`
}

function awardRows(groupId: string, preparationId: string, table: ShareTable | undefined) {
  const named = (table?.shares ?? []).filter(({ asked, reason }) => asked > 0 || reason.kind === 'allergen')
  return named.map((share) => ({
    ...{ groupId, id: randomUUID(), preparationId, householdId: share.householdId, asked: share.asked, jars: share.jars },
    ...{ quota: sayQuota(share), reason: sayShareReason(share) },
  }))
}

function ownersOf(product: ShareInput, table: ShareTable | undefined): { jarId: string; householdId: string }[] {
  const picked = pickJars(
    product.sealed.map(({ id }) => id),
    table?.shares ?? [],
    new Map(product.sealed.flatMap(({ id, wishedBy }) => (wishedBy ? [[id, wishedBy] as const] : []))),
  )
  return [...picked].flatMap(([householdId, ids]) => ids.map((jarId) => ({ jarId, householdId })))
}

const sharesOf = (table: ShareTable | undefined) =>
  Object.fromEntries((table?.shares ?? []).filter(({ asked }) => asked > 0).map(({ householdName, jars }) => [householdName, jars]))

/** The seed that a product's order was drawn with, to stand in the history. */
const seedOf = (table: ShareTable | undefined) => (table?.rule.kind === 'by-lot' ? { seed: table.rule.seed } : {})

const HANDED_OVER = notNow(
  'handed-over',
  'Not shared again: jars were handed over already.',
  'What somebody has taken home is not given twice.',
  'Settle what is wrong between the households, and note it.',
)
