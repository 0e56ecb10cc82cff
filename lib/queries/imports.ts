import 'server-only'
import { z } from 'zod'
import { database } from '@/lib/db/client'
import type { ImportProblem } from '@/shared/imports/check-import'
import { IMPORT_KINDS, type ImportKind } from '@/shared/imports/import-kinds'
import { isoDate } from '@/shared/time/calendar-date'

/** A file that was read, with the first of its lines and everything that is wrong with it. */
export interface ImportPage {
  readonly id: string
  readonly kind: ImportKind
  readonly name: string
  readonly rowCount: number
  readonly readBy: string
  readonly isEntered: boolean
  readonly dayId: string | null
  readonly header: readonly string[]
  readonly first: readonly { readonly line: number; readonly cells: readonly string[] }[]
  readonly problemCount: number
  readonly problems: readonly ImportProblem[]
}

interface KeptFile {
  readonly id: string
  readonly kind: string
  readonly name: string
  readonly rowCount: number
  readonly readBy: string
  readonly enteredAt: Date | null
  readonly dayId: string | null
  readonly rows: unknown
  readonly problems: unknown
}

const Problems = z.object({
  count: z.number(),
  first: z.array(z.object({ line: z.number(), field: z.string(), say: z.string() })),
})
const Rows = z.object({ header: z.array(z.string()), first: z.array(z.object({ line: z.number(), cells: z.array(z.string()) })) })

/** Reads one file of the group; null when there is none. One statement. */
export async function importPage(groupId: string, importId: string): Promise<ImportPage | null> {
  const [row] = await database().$queryRaw<KeptFile[]>`
    SELECT id, kind, name, row_count AS "rowCount", read_by AS "readBy", entered_at AS "enteredAt", day_id AS "dayId", rows - 'entries' AS rows, problems
    FROM import_file WHERE group_id = ${groupId} AND id = ${importId}`
  if (!row) return null
  const { id, kind, name, rowCount, readBy, enteredAt, dayId } = row
  const { count, first } = Problems.parse(row.problems)
  const rows = Rows.safeParse(row.rows)
  const table = rows.success ? rows.data : { header: [], first: [] }
  return {
    ...{ id, name, rowCount, readBy, dayId, isEntered: enteredAt !== null },
    kind: IMPORT_KINDS.find((each) => each === kind) ?? 'households',
    ...{ header: table.header, first: table.first, problemCount: count, problems: first },
  }
}

/** Days that produce may still come in for. One statement. */
export async function importDays(groupId: string): Promise<{ id: string; name: string; date: string }[]> {
  const rows = await database().day.findMany({
    where: { groupId, state: { in: ['claiming', 'planned', 'running'] } },
    orderBy: { date: 'asc' },
    select: { id: true, name: true, date: true },
  })
  return rows.map(({ date, ...day }) => ({ ...day, date: isoDate(date) }))
}
