import 'server-only'
import { database } from '@/lib/db/client'
import type { Actor } from '@/shared/access/actor'
import { reachOf } from '@/shared/access/policy'
import type { JarSize } from '@/shared/kitchen/jar-sizes'
import { type JarMovement, jarLedger, type LedgerLine, type MovementKind } from '@/shared/supplies/jar-ledger'
import type { Mouth } from '@/shared/supplies/lid-age'
import { isoDate } from '@/shared/time/calendar-date'

/** One entry, as the page lists it. */
export interface LedgerEntry extends JarMovement {
  readonly household: string
  readonly movedOn: string
  readonly day: string | null
  readonly note: string
  readonly by: string
  readonly isTakenBack: boolean
}

/** The jars between households and group. */
export interface JarLedgerPage {
  readonly lines: readonly (LedgerLine & { readonly household: string })[]
  /** The newest first; the last few hundred. */
  readonly entries: readonly LedgerEntry[]
  readonly households: readonly { readonly id: string; readonly name: string }[]
}

const MOST_ENTRIES = 300

/** The ledger of the whole group, or of the asker's household. Sums are over all seasons. A fixed number of statements. */
export async function jarLedgerPage(actor: Actor): Promise<JarLedgerPage> {
  const { groupId } = actor
  const db = database()
  const isWhole = reachOf(actor, 'see-jar-ledger') === 'any'
  const of = isWhole ? {} : { householdId: actor.householdId }
  const [movements, households] = await Promise.all([
    db.jarMovement.findMany({
      where: { groupId, ...of },
      orderBy: [{ movedOn: 'desc' }, { createdAt: 'desc' }, { id: 'asc' }],
      select: {
        ...{ id: true, householdId: true, jarSize: true, mouth: true, kind: true, jars: true, corrects: true, movedOn: true },
        ...{ note: true, by: true, household: { select: { name: true } }, day: { select: { name: true } } },
      },
    }),
    db.household.findMany({ where: { groupId }, select: { id: true, name: true }, orderBy: { name: 'asc' } }),
  ])
  const takenBack = new Set(movements.flatMap(({ corrects }) => corrects ?? []))
  const entries = movements.map(({ jarSize, mouth, kind, household, day, movedOn, ...row }) => ({
    ...row,
    ...{ size: jarSize as JarSize, mouth: mouth as Mouth, kind: kind as MovementKind },
    ...{ household: household.name, day: day?.name ?? null, movedOn: isoDate(movedOn), isTakenBack: takenBack.has(row.id) },
  }))
  const names = new Map(households.map(({ id, name }) => [id, name]))
  const lines = jarLedger(entries)
    .map((line) => ({ ...line, household: names.get(line.householdId) ?? '' }))
    .sort((a, b) => (a.household < b.household ? -1 : a.household > b.household ? 1 : 0))
  return { lines, entries: entries.slice(0, MOST_ENTRIES), households }
}
