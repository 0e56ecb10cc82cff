import 'server-only'
import { database } from '@/lib/db/client'
import type { Tx } from '@/lib/db/in-transaction'
import { recipesOfDay } from '@/lib/stores/recipes'
import type { ShareRule } from '@/shared/allocation/share-table'
import type { PromisedProduce, WeighedProduce } from '@/shared/day/produce-of-day'
import { type CountedHours, minutesGiven, produceGiven } from '@/shared/share/given-to-day'

/**
 * What each household gives to a day, as far as its rule shares by it: minutes, or hundredths of a pound of produce; nothing under any other rule. At most
 * three statements.
 *
 * @param isOver - whether the kettles are done, so that a promise of produce counts no longer
 */
export async function givenToDay(tx: Tx, groupId: string, dayId: string, rule: ShareRule, isOver: boolean): Promise<Map<string, number>> {
  if (rule.kind !== 'by-contribution') return new Map()
  if (rule.of === 'hours') return minutesGiven(await hoursOfDay(tx, groupId, dayId))
  const { promised, weighed } = await produceLines(tx, groupId, dayId)
  const preparations = await tx.preparation.findMany({ where: { groupId, dayId }, select: { id: true } })
  const recipes = await recipesOfDay(tx, groupId, dayId)
  return produceGiven(
    preparations.map(({ id }) => recipes.of(id)),
    isOver ? [] : promised,
    weighed,
  )
}

/** The same for a page before the kettles are done: what was promised counts where nothing was counted or weighed yet. */
export const givenSoFar = (groupId: string, dayId: string, rule: ShareRule): Promise<Map<string, number>> =>
  givenToDay(database(), groupId, dayId, rule, false)

/** Hours of a day, counted and promised: of the households of the group, and of one that left and had a part in the day. */
export const hoursOfDay = (tx: Tx, groupId: string, dayId: string): Promise<CountedHours[]> => tx.$queryRaw<CountedHours[]>`
    SELECT h.id AS "householdId", w.minutes,
      coalesce((SELECT sum(p.quantity) FROM pledge p WHERE p.group_id = h.group_id AND p.day_id = ${dayId} AND p.household_id = h.id AND p.kind = 'hours'),
        0)::float8 * 60 AS "promisedMinutes"
    FROM household h LEFT JOIN hours_worked w ON w.group_id = h.group_id AND w.household_id = h.id AND w.day_id = ${dayId}
    WHERE h.group_id = ${groupId} AND (h.left_at IS NULL OR w.minutes IS NOT NULL
      OR EXISTS (SELECT FROM pledge p WHERE p.group_id = h.group_id AND p.day_id = ${dayId} AND p.household_id = h.id AND p.kind = 'hours')
      OR EXISTS (SELECT FROM award a JOIN preparation r ON r.group_id = a.group_id AND r.id = a.preparation_id
        WHERE a.group_id = h.group_id AND r.day_id = ${dayId} AND a.household_id = h.id))
    ORDER BY h.name`

interface ProduceRow {
  readonly kind: 'promised' | 'weighed'
  readonly item: string
  readonly quantity: unknown
  readonly unit: string
  readonly householdId: string | null
  readonly culled: unknown
}

/** What was promised, bought and weighed in for a day. A purchase came from a shop, whoever paid for it. One statement. */
export async function produceLines(
  tx: Tx,
  groupId: string,
  dayId: string,
): Promise<{ promised: PromisedProduce[]; weighed: WeighedProduce[] }> {
  const rows = await tx.$queryRaw<ProduceRow[]>`
    SELECT 'weighed' AS kind, item, quantity, unit, household_id AS "householdId", culled
      FROM ingredient_lot WHERE group_id = ${groupId} AND day_id = ${dayId}
    UNION ALL SELECT 'promised', item, quantity, unit, household_id, 0
      FROM pledge WHERE group_id = ${groupId} AND day_id = ${dayId} AND kind = 'produce'
    UNION ALL SELECT 'promised', item, packs, pack, NULL, 0
      FROM purchase WHERE group_id = ${groupId} AND day_id = ${dayId}`
  const lines = rows.map(({ quantity, culled, ...row }) => ({ ...row, quantity: Number(quantity), culled: Number(culled) }))
  return { promised: lines.filter(({ kind }) => kind === 'promised'), weighed: lines.filter(({ kind }) => kind === 'weighed') }
}
