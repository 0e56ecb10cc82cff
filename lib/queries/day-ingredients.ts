import 'server-only'
import { database } from '@/lib/db/client'
import { isoDate } from '@/shared/time/calendar-date'

/** One ingredient lot with where it went. */
export interface ReceivedLot {
  readonly id: string
  readonly code: string
  readonly item: string
  readonly quantity: number
  readonly unit: string
  /** Sorted out of it, in the same unit. */
  readonly culled: number
  readonly from: string
  readonly condition: string
  /** ISO date. */
  readonly receivedOn: string
  readonly allergens: readonly string[]
  readonly batches: readonly string[]
}

/** What came in, and what was promised and may come in. */
export interface DayIngredients {
  readonly lots: readonly ReceivedLot[]
  readonly promised: readonly {
    readonly id: string
    readonly item: string
    readonly quantity: number
    readonly unit: string
    readonly household: string
  }[]
  readonly households: readonly { readonly id: string; readonly name: string }[]
}

/** Reads a day's deliveries in three statements. */
export async function dayIngredients(groupId: string, dayId: string): Promise<DayIngredients> {
  const db = database()
  const [lots, pledges, households] = await Promise.all([
    db.$queryRaw<(Omit<ReceivedLot, 'quantity' | 'culled' | 'receivedOn'> & { quantity: unknown; culled: unknown; receivedOn: Date })[]>`
      SELECT l.id, l.code, l.item, l.quantity, l.unit, l.culled, coalesce(h.name, l.source) AS "from", l.condition, l.received_on AS "receivedOn", l.allergens,
        coalesce((SELECT array_agg(b.code ORDER BY b.code) FROM batch_ingredient i
          JOIN kettle_batch b ON b.group_id = i.group_id AND b.id = i.batch_id
          WHERE i.group_id = l.group_id AND i.lot_id = l.id), '{}') AS batches
      FROM ingredient_lot l LEFT JOIN household h ON h.group_id = l.group_id AND h.id = l.household_id
      WHERE l.group_id = ${groupId} AND l.day_id = ${dayId} ORDER BY l.code`,
    db.$queryRaw<{ id: string; item: string; quantity: unknown; unit: string; household: string }[]>`
      SELECT p.id, p.item, p.quantity, p.unit, h.name AS household FROM pledge p
        JOIN household h ON h.group_id = p.group_id AND h.id = p.household_id
      WHERE p.group_id = ${groupId} AND p.day_id = ${dayId} AND p.kind = 'produce' AND NOT EXISTS (
        SELECT FROM ingredient_lot l WHERE l.group_id = p.group_id AND l.day_id = p.day_id AND l.household_id = p.household_id AND l.item = p.item)
      ORDER BY h.name, p.item`,
    db.household.findMany({ where: { groupId, leftAt: null }, select: { id: true, name: true }, orderBy: { name: 'asc' } }),
  ])
  return {
    lots: lots.map(({ quantity, culled, receivedOn, ...lot }) => ({
      ...lot,
      quantity: Number(quantity),
      culled: Number(culled),
      receivedOn: isoDate(receivedOn),
    })),
    promised: pledges.map(({ quantity, ...pledge }) => ({ ...pledge, quantity: Number(quantity) })),
    households,
  }
}
