import 'server-only'
import { database } from '@/lib/db/client'
import type { StockLot } from '@/shared/day/supply-check'
import { isoDate } from '@/shared/time/calendar-date'

/** The group's jars, bands and lids by lot. One statement. */
export async function groupStock(groupId: string): Promise<StockLot[]> {
  const rows = await database().supplyLot.findMany({
    where: { groupId, count: { gt: 0 } },
    orderBy: [{ kind: 'asc' }, { lotCode: 'asc' }],
    select: { kind: true, jarSize: true, mouth: true, count: true, chipped: true, isShopJar: true, boughtOn: true },
  })
  return rows.map(({ boughtOn, ...row }) => ({ ...row, boughtOn: boughtOn && isoDate(boughtOn) }))
}
