import 'server-only'
import { z } from 'zod'
import { database } from '@/lib/db/client'
import { jarTallies } from '@/lib/queries/jar-tallies'
import { JAR_SIZES, type JarSize } from '@/shared/kitchen/jar-sizes'
import type { JarTally } from '@/shared/share/count-day'

/** What the stock says there was, to begin the counting with. */
export interface StockAtStart {
  readonly brought: Readonly<Partial<Record<JarSize, number>>>
  readonly bought: Readonly<Partial<Record<JarSize, number>>>
  /** Of the lots of lids that are on this day's jars, before any of them was used. */
  readonly lids: number
  readonly bands: number
}

/** The balance as it was closed. */
export interface ClosedBalance {
  readonly lines: readonly { readonly name: string; readonly size: JarSize; readonly words: string; readonly difference: number }[]
  readonly differences: readonly string[]
  readonly note: string
  readonly by: string
}

/** What the close-out page shows: how jars ended, what there was, and the balance once the day is closed. */
export interface CloseOut {
  readonly sizes: readonly JarSize[]
  readonly tallies: readonly JarTally[]
  readonly stock: StockAtStart
  readonly closed: ClosedBalance | null
}

const Closed = z.object({
  balance: z.array(z.object({ name: z.string(), size: z.enum(JAR_SIZES), words: z.string(), difference: z.number() })),
  differences: z.array(z.string()),
  note: z.string(),
})

/** Reads a day's close-out in five statements. */
export async function closeOut(groupId: string, dayId: string): Promise<CloseOut> {
  const db = database()
  const [tallies, sizes, stock, lids, entry] = await Promise.all([
    jarTallies(db, groupId, dayId),
    db.preparation.findMany({ where: { groupId, dayId }, select: { jarSize: true }, distinct: ['jarSize'] }),
    db.$queryRaw<{ kind: string; jarSize: JarSize | null; isBrought: boolean; count: number }[]>`
      SELECT kind, jar_size AS "jarSize", household_id IS NOT NULL AS "isBrought", sum(count)::int AS count
      FROM supply_lot WHERE group_id = ${groupId} AND kind IN ('jar', 'band') GROUP BY 1, 2, 3`,
    db.$queryRaw<{ left: number }[]>`
      SELECT coalesce(sum(s.count - coalesce((SELECT sum(j.lids_used) FROM jar j
        WHERE j.group_id = s.group_id AND j.lid_lot_id = s.id AND j.day_id <> ${dayId}), 0)), 0)::int AS left
      FROM supply_lot s WHERE s.group_id = ${groupId} AND s.kind = 'lid'
        AND EXISTS (SELECT FROM jar j WHERE j.group_id = s.group_id AND j.lid_lot_id = s.id AND j.day_id = ${dayId})`,
    db.history.findFirst({
      where: { groupId, dayId, command: 'close-day' },
      orderBy: { number: 'desc' },
      select: { detail: true, actorName: true },
    }),
  ])
  const used = JAR_SIZES.filter((size) => sizes.some(({ jarSize }) => jarSize === size))
  const of = (isBrought: boolean) =>
    Object.fromEntries(
      stock.flatMap((lot) => (lot.kind === 'jar' && lot.jarSize && lot.isBrought === isBrought ? [[lot.jarSize, lot.count]] : [])),
    )
  const bands = stock.filter(({ kind }) => kind === 'band').reduce((sum, { count }) => sum + count, 0)
  const closed = Closed.safeParse(entry?.detail)
  return {
    sizes: used,
    tallies,
    stock: { brought: of(true), bought: of(false), lids: lids[0]?.left ?? 0, bands },
    closed:
      entry && closed.success
        ? { lines: closed.data.balance, differences: closed.data.differences, note: closed.data.note, by: entry.actorName }
        : null,
  }
}
