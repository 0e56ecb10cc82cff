import 'server-only'
import { randomUUID } from 'node:crypto'
import { defineCommand } from '@/lib/commands/command'
import { readTable } from '@/lib/imports/read-table'
import { lockFloorDay } from '@/lib/services/floor/floor-day'
import { ReadImport } from '@/shared/forms/import'
import { checkImport } from '@/shared/imports/check-import'
import { ok } from '@/shared/result/result'
import { importKnown } from './import-known'

/** Problems that are kept to be shown; a file with more is broken as a whole. */
const MOST_PROBLEMS = 500

/** Reads a file and says of every line whether it can be entered. Nothing is entered yet. */
export const readImport = defineCommand({
  name: 'read-import',
  summary: 'Read a file',
  act: 'import',
  // The table is read before the transaction begins: it may be long.
  schema: ReadImport.transform(({ text, ...input }) => ({ ...input, read: readTable(text) })),
  async run(context, { kind, dayId = null, name, read }) {
    const { tx, actor } = context
    const { groupId } = actor
    if (kind === 'deliveries' && dayId) {
      const day = await lockFloorDay(context, dayId, ['claiming', 'planned', 'running'])
      if (!day.ok) return day
    }
    const known = await importKnown(context, kind, dayId)
    const checked = checkImport(kind, read.table, known)
    const problems = [...read.problems, ...checked.problems]
    const id = randomUUID()
    const rowCount = read.table.rows.length
    await tx.importFile.deleteMany({ where: { groupId, enteredAt: null, createdAt: { lt: new Date(context.now.getTime() - KEPT_MS) } } })
    const rows = {
      header: read.table.header,
      first: read.table.rows.slice(0, SHOWN_ROWS),
      entries: problems.length > 0 ? [] : checked.entries,
    }
    const wrong = { count: problems.length, first: problems.slice(0, MOST_PROBLEMS) }
    await tx.$executeRaw`
      INSERT INTO import_file (group_id, id, kind, day_id, name, row_count, read_by, rows, problems)
      VALUES (${groupId}, ${id}, ${kind}, ${dayId}, ${name}, ${rowCount}, ${actor.name}, ${JSON.stringify(rows)}::jsonb, ${JSON.stringify(wrong)}::jsonb)`
    const detail = { kind, name, rowCount, problems: problems.length }
    return ok({ reply: { importId: id, rowCount, problems: problems.length }, history: [{ subject: `file ${id}`, detail }] })
  },
})

/** Lines that are shown before they are entered. */
const SHOWN_ROWS = 10

/** A file that was read and not entered goes after a day. */
const KEPT_MS = 24 * 3600 * 1000
