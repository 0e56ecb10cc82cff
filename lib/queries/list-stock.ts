import 'server-only'
import { database } from '@/lib/db/client'
import type { Actor } from '@/shared/access/actor'
import type { SupplyKind } from '@/shared/kitchen/equipment'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { judgeLids, type LidVerdict, type Mouth } from '@/shared/supplies/lid-age'
import { isoDate } from '@/shared/time/calendar-date'

/** Jars, bands or lids of one purchase. */
export interface StockLot {
  readonly id: string
  readonly version: number
  readonly kind: SupplyKind
  readonly jarSize: JarSize | null
  readonly mouth: Mouth
  readonly lotCode: string
  readonly count: number
  readonly boughtOn: string | null
  readonly householdId: string | null
  /** Whose they are; null when they are the group's. */
  readonly household: string | null
  readonly note: string
  /** Of the jars: left out for a nick or a crack in the rim. */
  readonly chipped: number
  readonly isShopJar: boolean
  /** For lids only: whether they may go on jars on that date. */
  readonly verdict: LidVerdict | null
}

const MOST = 1000

/** Everything in stock, by kind, size and lot. Lids are judged for `today`. A fixed number of statements. */
export async function listStock({ groupId }: Actor, today: string): Promise<StockLot[]> {
  const rows = await database().supplyLot.findMany({
    where: { groupId },
    select: {
      id: true,
      version: true,
      kind: true,
      jarSize: true,
      mouth: true,
      lotCode: true,
      count: true,
      boughtOn: true,
      householdId: true,
      note: true,
      chipped: true,
      isShopJar: true,
      household: { select: { name: true } },
    },
    orderBy: [{ kind: 'desc' }, { jarSize: 'asc' }, { lotCode: 'asc' }],
    take: MOST,
  })
  return rows.map(({ household, ...row }) => {
    const lot = { ...row, kind: row.kind as SupplyKind, jarSize: row.jarSize as JarSize | null, mouth: row.mouth as Mouth }
    const boughtOn = row.boughtOn && isoDate(row.boughtOn)
    const verdict = lot.kind === 'lid' ? judgeLids({ mouth: lot.mouth, count: lot.count, since: boughtOn, isUsed: false }, today) : null
    return { ...lot, boughtOn, household: household?.name ?? null, verdict }
  })
}
